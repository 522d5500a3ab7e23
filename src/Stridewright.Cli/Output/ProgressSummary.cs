using Stridewright.Workbench.Practising;

namespace Stridewright.Cli.Output;

/// <summary>How players have come on, as text.</summary>
internal static class ProgressSummary
{
    public static void Write(TextWriter output, ProgressReport report)
    {
        if (report.Players.Count == 0)
        {
            output.WriteLine(CliMessages.NoProgress);
        }
        foreach (var player in report.Players)
        {
            output.WriteLine(CliMessages.OneLine(CliMessages.PlayerLine(player)));
            foreach (var piece in player.Pieces)
            {
                Row("piece", CliMessages.PieceLine(piece));
                foreach (var week in piece.Weeks)
                {
                    Row("", CliMessages.WeekLine(week));
                }
            }
            foreach (var due in player.Due)
            {
                Row("due", due);
            }
        }
        void Row(string name, string text) => output.WriteLine(CliMessages.Row(name, CliMessages.OneLine(text)));
    }
}
