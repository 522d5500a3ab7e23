using Stridewright.Practice.Listening.Reporting;

namespace Stridewright.Practice.Lessons;

/// <summary>Every limit of steps, drills and plan, with its source.</summary>
public static class LessonLimits
{
    private const string Common = "common practice";

    /// <summary>The health body's advice that most limits come from.</summary>
    public const string Tips = "British Association for Performing Arts Medicine, Ten top health tips";

    /// <summary>Of the piece's tempo; comfortable tempo where that is less.</summary>
    public static readonly Threshold Begin = new("tempo that a ladder begins with", 0.5, "of the piece's", Common);

    /// <summary>Most of it is known from the step before.</summary>
    public static readonly Threshold GoOn = new(
        "tempo that the ladder of a later step begins with",
        0.65,
        "of the piece's",
        Common
    );

    public static readonly Threshold Rung = new("a rung of the ladder above the one before", 0.05, "share", Common);

    public static readonly Threshold FallBack = new("slower after two failures", 0.1, "share", Common);

    public static readonly Threshold MoveOn = new(
        "tempo of the test of a step",
        0.8,
        "of the piece's; half the piece half-way to it, the whole at it",
        Common
    );

    public static readonly Threshold CleanTakes = new("clean takes in a row before moving on", 3, "takes", Common);

    public static readonly Threshold LeastRight = new(
        "notes right in a clean take",
        0.98,
        "share",
        "common practice; the share of correct trials, not their number, went with how well it was kept (Duke, Simmons and Cash 2009)"
    );

    public static readonly Threshold Covered = new("bars played of a step for a take of it", 0.9, "share", Common);

    public static readonly Threshold Nested = new(
        "strokes of a step that stand again in the next",
        0.9,
        "share",
        Common
    );

    public static readonly Threshold Different = new(
        "strokes changed that make a step of its own",
        0.04,
        "share",
        Common
    );

    public static readonly Threshold Playing = new(
        "longest stretch of playing without a break",
        30,
        "minutes",
        Tips + ": a break in every half-hour"
    );

    public static readonly Threshold Rest = new("each break", 5, "minutes", Tips);

    public static readonly Threshold MoreADay = new(
        "most that a day has more than the day before",
        10,
        "minutes",
        Tips
    );

    public static readonly Threshold DaysUp = new("most days running with more each; then one holds", 3, "days", Tips);

    public static readonly Threshold Slice = new(
        "one thing at a time, before another comes",
        3,
        "minutes",
        "common practice; three-minute slices are those of a study of interleaving (Carter and Grahn 2016)"
    );

    public static readonly Threshold LongSlice = new(
        "one thing at a time in sessions of over an hour",
        5,
        "minutes",
        Common
    );

    public static readonly Threshold ItemADay = new(
        "most for one thing in a day",
        15,
        "minutes",
        "common practice; " + Tips + ": leave a passage that will not come"
    );

    public static readonly Threshold RungsADay = new("most that a tempo rises in a day", 5, "rungs", Common);

    public static readonly Threshold HardFrom = new(
        "the hardest begins no sooner than after",
        0.2,
        "share of the session",
        Tips + ": hardest passages in the middle of the session"
    );

    public static readonly Threshold HardTo = new("and is over by", 0.8, "share of the session", "as above");

    public static readonly Threshold Again = new(
        "what was learned comes again after",
        1,
        "day",
        "accuracy gained from one session to the next only when a day lay between (Simmons 2012)"
    );

    public static readonly Threshold Drills = new("drills in a lesson", 10, "drills", Common);

    /// <summary>Those that a plan keeps.</summary>
    public static IReadOnlyList<Threshold> OfPlan { get; } =
    [Playing, Rest, MoreADay, DaysUp, Slice, LongSlice, ItemADay, RungsADay, HardFrom, HardTo, Again];

    public static IReadOnlyList<Threshold> All { get; } =
    [Begin, GoOn, Rung, FallBack, MoveOn, CleanTakes, LeastRight, Covered, Nested, Different, Drills, .. OfPlan];
}
