using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Engraving;

/// <summary>
/// Draws effort along a piece in rows of bars: the right hand in solid columns upward, the left in hollow ones downward, as the
/// hands lie on the page. Bars that cannot be played have a diamond, the hardest a star, both named in a line of words.
/// </summary>
public static class EffortPages
{
    private const double HeadHeight = 22,
        RowHeight = 62,
        HandHeight = 22,
        SideWidth = 12,
        WidestColumn = 6,
        SmallPrint = 8;
    private const int BarsInRow = 32,
        NumberEvery = 4,
        Most = 100;
    private const string Grey = "#b0b0b0";

    /// <summary>The chart on the paper of a setup; the same chart gives the same pages.</summary>
    public static EngravedScore Draw(EffortChart chart, PageSetup setup)
    {
        ArgumentNullException.ThrowIfNull(chart);
        ArgumentNullException.ThrowIfNull(setup);
        var pages = new List<ChartMarks>();
        var y = double.MaxValue;
        foreach (var row in chart.Columns.Chunk(BarsInRow))
        {
            if (y + RowHeight > setup.Height - setup.EndMargin)
            {
                pages.Add(new ChartMarks(setup.Width, setup.Height));
                Head(pages[^1], chart, setup);
                y = setup.EndMargin + HeadHeight;
            }
            Row(pages[^1], row, setup, y);
            y += RowHeight;
        }
        if (pages.Count == 0)
        {
            pages.Add(new ChartMarks(setup.Width, setup.Height));
            Head(pages[^1], chart, setup);
        }
        return new EngravedScore(setup, chart.Title, pages.Select(p => p.ToString()).ToValueList(), []);
    }

    private static void Head(ChartMarks marks, EffortChart chart, PageSetup setup)
    {
        marks.Text(chart.Title, setup.Width / 2, setup.EndMargin + 5, 17, "middle", bold: true);
        marks.Text(chart.Subtitle, setup.Width / 2, setup.EndMargin + 10.5, 9.5, "middle");
        marks.Text(EngravingMessages.EffortKey, setup.Width / 2, setup.EndMargin + 15.5, SmallPrint, "middle");
    }

    private static void Row(ChartMarks marks, EffortColumn[] row, PageSetup setup, double y)
    {
        var left = setup.SideMargin + SideWidth;
        var width = Math.Min(WidestColumn, (setup.Width - setup.SideMargin - left) / BarsInRow);
        var right = left + width * row.Length;
        var middle = y + 6 + HandHeight;
        foreach (var value in (int[])[Most / 2, Most])
        {
            var off = HandHeight * value / Most;
            marks.Line(left, middle - off, right, middle - off, Grey);
            marks.Line(left, middle + off, right, middle + off, Grey);
            var text = value.ToString(CultureInfo.InvariantCulture);
            marks.Text(text, left - 1.5, middle - off + 1, SmallPrint - 1, "end");
            marks.Text(text, left - 1.5, middle + off + 1, SmallPrint - 1, "end");
        }
        marks.Text(EngravingMessages.RightHand, setup.SideMargin, middle - HandHeight / 4 + 1, SmallPrint);
        marks.Text(EngravingMessages.LeftHand, setup.SideMargin, middle + HandHeight / 4 + 1, SmallPrint);
        for (var i = 0; i < row.Length; i++)
        {
            var (x, bar) = (left + i * width, row[i]);
            var (up, down) = (HandHeight * bar.Right / Most, HandHeight * bar.Left / Most);
            if (bar.Right > 1)
            {
                marks.Bar(x + 0.15 * width, middle - up, 0.7 * width, up);
            }
            if (bar.Left > 1)
            {
                marks.Frame(x + 0.15 * width, middle, 0.7 * width, down);
            }
            if (bar.IsFaulty)
            {
                marks.Diamond(x + width / 2, middle - up - 2.2, 2.6);
            }
            if (bar.IsHard)
            {
                marks.Text("*", x + width / 2, middle + down + 4, SmallPrint + 3, "middle", bold: true);
            }
            // The first bars of fours, as phrases go.
            if (
                int.TryParse(bar.Number, NumberStyles.None, CultureInfo.InvariantCulture, out var n)
                && n % NumberEvery == 1
            )
            {
                marks.Text(bar.Number, x + width / 2, middle + HandHeight + 4.5, SmallPrint - 1, "middle");
            }
        }
        marks.Line(left, middle, right, middle);
        marks.Text(EngravingMessages.BarsOf(row), left, middle + HandHeight + 9, SmallPrint);
    }
}
