using Stridewright.Music;

namespace Stridewright.Workbench.Reports;

/// <summary>What came of fingering scores. The object of <c>finger --json</c>.</summary>
public sealed record FingerReport
{
    public string Kind { get; } = "finger";

    /// <summary>Scores whose every output stands on disk, in order.</summary>
    public ValueList<FingeredFile> Written { get; init; } = [];

    public ValueList<Problem> Problems { get; init; } = [];

    /// <summary>A wish cannot be understood: nothing was begun.</summary>
    public bool IsBadWish { get; init; }

    public bool Cancelled { get; init; }
}

/// <summary>One score that was fingered and written.</summary>
public sealed record FingeredFile
{
    /// <summary>The input as it was named.</summary>
    public required string File { get; init; }

    public required string Title { get; init; }

    public required ValueList<WrittenFile> Outputs { get; init; }

    public required HandsUsed Hands { get; init; }

    public required int Bars { get; init; }

    /// <summary>Struck notes.</summary>
    public required int Notes { get; init; }

    /// <summary>Of these, those that have a finger.</summary>
    public required int Fingered { get; init; }

    /// <summary>Of these, those whose finger is printed.</summary>
    public required int Printed { get; init; }

    /// <summary>What each hand's fingering of each bar costs; silent bars left out.</summary>
    public ValueList<FingeredBar> Costs { get; init; } = [];

    /// <summary>Written fingers that cannot be, held keys let go, keys beyond the hand or without a finger.</summary>
    public ValueList<Remark> Remarks { get; init; } = [];

    /// <summary>What the reader repaired or left out.</summary>
    public ValueList<Remark> Reading { get; init; } = [];
}

/// <summary>One hand's fingering of one bar.</summary>
/// <param name="Bar">Printed number of the bar.</param>
/// <param name="Hand"><c>right</c> or <c>left</c>.</param>
/// <param name="Cost">Points: what the published rules charge for one semitone is one.</param>
/// <param name="Terms">What it is made of, dearest first.</param>
public sealed record FingeredBar(string Bar, string Hand, double Cost, ValueList<FingeringTerm> Terms);

/// <summary>What one term costs in a bar.</summary>
/// <param name="Source">Where the term comes from.</param>
public sealed record FingeringTerm(string Words, double Cost, string Source);
