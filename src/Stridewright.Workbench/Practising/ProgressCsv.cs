using System.Globalization;
using System.Text;

namespace Stridewright.Workbench.Practising;

/// <summary>
/// Progress as a table, a line for each player, piece and week (RFC 4180: commas, CRLF, quotes doubled). A spreadsheet
/// would run a cell that begins as a formula does: such a cell begins with an apostrophe, and is quoted.
/// </summary>
public static class ProgressCsv
{
    private static readonly string[] Head =
    [
        "player",
        "piece",
        "week",
        "takes",
        "days",
        "cleanness",
        "tempo_reached",
        "tempo_asked",
        "unevenness",
        "due_today",
    ];

    /// <summary>The table, in UTF-8 without a mark at its beginning.</summary>
    public static byte[] Of(ProgressReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var text = new StringBuilder();
        Line(text, Head);
        foreach (var player in report.Players)
        {
            foreach (var piece in player.Pieces)
            {
                foreach (var week in piece.Weeks)
                {
                    Line(
                        text,
                        player.Name,
                        piece.Title,
                        week.Week.ToString("O", CultureInfo.InvariantCulture),
                        Number(week.Takes),
                        Number(week.Days),
                        Number(week.Cleanness),
                        Number(week.TempoReached),
                        Number(piece.AskedTempo),
                        Number(week.Unevenness),
                        Number(piece.Items.Count(i => i.IsDue))
                    );
                }
            }
        }
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    /// <summary>One cell.</summary>
    internal static string Cell(string text)
    {
        // OWASP, CSV Injection: these begin a formula, also behind blanks that a spreadsheet takes away.
        var isFormula = text.TrimStart(' ', '\t', '\r', '\n') is [var first, ..] && "=+-@＝＋－＠".Contains(first);
        var isOther = text is ['\t' or '\r' or '\n', ..];
        var said = isFormula || isOther ? "'" + text : text;
        return isFormula || isOther || said.AsSpan().ContainsAny(",\"\r\n")
            ? $"\"{said.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : said;
    }

    private static void Line(StringBuilder text, params string[] cells) =>
        text.AppendJoin(',', cells.Select(Cell)).Append("\r\n");

    private static string Number(double? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "";
}
