using Stridewright.Music;

namespace Stridewright.Workbench.Reports;

/// <summary>What came of hearing a take.</summary>
public enum CompareOutcome
{
    Compared,

    /// <summary>Too little of the take is in the score to say more.</summary>
    AnotherPiece,
    Unreadable,
    BadWish,
    Cancelled,
}

/// <summary>A take heard against a score. The object of <c>compare --json</c>.</summary>
public sealed record CompareReport
{
    public string Kind { get; } = "compare";

    public required CompareOutcome Outcome { get; init; }

    public required string Score { get; init; }

    public required string Take { get; init; }

    /// <summary>Null when score or take could not be read.</summary>
    public HeardTake? Heard { get; init; }

    public ValueList<WrittenFile> Outputs { get; init; } = [];

    public ValueList<Problem> Problems { get; init; } = [];
}

/// <summary>What was heard.</summary>
public sealed record HeardTake
{
    public required string Title { get; init; }

    /// <summary>Notes that the score asks for, repeats played out; in the range and hand asked for.</summary>
    public required int Notes { get; init; }

    /// <summary>Notes of the take.</summary>
    public required int Played { get; init; }

    /// <summary>Played notes that are the score's.</summary>
    public required int Matched { get; init; }

    /// <summary>Notes of the score that were not played.</summary>
    public required int Missing { get; init; }

    /// <summary>Played notes that are none of the score's.</summary>
    public required int Extra { get; init; }

    /// <summary>What the readers repaired or left out.</summary>
    public ValueList<Remark> Reading { get; init; } = [];
}
