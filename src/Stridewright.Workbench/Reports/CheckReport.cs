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
