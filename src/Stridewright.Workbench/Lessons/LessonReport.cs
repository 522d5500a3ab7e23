using Stridewright.Music;

namespace Stridewright.Workbench.Reports;

/// <summary>What came of making a lesson.</summary>
public enum LessonOutcome
{
    Written,
    Unreadable,

    /// <summary>These hands cannot play the piece, or there is nothing in it to learn.</summary>
    Refused,
    BadWish,
    Cancelled,
}

/// <summary>A lesson. The object of <c>lesson --json</c>.</summary>
public sealed record LessonReport
{
    public string Kind { get; } = "lesson";

    public required LessonOutcome Outcome { get; init; }

    /// <summary>The piece as it was named.</summary>
    public required string File { get; init; }

    /// <summary>What stands in the lesson file; null where there is none.</summary>
    public LessonDocument? Lesson { get; init; }

    public ValueList<WrittenFile> Outputs { get; init; } = [];

    /// <summary>Remarks on the inputs.</summary>
    public ValueList<Remark> Reading { get; init; } = [];

    public ValueList<Problem> Problems { get; init; } = [];
}
