using Stridewright.Workbench.Reports;

namespace Stridewright.Cli.Output;

/// <summary>What was heard, as text.</summary>
internal static class CompareSummary
{
    public static void Write(TextWriter output, CompareReport report)
    {
        if (report.Heard is { } heard)
        {
            output.WriteLine(CliMessages.OneLine(CliMessages.HeardTitle(report)));
            foreach (var sentence in report.Summary)
            {
                output.WriteLine(CliMessages.Row("", sentence));
            }
            foreach (var next in heard.Next)
            {
                Row("next", next.Message);
            }
            foreach (var remark in heard.Remarks.Except(heard.Next))
            {
                Row("remark", remark.Message);
            }
            foreach (var remark in heard.Reading)
            {
                Row(remark.Severity, CliMessages.RemarkOf(remark));
            }
        }
        foreach (var file in report.Outputs)
        {
            Row(file.Unchanged ? "unchanged" : "written", file.Path);
        }
        void Row(string name, string text) => output.WriteLine(CliMessages.Row(name, text));
    }
}
