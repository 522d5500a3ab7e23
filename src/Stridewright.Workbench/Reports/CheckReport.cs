using Stridewright.Music;

namespace Stridewright.Workbench.Reports;

/// <summary>What came of judging a score.</summary>
public enum CheckOutcome
{
    Playable,
    NotPlayable,
    Unreadable,
    BadWish,
    Cancelled,
}

/// <summary>A score judged for a pair of hands. The object of <c>check --json</c>.</summary>
public sealed record CheckReport
{
    public string Kind { get; } = "check";

    public required CheckOutcome Outcome { get; init; }

    public required string File { get; init; }

    /// <summary>Null when the score could not be read.</summary>
    public JudgedScore? Score { get; init; }

    public ValueList<Problem> Problems { get; init; } = [];
}

public sealed record JudgedScore
{
    public required string Title { get; init; }

    public required int Bars { get; init; }

    public required HandsUsed Hands { get; init; }

    /// <summary>Tempo asked for, in quarter notes per minute; null: judged as printed.</summary>
    public double? QuartersPerMinute { get; init; }

    public required EffortReport Effort { get; init; }

    /// <summary>Effort of every bar, in order.</summary>
    public ValueList<BarEffortReport> BarEfforts { get; init; } = [];

    /// <summary>The bars that ask most, hardest first, and why.</summary>
    public ValueList<HardSpotReport> Hardest { get; init; } = [];

    /// <summary>The fastest tempo at which it is comfortable; null: nothing in it depends on the tempo.</summary>
    public ComfortReport? Comfortable { get; init; }

    /// <summary>Spans that it needs of the right hand.</summary>
    public SpanReport RightSpan { get; init; } = new(null, null);

    /// <summary>Spans that it needs of the left hand.</summary>
    public SpanReport LeftSpan { get; init; } = new(null, null);

    /// <summary>The smallest change that removes the worst spot; null: none that was tried does.</summary>
    public ChangeReport? Change { get; init; }

    /// <summary>What health asks for where strain, speed or repetition is high.</summary>
    public ValueList<CautionReport> Cautions { get; init; } = [];

    /// <summary>Files of the plot.</summary>
    public ValueList<WrittenFile> Drawings { get; init; } = [];

    /// <summary>Every spot that cannot be played, in time order.</summary>
    public ValueList<UnplayableSpot> Spots { get; init; } = [];

    public ValueList<Remark> Reading { get; init; } = [];
}

/// <summary>One spot that these hands cannot play.</summary>
/// <param name="Bar">Printed number of the bar.</param>
/// <param name="Place">Place in words.</param>
/// <param name="Hand"><c>right</c> or <c>left</c>.</param>
/// <param name="Fault">Kind of fault, such as <c>reach</c> or <c>leap</c>.</param>
/// <param name="Need">What the spot asks.</param>
/// <param name="Limit">What these hands have, in the same unit.</param>
/// <param name="Over">Need less limit.</param>
public sealed record UnplayableSpot(
    string Bar,
    string Place,
    string Hand,
    string Fault,
    double Need,
    double Limit,
    double Over,
    string Message
);

/// <summary>Effort of one bar, 1 to 100.</summary>
/// <param name="Bar">Printed number.</param>
public sealed record BarEffortReport(string Bar, double Effort, double Right, double Left);

/// <summary>A bar that asks much.</summary>
/// <param name="Bar">Printed number.</param>
/// <param name="Why">What makes it hard, such as <c>left hand: fast leaps</c>.</param>
public sealed record HardSpotReport(string Bar, double Effort, double Right, double Left, string Why);

/// <summary>The fastest tempo at which a piece is comfortable.</summary>
/// <param name="Speed">Of the tempo that was judged; at most 2.</param>
/// <param name="QuartersPerMinute">The tempo of the first bar then.</param>
/// <param name="Hand">The hand that binds it.</param>
/// <param name="Binding"><c>leap</c>, <c>density</c> or <c>repetition</c>.</param>
/// <param name="Bar">Printed number of a bar that binds it.</param>
public sealed record ComfortReport(double Speed, double QuartersPerMinute, string Hand, string Binding, string Bar);

/// <summary>Spans in whole millimetres, thumb to little finger; null: none that hands have.</summary>
/// <param name="PlayableMm">The smallest that reaches all.</param>
/// <param name="FreeMm">The smallest without strain.</param>
public sealed record SpanReport(int? PlayableMm, int? FreeMm);

/// <summary>A change that was tried and judged.</summary>
/// <param name="Kind"><c>roll</c>, <c>drop-inner</c>, <c>drop-octave</c>, <c>drop-outer</c>, <c>rest</c> or
/// <c>slower</c>.</param>
public sealed record ChangeReport(string Kind, string Place, string Hand, string Message);

/// <summary>A caution and its source.</summary>
public sealed record CautionReport(string Sentence, string Source);
