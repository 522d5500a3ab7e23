namespace Stridewright.Music;

/// <summary>A tune as written: melody, chord symbols, words and form, bar by bar.</summary>
public sealed record Tune
{
    public required string Title { get; init; }

    /// <summary>Who wrote it, as the source says; null when it says nothing.</summary>
    public string? Composer { get; init; }

    /// <summary>Bars in written order. Never empty.</summary>
    public required ValueList<TuneBar> Bars { get; init; }

    /// <summary>Tempo the source asks for, in quarter notes per minute; null when it says nothing.</summary>
    public double? QuartersPerMinute { get; init; }

    /// <summary>Order in which the sections are played, such as <c>A A B</c>; empty: as written.</summary>
    public ValueList<string> SectionOrder { get; init; } = [];
}

/// <summary>One written bar of a tune.</summary>
public sealed record TuneBar
{
    /// <summary>Bar number as printed, or a reader's count.</summary>
    public required string Number { get; init; }

    public required Metre Metre { get; init; }

    public required Key Key { get; init; }

    /// <summary>How long the bar lasts; shorter than the metre's bar in pick-ups and at split repeats.</summary>
    public required ScoreTime Length { get; init; }

    /// <summary>Notes in time order, one line: no two overlap.</summary>
    public ValueList<TuneNote> Notes { get; init; } = [];

    /// <summary>Chord symbols in time order.</summary>
    public ValueList<PlacedChord> Chords { get; init; } = [];

    public BarMarks Marks { get; init; } = BarMarks.None;

    /// <summary>Section label that begins with this bar, such as <c>A</c>; null inside a section.</summary>
    public string? Section { get; init; }
}

/// <summary>One note of a tune. Grace notes stand with the note they lean on.</summary>
/// <param name="At">Place in the bar.</param>
/// <param name="Length">Written length.</param>
public sealed record TuneNote(ScoreTime At, ScoreTime Length, Pitch Pitch)
{
    /// <summary>Tied to the next note, which has the same pitch.</summary>
    public bool TiedToNext { get; init; }

    public ValueList<Pitch> Graces { get; init; } = [];

    public ValueList<Lyric> Lyrics { get; init; } = [];
}

/// <summary>A chord symbol at a place in its bar.</summary>
public sealed record PlacedChord(ScoreTime At, ChordSymbol Chord);

/// <summary>One syllable under a note.</summary>
/// <param name="Verse">1 for the first verse.</param>
/// <param name="HyphenAfter">The word goes on in the next syllable.</param>
/// <param name="Extends">The syllable is held over the following notes.</param>
public sealed record Lyric(int Verse, string Text, bool HyphenAfter = false, bool Extends = false);

/// <summary>Repeats and endings at a bar.</summary>
public sealed record BarMarks
{
    public static readonly BarMarks None = new();

    public bool RepeatStart { get; init; }

    /// <summary>How often the repeated part is played; 0: no repeat ends here.</summary>
    public int RepeatEnd { get; init; }

    /// <summary>Times through at which this bar is played, such as 1 for a first ending; empty: always. Given on every
    /// bar of the ending.</summary>
    public ValueList<int> Ending { get; init; } = [];

    /// <summary>A double bar line stands after this bar.</summary>
    public bool DoubleBarAfter { get; init; }

    public bool FinalBarAfter { get; init; }
}
