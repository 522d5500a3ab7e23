using Stridewright.Workbench.Reports;

namespace Stridewright.Cli.Output;

/// <summary>A fingering as text.</summary>
internal static class FingerSummary
{
    private const int MostRemarks = 12;
    private const int DearestBars = 3;

    public static void Write(TextWriter output, FingerReport report)
    {
        foreach (var score in report.Written)
        {
            output.WriteLine(CliMessages.OneLine(CliMessages.FingeredTitle(score)));
            Row("hands", CliMessages.HandsOf(score.Hands));
            Row("fingers", CliMessages.FingersOf(score));
            var dearest = score.Costs.Where(b => b.Terms.Count > 0).OrderByDescending(b => b.Cost).Take(DearestBars);
            if (dearest.Any())
            {
                Row("dearest", CliMessages.DearestOf(dearest));
            }
            foreach (var remark in score.Reading.Concat(score.Remarks).Take(MostRemarks))
            {
                Row(remark.Severity, CliMessages.RemarkOf(remark));
            }
            if (score.Reading.Count + score.Remarks.Count > MostRemarks)
            {
                Row("", CliMessages.MoreRemarks(score.Reading.Count + score.Remarks.Count - MostRemarks));
            }
            foreach (var file in score.Outputs)
            {
                Row(file.Unchanged ? "unchanged" : "written", file.Path);
            }
        }
        void Row(string name, string text) => output.WriteLine(CliMessages.Row(name, text));
    }
}
