using Stridewright.Workbench;

namespace Stridewright.Cli.Output;

/// <summary>A player as text.</summary>
internal static class PlayerSummary
{
    public static void Write(TextWriter output, PlayerReport report)
    {
        if (report.Hands is not { } hands || report.Right is not { } right || report.Left is not { } left)
        {
            return;
        }
        output.WriteLine(CliMessages.OneLine(report.Name ?? CliMessages.UsualName));
        output.WriteLine(CliMessages.Row("hands", CliMessages.HandsOf(hands)));
        Hand("left", left);
        Hand("right", right);
        foreach (var line in report.Notes.Split('\n').Where(l => l.Length > 0))
        {
            output.WriteLine(CliMessages.Row("notes", line));
        }
        foreach (var sentence in report.Measured)
        {
            output.WriteLine(CliMessages.Row("measured", sentence));
        }
        foreach (var file in report.Outputs)
        {
            output.WriteLine(CliMessages.Row("written", file.Path));
        }

        void Hand(string name, OneHandReport hand)
        {
            output.WriteLine(CliMessages.Row(name, CliMessages.OneHandOf(hand)));
            foreach (var reach in hand.Reach)
            {
                output.WriteLine(CliMessages.Row("", CliMessages.ReachOf(reach)));
            }
        }
    }
}
