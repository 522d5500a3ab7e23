using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Engraving;

/// <summary>
/// Draws a chart on as many pages as it needs, in two columns, to be read in print: what was measured in solid marks, what
/// is published in hollow ones. Its pages are written like those of a score.
/// </summary>
public static class ChartPages
{
    private const double Gutter = 10,
        HeadHeight = 16,
        SectionHeight = 7,
        RowHeight = 6.4,
        SpreadHeight = 9,
        Track = 2,
        AxisHeight = 3.4,
        AxisPrint = 6.5,
        ValueWidth = 21,
        SmallPrint = 8;
    private const string Grey = "#b0b0b0",
        Dark = "#606060";

    /// <summary>The chart on the paper of a setup; the same chart gives the same pages.</summary>
    public static EngravedScore Draw(StyleChart chart, PageSetup setup)
    {
        ArgumentNullException.ThrowIfNull(chart);
        ArgumentNullException.ThrowIfNull(setup);
        var pages = new List<ChartMarks>();
        var width = (setup.Width - 2 * setup.SideMargin - Gutter) / 2;
        var (column, y) = (2, 0.0);
        foreach (var section in chart.Sections)
        {
            var scales = section.Rows.Select(r => r.Unit).Distinct().ToDictionary(u => u, u => Scale.Of(section, u));
            // A heading stands over at least three rows.
            Need(SectionHeight + AxisHeight + section.Rows.Take(3).Sum(Height));
            Heading(section.Title);
            ChartUnit? axis = null;
            foreach (var row in section.Rows)
            {
                if (Need(Height(row) + (row.Unit == axis ? 0 : AxisHeight)))
                {
                    Heading(section.Title);
                    axis = null;
                }
                if (row.Unit != axis)
                {
                    Axis(pages[^1], row.Unit, scales[row.Unit], Left(), y, width - ValueWidth);
                    axis = row.Unit;
                    y += AxisHeight;
                }
                Row(pages[^1], row, scales[row.Unit], Left(), y, width);
                y += Height(row);
            }
            y += 2;
        }
        return new EngravedScore(setup, chart.Title, pages.Select(p => p.ToString()).ToValueList(), []);

        double Left() => setup.SideMargin + column * (width + Gutter);

        void Heading(string title)
        {
            pages[^1].Text(title, Left(), y + 4.5, 11, bold: true);
            y += SectionHeight;
        }

        // True where a new column was begun.
        bool Need(double height)
        {
            if (column < 2 && y + height <= setup.Height - setup.EndMargin)
            {
                return false;
            }
            column++;
            if (column >= 2)
            {
                pages.Add(new ChartMarks(setup.Width, setup.Height));
                Head(pages[^1], chart, setup);
                column = 0;
            }
            y = setup.EndMargin + HeadHeight;
            return true;
        }
    }

    private static void Head(ChartMarks marks, StyleChart chart, PageSetup setup)
    {
        marks.Text(chart.Title, setup.Width / 2, setup.EndMargin + 5, 17, "middle", bold: true);
        marks.Text(chart.Subtitle, setup.Width / 2, setup.EndMargin + 10.5, 9.5, "middle");
    }

    private static void Axis(ChartMarks marks, ChartUnit unit, Scale scale, double x, double y, double room)
    {
        foreach (var tick in scale.Ticks(unit))
        {
            marks.Text(
                Value(unit, tick),
                x + scale.Share(tick) * room,
                y + AxisHeight - 1,
                AxisPrint,
                "middle",
                colour: Dark
            );
        }
    }

    private static double Height(ChartRow line) => line.Measured.Count > 1 ? SpreadHeight : RowHeight;

