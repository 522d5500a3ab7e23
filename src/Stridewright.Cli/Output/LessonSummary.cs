using Stridewright.Workbench.Reports;

namespace Stridewright.Cli.Output;

/// <summary>A lesson as text: its steps, its drills, and today's list.</summary>
internal static class LessonSummary
{
    public static void Write(TextWriter output, LessonReport report)
    {
        if (report.Lesson is { } lesson)
        {
            output.WriteLine(CliMessages.OneLine(CliMessages.LessonTitle(lesson)));
            foreach (var step in lesson.Steps)
            {
                Row("step", CliMessages.LessonStep(step));
            }
            foreach (var skipped in lesson.Skipped)
            {
                Row("left out", CliMessages.LessonSkipped(skipped));
            }
            foreach (var drill in lesson.Drills)
            {
                Row("drill", CliMessages.LessonDrill(drill));
            }
            if (lesson.Days is [var today, ..])
            {
                Row("today", CliMessages.LessonToday(today));
                foreach (var task in today.Tasks)
                {
                    Row("", CliMessages.LessonTask(task));
                }
            }
            if (lesson.Left.Count > 0)
            {
                Row("note", CliMessages.LessonLeft(lesson.Left.Count, lesson.Days.Count));
            }
            foreach (var sentence in lesson.Heard)
            {
                Row("heard", sentence);
            }
            foreach (var sentence in lesson.Remarks)
            {
                Row("note", sentence);
            }
        }
        foreach (var remark in report.Reading)
        {
            Row(remark.Severity, CliMessages.RemarkOf(remark));
        }
        foreach (var file in report.Outputs)
        {
            Row(file.Unchanged ? "unchanged" : "written", file.Path);
        }

        void Row(string name, string text) => output.WriteLine(CliMessages.Row(name, text));
    }
}
