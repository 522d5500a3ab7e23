using Stridewright.Music;
using Stridewright.Practice.Listening.Reporting;

namespace Stridewright.Practice.Lessons;

/// <summary>What to do on which day.</summary>
public sealed record Plan
{
    /// <summary>In order; the first one is today.</summary>
    public required ValueList<Day> Days { get; init; }

    /// <summary>The limits that it keeps, each with its source.</summary>
    public required ValueList<Threshold> Limits { get; init; }

    /// <summary>Ids of the steps that it does not come to the end of.</summary>
    public ValueList<string> Left { get; init; } = [];
}

/// <summary>One day.</summary>
/// <param name="Number">From 1, which is today.</param>
public sealed record Day(int Number, ValueList<PlanTask> Tasks)
{
    /// <summary>All of it, breaks too.</summary>
    public int Minutes => Tasks.Sum(t => t.Minutes);
}

/// <summary>What a part of a day is.</summary>
public enum TaskKind
{
    WarmUp,

    /// <summary>A step, on its ladder of tempi.</summary>
    Step,

    /// <summary>A step's test for moving on.</summary>
    Test,

    Drill,

    /// <summary>A step that is done, again after some days.</summary>
    Review,

    /// <summary>Something that goes well, at the end.</summary>
    PlayThrough,
    Break,
}

/// <summary>A few minutes.</summary>
/// <param name="Item">Id of the step or drill; null for a break.</param>
/// <param name="BeatsPerMinute">Tempo to begin with; null for a break.</param>
/// <param name="Words">What to do, in one sentence.</param>
public sealed record PlanTask(TaskKind Kind, int Minutes, string? Item, double? BeatsPerMinute, string Words);
