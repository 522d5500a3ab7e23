using System.Globalization;
using Stridewright.Workbench.Reports;

namespace Stridewright.Cli;

/// <summary>What the command line says about lessons.</summary>
internal static partial class CliMessages
{
    public const string LessonHelp = """
        Splits a piece into what one pair of hands needs to learn it: steps that lead into each other and end in the piece,
        drills made of its own hard places, and a plan by days.

        PIECE gives, in the output folder, PIECE.lesson.pdf (a booklet: today, the piece, steps, drills, days, reasons and
        cautions), PIECE.lesson.html (the piece, its sound and today's list in one file for a phone or a tablet, offline),
        PIECE.lesson.json (docs/lesson-file.md), and each step and drill.

        Examples:
          stridewright lesson tune.abc --player ada.player --out lessons
          stridewright lesson rag.musicxml --days 14 --minutes 45 --takes monday.mid tuesday.mid

        Exit codes: 0 written; 1 these hands cannot play the piece; 2 nothing written, or bad arguments; 130 interrupted.
        """;

    public const string LessonPieceHelp =
        "A piano score in MusicXML, an arrangement file (.stridewright), or a tune, which is set for the player";
    public const string LessonLevelHelp =
        "Level of both hands that a tune or arrangement file is set at [default: its own, else 4]";
    public const string LessonDaysHelp = "Days that are planned, 1 to 60 [default: 7]";
    public const string LessonMinutesHelp = "Minutes there are on a day, breaks counted in, 10 to 120 [default: 30]";
    public const string LessonTakesHelp =
        "What was played already, as MIDI files, earliest first: steps, drills and plan follow it";
    public const string LessonOutHelp = "Folder to write into [default: lessons]";
    public const string LessonFormatHelp =
        "What is written of each step and drill beside the booklet [default: musicxml]";

    public static string LessonTitle(LessonDocument lesson) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{lesson.Title}{(lesson.Player is { } player ? " for " + player : "")}: {lesson.Steps.Count} steps, {lesson.Drills.Count} drills, {lesson.Days.Count} days, up to {lesson.Beat} = {lesson.BeatsPerMinute:0}"
        );

    public static string LessonStep(LessonStep step) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{step.Id}: {step.Name}, {step.FromBeats:0} to {step.ToBeats:0}, effort {step.Effort:0}"
        );

    public static string LessonSkipped(LessonSkipped skipped) => $"{skipped.Id}: {skipped.Name}; {skipped.Why}";

    public static string LessonDrill(LessonDrill drill) => $"{drill.Id}: {drill.Claim}";

    public static string LessonToday(LessonDay day) =>
        string.Create(CultureInfo.InvariantCulture, $"{day.Minutes} minutes");

    public static string LessonTask(LessonTask task) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{task.Minutes, 2} min  {(task.Name is null ? task.Words : $"{task.Name}, {task.BeatsPerMinute:0}")}"
        );

    public static string LessonLeft(int steps, int days) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{steps} {(steps == 1 ? "step comes" : "steps come")} after these {days} days"
        );
}
