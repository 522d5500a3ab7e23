namespace Stridewright.Music;

/// <summary>
/// A score before it is spelled: bars and what each hand strikes, with free lengths. <see cref="Notator"/> turns it
/// into a <see cref="Score"/> with note values, ties, rests and beams.
/// </summary>
public sealed record Draft
{
    public required string Title { get; init; }

    public string? Composer { get; init; }

    public string? Subtitle { get; init; }

    /// <summary>The left hand is written alone; strokes of the right are left out.</summary>
    public bool LeftHandOnly { get; init; }

    public required ValueList<DraftBar> Bars { get; init; }
}

/// <summary>One bar of a draft.</summary>
public sealed record DraftBar
{
    public required string Number { get; init; }

    public bool Implicit { get; init; }

    public required Metre Metre { get; init; }

    public required Key Key { get; init; }

    public required ScoreTime Length { get; init; }

    /// <summary>What of the metre's bar is missing before a short bar; null: all that is missing, where the bar is
    /// implicit (a pick-up, the second part of a split bar), else nothing.</summary>
    public ScoreTime? Lead { get; init; }

    public ValueList<PlacedChord> Chords { get; init; } = [];

    public ValueList<Direction> Directions { get; init; } = [];

    public BarMarks Marks { get; init; } = BarMarks.None;

    /// <summary>What is struck in this bar, in any order. Within one hand and voice nothing overlaps.</summary>
    public ValueList<Stroke> Strokes { get; init; } = [];

    /// <summary>What is shown on the small staff above, in the right hand's voice 1, not to be played. Without any in the
    /// whole draft there is no such staff.</summary>
    public ValueList<Stroke> Above { get; init; } = [];
}

/// <summary>Keys struck together by one hand in one voice.</summary>
/// <param name="Voice">1 is the upper voice of its staff (stems up when there are two), 2 the lower.</param>
/// <param name="At">Place in the bar.</param>
/// <param name="Length">Sounding length; may run over the bar line into the next bars, which then are tied.</param>
/// <param name="Pitches">Lowest first, at least one.</param>
/// <param name="Role">What it is there for, such as <c>tune</c>, <c>fill</c>, <c>bass</c>, <c>chord</c>: part of the
/// note's id.</param>
public sealed record Stroke(Hand Hand, int Voice, ScoreTime At, ScoreTime Length, ValueList<Pitch> Pitches, string Role)
{
    public bool Rolled { get; init; }

    public bool Staccato { get; init; }

    public bool Accent { get; init; }

    public ValueList<Pitch> Graces { get; init; } = [];

    public ValueList<Lyric> Lyrics { get; init; } = [];
}
