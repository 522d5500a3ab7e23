using Stridewright.Practice.Lessons;
using Stridewright.Practice.Listening.Reporting;

namespace Stridewright.Practice.Progress;

/// <summary>Every limit of progress, with its source.</summary>
public static class ProgressLimits
{
    private const string Common = "common practice";

    // What a clean take is, and when it comes again first, is the same as in a lesson.
    public static readonly Threshold LeastRight = LessonLimits.LeastRight;

    public static readonly Threshold Covered = LessonLimits.Covered with
    {
        Words = "bars played for a take to be whole",
    };

    public static readonly Threshold FirstReturn = LessonLimits.Again with
    {
        Words = "days until something is due again, at first and after a day without a clean take",
    };

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
