using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>A second layer of a bar (ABC 2.1, 7.4) while it is being read.</summary>
internal sealed class AbcLayer
{
    private ScoreTime _at;

    public List<PlacedChord> Chords { get; } = [];

    public bool HasNotes { get; private set; }

    /// <summary>Waits for the next note or rest.</summary>
    public ChordSymbol? Chord { get; set; }

    public void Add(bool isNote, ScoreTime length)
    {
        HasNotes |= isNote;
        if (Chord is not null && !HasNotes)
        {
            Chords.Add(new PlacedChord(_at, Chord));
        }
        Chord = null;
        _at += length;
    }
}
