using Stridewright.Workbench.Reports;

namespace Stridewright.Cli.Output;

/// <summary>Measured style as text.</summary>
internal static class ProfileSummary
{
    // Shares under one in a hundred, here and in print, are left to --json.
    private static bool IsTold(MeasuredFigure figure) =>
        figure.Unit != "share" || figure.Values.Concat(figure.Reference).Any(v => v >= 0.01);

    public static void Write(TextWriter output, ProfileReport report)
    {
        foreach (var score in report.Scores)
        {
            output.WriteLine(CliMessages.OneLine(CliMessages.ProfiledTitle(score)));
            foreach (var remark in score.Reading)
            {
                output.WriteLine(CliMessages.Row(remark.Severity, CliMessages.RemarkOf(remark)));
            }
            foreach (var section in score.Style.Figures.Where(IsTold).GroupBy(f => f.Section))
            {
                output.WriteLine(section.Key + CliMessages.PercentilesOf(section.First()));
                foreach (var figure in section)
                {
                    output.WriteLine(CliMessages.StyleRow(figure));
                }
            }
            output.WriteLine();
        }
        foreach (var drawing in report.Drawings)
        {
            output.WriteLine(CliMessages.Row(drawing.Unchanged ? "unchanged" : "written", drawing.Path));
        }
    }
}
