using Stridewright.Practice.Listening.Reporting;

namespace Stridewright.Practice.Progress;

/// <summary>Every limit of progress, with its source.</summary>
public static class ProgressLimits
{
    private const string Common = "common practice";

    public static readonly Threshold LeastRight = new(
        "notes right in a clean take",
        0.98,
        "share",
        "common practice; the share of correct trials, not their number, went with how well it was kept (Duke, Simmons and Cash 2009)"
    );

    public static readonly Threshold Covered = new("bars played for a take to be whole", 0.9, "share", Common);

    public static readonly Threshold FirstReturn = new(
        "days until something is due again, at first and after a day without a clean take",
        1,
        "day",
        "accuracy gained from one session to the next only when a day lay between (Simmons 2012)"
    );

    public static readonly Threshold Wider = new(
        "each clean day in a row makes that so much longer",
        2,
        "times",
        Common
    );

    public static readonly Threshold LastReturn = new("days until something is due again, at most", 28, "days", Common);

    public static readonly Threshold LeftAside = new(
        "days after which what was left aside is no longer told as due",
        90,
        "days",
        Common
    );

    public static IReadOnlyList<Threshold> All { get; } =
    [LeastRight, Covered, FirstReturn, Wider, LastReturn, LeftAside];
}
