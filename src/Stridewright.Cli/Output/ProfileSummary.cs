using Stridewright.Workbench.Reports;

namespace Stridewright.Cli.Output;

/// <summary>Measured style as text.</summary>
internal static class ProfileSummary
{
    public static void Write(TextWriter output, ProfileReport report)
    {
        foreach (var score in report.Scores)
        {
            output.WriteLine(CliMessages.OneLine(CliMessages.ProfiledTitle(score)));
            foreach (var remark in score.Reading)
            {
                output.WriteLine(CliMessages.Row(remark.Severity, CliMessages.RemarkOf(remark)));
            }
            foreach (var figure in score.Style.Figures)
            {
                output.WriteLine(CliMessages.StyleRow(figure));
            }
            output.WriteLine();
        }
    }
}