    private static void Row(ChartMarks marks, ChartRow row, Scale scale, double x, double y, double width)
    {
        var room = width - ValueWidth;
        double At(double value) => x + scale.Share(value) * room;
        marks.Text(row.Words, x, y + 2.6, SmallPrint);
        var value = Value(row, row.Measured);
        var text = row.Published.Count > 0 ? $"{value} ({Value(row, row.Published)})" : value;
        marks.Text(text, x + width, y + 5.3, SmallPrint, "end");
        var top = y + 3.6;
        marks.Line(x, top + Track / 2, x + room, top + Track / 2, Grey);
        foreach (var tick in scale.Ticks(row.Unit))
        {
            marks.Line(At(tick), top, At(tick), top + Track, Grey);
        }
        if (row.Measured.Count == 1)
        {
            marks.Bar(x, top + 0.3, At(row.Measured[0]) - x, Track - 0.6);
            if (row.Published.Count == 1)
            {
                marks.Diamond(At(row.Published[0]), top + Track / 2, Track + 0.2);
            }
            return;
        }
        Spread(row.Measured, top, isSolid: true);
        if (row.Published.Count > 0)
        {
            Spread(row.Published, top + Track + 0.5, isSolid: false);
        }

        // A line from the lowest to the highest percentile, a box from the second to the last but one, the median across.
        void Spread(ValueList<double> values, double at, bool isSolid)
        {
            var (low, high) = values.Count > 3 ? (values[1], values[^2]) : (values[0], values[1]);
            marks.Line(At(values[0]), at + Track / 2, At(values[^1]), at + Track / 2);
            if (isSolid)
            {
                marks.Bar(At(low), at + 0.2, At(high) - At(low), Track - 0.4);
            }
            else
            {
                marks.Frame(At(low), at + 0.2, Math.Max(At(high) - At(low), 0.4), Track - 0.4);
            }
            var median = At(values[values.Count > 3 ? values.Count / 2 : 0]);
            marks.Bar(median - 0.25, at - 0.2, 0.5, Track + 0.4, isSolid ? Grey : "#000000");
        }
    }

    private static string Value(ChartRow row, ValueList<double> values) =>
        Value(row.Unit, values[values.Count > 3 ? values.Count / 2 : 0]);

    private static string Value(ChartUnit unit, double value) =>
        unit switch
        {
            ChartUnit.Share => (100 * value).ToString(value < 0.0995 ? "0.#" : "0", CultureInfo.InvariantCulture)
                + " %",
            ChartUnit.Key => Name((int)Math.Round(value)),
            _ => value.ToString("0.##", CultureInfo.InvariantCulture),
        };

    private static string Name(int key) =>
        ((string[])["C", "C♯", "D", "E♭", "E", "F", "F♯", "G", "A♭", "A", "B♭", "B"])[key % 12]
        + (key / 12 - 1).ToString(CultureInfo.InvariantCulture);

    /// <summary>From where to where the rows of one unit in a section reach.</summary>
    private readonly record struct Scale(double From, double To)
    {
        public static Scale Of(ChartSection section, ChartUnit unit)
        {
            var values = section
                .Rows.Where(r => r.Unit == unit)
                .SelectMany(r => r.Measured.Concat(r.Published))
                .ToList();
            return unit == ChartUnit.Key
                ? new Scale(values.Min() - 1, values.Max() + 1)
                : new Scale(Math.Min(0, values.Min()), Math.Max(values.Max(), 0.01) * 1.03);
        }

        /// <summary>Round values along the scale: octaves of C, else three to six steps of 1, 2 or 5.</summary>
        public IEnumerable<double> Ticks(ChartUnit unit)
        {
            var step = 12.0;
            if (unit != ChartUnit.Key)
            {
                var least = (To - From) / 5;
                var power = Math.Pow(10, Math.Floor(Math.Log10(least)));
                step =
                    power
                    * (
                        least <= power ? 1
                        : least <= 2 * power ? 2
                        : least <= 5 * power ? 5
                        : 10
                    );
            }
            for (var tick = Math.Ceiling(From / step) * step; tick <= To; tick += step)
            {
                yield return tick;
            }
        }

        public double Share(double value) => Math.Clamp((value - From) / (To - From), 0, 1);
    }
}
