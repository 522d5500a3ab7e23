using Stridewright.Music;

namespace Stridewright.Practice.Listening.Search;

/// <summary>The expected notes as a row of chords: what is struck at one moment of the score, grace notes with the note
/// they lead to.</summary>
internal sealed class ChordTable
{
    private readonly int[] _first; // index of each chord's first note; one more than there are chords
    private const int ShakeSteps = 2; // semitones from a note to what it is shaken with
    private const int MostSounding = 100; // chords through which a note is held
    private readonly UInt128[] _shaken; // keys that may be struck in a shake while a chord sounds, a bit each
    private readonly int[][] _byKey = new int[128][];

    public ChordTable(IReadOnlyList<ExpectedNote> notes)
    {
        var (first, beats) = (new List<int>(), new List<double>());
        for (var i = 0; i < notes.Count; i++)
        {
            if (i == 0 || !ExpectedScore.AreTogether(notes[i].Beats, beats[^1]))
            {
                first.Add(i);
                beats.Add(notes[i].Beats);
            }
        }
        first.Add(notes.Count);
        (_first, Beats) = ([.. first], [.. beats]);
        Keys = [.. notes.Select(n => n.Key)];
        Hands = [.. notes.Select(n => n.Hand)];
        ChordOf = new int[notes.Count];
        Ornamented = new bool[Count];
        Longest = new double[Count];
        _shaken = new UInt128[Count];
        var chordsOf = new List<int>[128];
        for (var chord = 0; chord < Count; chord++)
        {
            for (var note = _first[chord]; note < _first[chord + 1]; note++)
            {
                ChordOf[note] = chord;
                Ornamented[chord] |= notes[note].Ornamented;
                var list = chordsOf[Keys[note] & 127] ??= [];
                if (list.Count == 0 || list[^1] != chord)
                {
                    list.Add(chord);
                }
            }
        }
        for (var key = 0; key < 128; key++)
        {
            _byKey[key] = chordsOf[key] is { } list ? [.. list] : [];
        }
        for (var i = 0; i < notes.Count; i++)
        {
            AddSounding(notes[i], ChordOf[i]);
        }
    }

    private void AddSounding(ExpectedNote note, int chord)
    {
        var keys = UInt128.Zero;
        for (var key = note.Key - ShakeSteps; key <= note.Key + ShakeSteps; key++)
        {
            keys |= UInt128.One << (key & 127);
        }
        var end = note.Beats + note.Length;
        if (note.Ornamented)
        {
            // A tremolo of two notes is written one after the other, and both sound through the time of both.
            end += note.Length;
            while (chord > 0 && Beats[chord - 1] >= note.Beats - note.Length)
            {
                chord--;
            }
        }
        for (var i = chord; i < Count && (i == chord || Beats[i] < end) && i < chord + MostSounding; i++)
        {
            _shaken[i] |= keys;
            Longest[i] = Math.Max(Longest[i], end - Beats[i]);
        }
    }

    public int Count => Beats.Length;

    /// <summary>Quarters from the first note, for each chord.</summary>
    public double[] Beats { get; }

    /// <summary>Key of each expected note.</summary>
    public int[] Keys { get; }

    /// <summary>Hand of each expected note.</summary>
    public Hand[] Hands { get; }

    /// <summary>Chord of each expected note.</summary>
    public int[] ChordOf { get; }

    /// <summary>A trill or the like stands on one of its notes.</summary>
    public bool[] Ornamented { get; }

    /// <summary>How long what sounds at a chord still lasts, in quarters.</summary>
    public double[] Longest { get; }

    /// <summary>Whether a key may belong to a trill, turn or tremolo on a note that sounds at a chord.</summary>
    public bool MayShake(int chord, int key) => (_shaken[chord] & (UInt128.One << (key & 127))) != 0;

    public int First(int chord) => _first[chord];

    public int End(int chord) => _first[chord + 1];

    /// <summary>Chords that have this key, in order.</summary>
    public ReadOnlySpan<int> With(int key) => _byKey[key & 127];

    /// <summary>Place in a chord of a note with this key that is not among those taken (a bit each); -1: none. Of a chord
    /// of more than 64 notes the first 64 are known.</summary>
    public int Find(int chord, int key, ulong taken)
    {
        var (first, end) = (_first[chord], Math.Min(_first[chord + 1], _first[chord] + 64));
        for (var note = first; note < end; note++)
        {
            if (Keys[note] == key && (taken & (1UL << (note - first))) == 0)
            {
                return note - first;
            }
        }
        return -1;
    }

    public bool Has(int chord, int key) => Find(chord, key, 0) >= 0;
}
