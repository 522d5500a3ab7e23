using Stridewright.Music;

namespace Stridewright.Practice.Progress;

/// <summary>What a take of some day showed, as far as progress is read from it.</summary>
public sealed record PastTake
{
    /// <summary>When it began, in the player's own time: its day is the day that counts.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>What was practised.</summary>
    public required PracticeItem Item { get; init; }

    /// <summary>Notes that were to be played, of the bars that were played.</summary>
    public required int Asked { get; init; }

    /// <summary>Of these, notes that were played.</summary>
    public required int Right { get; init; }

    /// <summary>Played notes that stand for none.</summary>
    public required int Extra { get; init; }

    /// <summary>Bars that were to be played.</summary>
    public required int Bars { get; init; }

    /// <summary>Of these, those that were not played.</summary>
    public required int BarsNotPlayed { get; init; }

    /// <summary>Median tempo in quarters a minute; null: too little was played.</summary>
    public double? Tempo { get; init; }

    /// <summary>Tempo of the score; null: it has none.</summary>
    public double? AskedTempo { get; init; }

    /// <summary>Unevenness of the left hand's strokes, as a share of a stroke; null: too little.</summary>
    public double? Unevenness { get; init; }

    /// <summary>Share of right notes, 0 to 1; extra ones count against it.</summary>
    public double Cleanness => Asked + Extra == 0 ? 0 : (double)Right / (Asked + Extra);

    /// <summary>Nearly all that was to be played was played.</summary>
    public bool IsWhole => Bars > 0 && Bars - BarsNotPlayed >= ProgressLimits.Covered.Value * Bars;

    /// <summary>Whole, and right as far as a clean take must be.</summary>
    public bool IsClean => IsWhole && Cleanness >= ProgressLimits.LeastRight.Value;

    /// <summary>The day on which it was played.</summary>
    public DateOnly Day => DateOnly.FromDateTime(At.DateTime);
}

/// <summary>A piece, or a part of it that is practised by itself.</summary>
/// <param name="Piece">The same for all takes of a piece.</param>
/// <param name="Title">Of the piece.</param>
/// <param name="Step">A step of a lesson by its name; null: the piece itself.</param>
/// <param name="Range">Bars such as <c>5-12</c>; null: all.</param>
/// <param name="Hand">The hand alone; null: both.</param>
public sealed record PracticeItem(
    string Piece,
    string Title,
    string? Step = null,
    string? Range = null,
    Hand? Hand = null
)
{
    /// <summary>The piece from beginning to end, hands together.</summary>
    public bool IsWhole => Step is null && Range is null && Hand is null;
}
