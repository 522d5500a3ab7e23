using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>A bar while it is being read.</summary>
internal sealed class AbcBar
{
    public List<AbcNote> Notes { get; } = [];

    /// <summary>Chord symbols of layers of rests (&amp;), which stand between notes.</summary>
    public List<PlacedChord> LayerChords { get; } = [];

    /// <summary>Null when the tune is in free metre here.</summary>
    public Metre? Metre { get; set; }

    public Key Key { get; set; }

    public bool RepeatStart { get; set; }

    public int RepeatEnd { get; set; }

    public ValueList<int> Ending { get; set; } = [];

    public bool DoubleAfter { get; set; }

    public bool FinalAfter { get; set; }

    public string? Section { get; set; }

    /// <summary>It has more notes than are taken in.</summary>
    public bool IsCutShort { get; set; }

    /// <summary>Where its first note stands.</summary>
    public AbcSpot Spot { get; set; }

    /// <summary>Number as it is counted at the end; null until then.</summary>
    public string? Number { get; set; }

    /// <summary>Accidentals set in the bar so far.</summary>
    public AbcAccidentals Accidentals { get; } = new();

    public ScoreTime Contents => Notes.Aggregate(ScoreTime.Zero, (sum, note) => sum + note.Length);
}

/// <summary>A note or rest while it is being read; its length may still change by broken rhythm.</summary>
internal sealed class AbcNote
{
    /// <summary>Sounding pitch; null for a rest.</summary>
    public Pitch? Pitch { get; init; }

    /// <summary>Null for a rest.</summary>
    public Pitch? Written { get; init; }

    public ScoreTime Length { get; set; }

    /// <summary>Broken rhythm has changed it with the note after it.</summary>
    public bool IsBroken { get; set; }

    public bool Tie { get; set; }

    public ValueList<Pitch> Graces { get; init; } = [];

    public ChordSymbol? Chord { get; set; }

    public List<Lyric> Lyrics { get; } = [];

    public AbcSpot Spot { get; init; }
}
