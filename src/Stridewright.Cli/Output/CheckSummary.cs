using Stridewright.Workbench.Reports;

namespace Stridewright.Cli.Output;

/// <summary>A judgement as text.</summary>
internal static class CheckSummary
{
    public static void Write(TextWriter output, CheckReport report)
    {
        if (report.Score is not { } score)
        {
            return;
        }
        output.WriteLine(CliMessages.OneLine(CliMessages.JudgedTitle(report.File, score)));
        Row("hands", CliMessages.HandsOf(score.Hands));
        Row("tempo", CliMessages.TempoOf(score));
        EffortRows.Write(Row, score.Effort);
        foreach (var remark in score.Reading)
        {
            Row(remark.Severity, CliMessages.RemarkOf(remark));
        }
        output.WriteLine();
        foreach (var spot in score.Spots)
        {
            output.WriteLine(CliMessages.OneLine(CliMessages.SpotOf(spot)));
        }
        output.WriteLine(CliMessages.Judgement(score.Spots.Count));
        void Row(string name, string text) => output.WriteLine(CliMessages.Row(name, text));
    }
}
