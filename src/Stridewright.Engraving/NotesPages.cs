using System.Globalization;
using System.Text;

namespace Stridewright.Engraving;

/// <summary>Sets a score's footnotes on pages of their own after the music, in the faces of its header.</summary>
internal static class NotesPages
{
    private const double HeadingPoints = 18,
        TextPoints = 10.5,
        LineHeight = 5.2,
        NoteGap = 1.2,
        Indent = 10,
        HeadingHeight = 14;

    /// <summary>Pages as SVG, counted on from the music's; none where there are no notes.</summary>
    public static IEnumerable<string> Of(ScoreXml score, PageSetup setup, int pagesBefore)
    {
        var notes = new Queue<(int Number, List<string> Lines)>(
            score.Footnotes.Select(
                (note, i) => (i + 1, TextLines.Of(note, TextPoints, setup.Width - 2 * setup.SideMargin - Indent))
            )
        );
        for (var page = pagesBefore + 1; notes.Count > 0; page++)
        {
            var y = setup.EndMargin + (page == pagesBefore + 1 ? HeadingHeight : LineHeight);
            var text = new StringBuilder();
            if (page == pagesBefore + 1)
            {
                var heading = setup.EndMargin + LineHeight;
                text.Append(
                    PageFrame.Line(EngravingMessages.Notes, setup.Width / 2, heading, HeadingPoints, "middle", "bold")
                );
            }
            // A note is not torn over two pages, unless it is longer than one.
            var first = true;
            while (
                notes.Count > 0 && (first || y + LineHeight * notes.Peek().Lines.Count < setup.Height - setup.EndMargin)
            )
            {
                first = false;
                var (number, lines) = notes.Dequeue();
                var label = number.ToString(CultureInfo.InvariantCulture);
                text.Append(PageFrame.Line(label, setup.SideMargin + Indent - 3, y, TextPoints, "end", "bold"));
                foreach (var line in lines)
                {
                    text.Append(PageFrame.Line(line, setup.SideMargin + Indent, y, TextPoints, "start"));
                    y += LineHeight;
                }
                y += NoteGap;
            }
            yield return PageFrame.Complete(PageFrame.Sheet(text.ToString(), setup), page, score, setup);
        }
    }
}
