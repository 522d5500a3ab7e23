using Stridewright.Workbench;

namespace Stridewright.Cli.Output;

/// <summary>What came of work on bars, as text.</summary>
internal static class SpotSummary
{
    private const int MostStyle = 3;

    public static void Write(TextWriter output, SpotReport report, SpotAction action)
    {
        foreach (var way in report.Ways)
        {
            output.WriteLine(CliMessages.WayLine(way));
            foreach (var change in way.Changes)
            {
                output.WriteLine("    " + CliMessages.OneLine(change));
            }
            foreach (var moved in way.Style.Take(MostStyle))
            {
                output.WriteLine("    " + CliMessages.OneLine(CliMessages.StyleLine(moved)));
            }
        }
        if (action == SpotAction.Ways && report.Ways.Count == 0)
        {
            output.WriteLine(CliMessages.NoOtherWay);
        }
        foreach (var remark in report.Remarks.Where(r => r.Severity != "note"))
        {
            output.WriteLine(CliMessages.Row(remark.Severity, CliMessages.RemarkOf(remark)));
        }
        output.WriteLine(CliMessages.Row("kept", CliMessages.KeptOf(report.Kept)));
        if (report.Figures.Count > 0)
        {
            output.WriteLine(CliMessages.Row("figures", CliMessages.OneLine(string.Join(", ", report.Figures))));
        }
        if (action is not (SpotAction.Ways or SpotAction.Figure))
        {
            output.WriteLine(CliMessages.Row("changed", CliMessages.ChangedOf(report.Changed)));
        }
    }
}
