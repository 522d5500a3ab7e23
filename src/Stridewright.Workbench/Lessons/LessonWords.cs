using System.Globalization;
using Stridewright.Music;
using Stridewright.Practice.Lessons;
using Stridewright.Practice.Listening.Reporting;

namespace Stridewright.Workbench;

/// <summary>What a lesson's booklet and its use case say.</summary>
internal static partial class WorkbenchMessages
{
    public const string Today = "Today",
        TheScore = "The piece",
        ThePath = "The steps",
        TheDrills = "Drills",
        ThePlan = "The days",
        TheReasons = "Reasons and cautions",
        Skipped = "Left out",
        HeardHead = "What the takes show",
        Remarked = "To know",
        Health = "Your hands",
        LimitsHead = "Limits that the days keep",
        BookletSteps =
            "Each step leads into the next and keeps what was learned. Go on when its test is passed, not when a day is over.";

    public static string OneTuneToLearn(int tunes) =>
        Said($"there are {tunes} tunes in it: give a file with the one to be learned");

    public static string NotWithin(int value, int least, int most) => Said($"{value} is not within {least} to {most}");

    public static string LessonFor(string? player) => player is null ? "A lesson" : $"A lesson for {player}";

    public static ValueList<string> LessonFacts(Lesson lesson, string metre, int bars)
    {
        var beat = LessonMessages.BeatName(lesson.Beat);
        return
        [
            Said(
                $"{bars} bars in {metre}, {beat} = {lesson.BeatsPerMinute:0}; effort {lesson.Effort:0} of 100. {Count(lesson.Steps.Count, "step", "steps")}, {Count(lesson.Drills.Count, "drill", "drills")}, {Count(lesson.Plan.Days.Count, "day", "days")}."
            ),
            .. lesson.ComfortableBeats is { } comfortable && comfortable < lesson.BeatsPerMinute
                ? (string[])
                    [
                        Said(
                            $"As far as speed goes it is comfortable for these hands up to {beat} = {comfortable:0}; what is faster must be grown into."
                        ),
                    ]
                : [],
        ];
    }

    public static string StepHead(PathStep step) =>
        Said(
            $"{step.Aim} From {step.Tempo.From:0}; go on after {step.Test.CleanTakes} clean in a row at {step.Test.BeatsPerMinute:0}."
        );

    public static string CleanMeans(MoveOn test) =>
        Said($"Clean: {100 * test.LeastRight:0} in a hundred notes right, and no beat held up.");

    public static string TempoOf(TempoRange range) =>
        range.From < range.To ? Said($"{range.From:0} to {range.To:0}") : Said($"{range.To:0}");

    public static string DayHead(Day day) => Said($"Day {day.Number}: {day.Minutes} minutes");

    public static string StepsIntro(Lesson lesson) =>
        Said(
            $"Effort, 1 to 100, is measured for these hands at the tempo of the step's test: of the one hand, or with both of the hardest strain in the step. It rises from a step to the next of the same hands. Tempi are {LessonMessages.BeatName(lesson.Beat)}s a minute, from the first to that of the test: {lesson.Steps[^1].Test.CleanTakes} clean takes in a row."
        );

    public static string DaysIntro(Plan plan) =>
        plan.Left.Count == 0
            ? "If all goes well. A day that does not go well is played again; takes set the plan right."
            : Said(
                $"If all goes well. A day that does not go well is played again; takes set the plan right. {Count(plan.Left.Count, "step comes", "steps come")} after these days: make the lesson anew then, with takes."
            );

    public const string WhyDrills = "Why these drills";

    public static readonly ValueList<string> StepHeads = ["Step", "Aim", "Tempo", "Effort", "Page"];

    public static ValueList<string> TaskHeads(NoteValue beat) =>
        ["", "What", Upper(LessonMessages.BeatName(beat)) + " =", "How", "Page"];

    public static string TodayIntro(Day day) =>
        Said($"{day.Minutes} minutes. Slices of a few minutes in turn; what will not come today is left for tomorrow.");

    public static string MinutesOf(PlanTask task) => Said($"{task.Minutes} min");

    public static string SlicesOf(IReadOnlyList<PlanTask> tasks) =>
        tasks.Count == 1 ? MinutesOf(tasks[0]) : Said($"{tasks.Count} × {tasks[0].Minutes} min");

    public static string TaskName(PlanTask task, string? name) =>
        task.Kind switch
        {
            TaskKind.WarmUp => $"Warm-up: {name}",
            TaskKind.PlayThrough => $"To end with: {name}",
            TaskKind.Review => $"Again: {name}",
            TaskKind.Test => $"Test: {name}",
            TaskKind.Break => "Break",
            _ => name ?? "",
        };

    public static string Beats(double beats) => Said($"{beats:0}");

    public static string EffortOf(double effort) => Said($"{effort:0.0}");

    public static string After(string source) => char.ToUpperInvariant(source[0]) + source[1..] + ".";

    public static string DrillHead(Drill drill, string beat) =>
        $"{Upper(drill.Claim)}. {Upper(DrillTempo(drill, beat))}.";

    private static string Upper(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    public static string Limit(Threshold limit) =>
        Said(
            $"{Upper(limit.Words)}: {Number(limit)} ({limit.Source.Replace(LessonLimits.Tips, "the health tips above", StringComparison.Ordinal)})"
        );

    public static string SkippedStep(SkippedStep skipped) => $"{skipped.Step.Name}: {skipped.Why}.";

    public static string DrillTempo(Drill drill, string beat) =>
        Said($"{beat} = {drill.Tempo.From:0} to {drill.Tempo.To:0}");

    private const string Share = "share";

    private static string Number(Threshold limit) =>
        limit.Unit.StartsWith(Share, StringComparison.Ordinal)
            ? Said($"{100 * limit.Value:0} %{limit.Unit[Share.Length..]}")
            : Said($"{limit.Value:0.##} {limit.Unit}");

    private static string Count(int count, string one, string more) => Said($"{count} {(count == 1 ? one : more)}");

    private static string Said(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
