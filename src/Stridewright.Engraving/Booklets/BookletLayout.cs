using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Stridewright.Music;

namespace Stridewright.Engraving;

/// <summary>Lays text and music out on the pages of a booklet, numbered from the second on.</summary>
public static partial class BookletLayout
{
    /// <summary>The pages; the same parts give the same pages.</summary>
    public static EngravedScore LayOut(string title, IEnumerable<BookletPart> parts, PageSetup setup)
    {
        ArgumentNullException.ThrowIfNull(parts);
        ArgumentNullException.ThrowIfNull(setup);
        var pages = new Pages(setup);
        foreach (var part in parts)
        {
            pages.Add(part);
        }
        return new EngravedScore(setup, title, pages.Done(), []);
    }

    /// <summary>Pages as they fill, from the top down; lengths are in millimetres.</summary>
    private sealed class Pages(PageSetup setup)
    {
        // From the bottom of one line to the bottom of the next, in heights of a letter.
        private const double Leading = 1.38,
            ColumnGap = 3,
            Units = 100,
            LabelGap = 6.5;

        private readonly List<string> _pages = [];
        private readonly Dictionary<string, int> _marks = [];
        private StringBuilder? _page;
        private double _y;

        private double Width => setup.Width - 2 * setup.SideMargin;

        private double Bottom => setup.Height - setup.EndMargin - 3;

        public void Add(BookletPart part)
        {
            if (part is BookletPages music)
            {
                Close();
                Note(part);
                _pages.AddRange(music.Svg.Select(svg => Foot().Replace(svg, "")));
                return;
            }
            if (part is BookletGroup group)
            {
                Room(Math.Min(group.Parts.Sum(Height), Bottom - setup.EndMargin - 3));
                Note(part);
                foreach (var one in group.Parts)
                {
                    Add(one);
                }
                return;
            }
            if (part.NewPage)
            {
                Close();
            }
            switch (part)
            {
                case BookletHeading heading:
                    // Never alone at the foot of a page.
                    Room(Line(heading.Points) + 12);
                    Note(part);
                    Heading(heading);
                    break;
                case BookletText text:
                    Note(part);
                    Text(text);
                    break;
                case BookletRow row:
                    Row(row);
                    break;
                case BookletSpace space:
                    _y += _page is null ? 0 : space.Height;
                    break;
                case BookletStrip strip:
                    Strip(strip);
                    break;
            }
        }

        public ValueList<string> Done()
        {
            Close();
            return _pages.Select((page, i) => Numbered(Marked(page), i + 1)).ToValueList();
        }

        private static double Line(double points) => points * PageFrame.Point * Leading;

        private void Close()
        {
            if (_page is not null)
            {
                _pages.Add(PageFrame.Sheet(_page.ToString(), setup));
                _page = null;
            }
        }

        private double Height(BookletPart part) =>
            part switch
            {
                BookletHeading heading => 1.35 * Line(heading.Points),
                BookletText text => (
                    Lines(text.Text, text.Points, Width - (text.Label.Length > 0 ? LabelGap : 0)).Count + 0.25
                ) * Line(text.Points),
                BookletSpace space => space.Height,
                BookletRow row => Cells(row).Max(c => c.Count) * Line(row.Points) + 2.2,
                BookletStrip strip => HeightOf(strip) + 1,
                _ => 0,
            };

        private List<List<string>> Cells(BookletRow row) =>
            [.. row.Cells.Select((cell, i) => Lines(cell, row.Points, Math.Max(0, row.Widths[i] * Width - ColumnGap)))];

        private static double HeightOf(BookletStrip strip) =>
            ViewBox().Match(strip.Svg) is { Success: true } box
                ? double.Parse(box.Groups[1].Value, CultureInfo.InvariantCulture) / 10
                : 0;

        // Begins a page where there is none, or where what comes does not fit.
        private StringBuilder Room(double height)
        {
            if (_page is not null && _y + height > Bottom)
            {
                Close();
            }
            if (_page is null)
            {
                (_page, _y) = (new StringBuilder(), setup.EndMargin + 3);
            }
            return _page;
        }

        private void Note(BookletPart part)
        {
            if (part.Mark is { } mark)
            {
                _marks[mark] = _pages.Count + 1;
            }
        }

        private void Heading(BookletHeading heading)
        {
            var page = Room(Line(heading.Points));
            _y += Line(heading.Points);
            page.Append(
                PageFrame.Line(
                    heading.Text,
                    heading.Centred ? setup.Width / 2 : setup.SideMargin,
                    _y,
                    Fitted(heading.Text, heading.Points),
                    heading.Centred ? "middle" : "start",
                    heading.Italic ? "normal" : "bold",
                    heading.Italic ? "italic" : "normal"
                )
            );
            _y += Line(heading.Points) * 0.35;
        }

        private double Fitted(string text, double points) =>
            Math.Min(points, points * Width / Math.Max(1, SvgText.WidthOf(text, points * PageFrame.Point) * 1.08));

        private void Text(BookletText text)
        {
            var indent = text.Label.Length > 0 ? LabelGap : 0;
            var first = true;
            foreach (var line in Lines(text.Text, text.Points, Width - indent))
            {
                var page = Room(Line(text.Points));
                _y += Line(text.Points);
                if (first && indent > 0)
                {
                    page.Append(PageFrame.Line(text.Label, setup.SideMargin + 1, _y, text.Points, "start"));
                }
                page.Append(
                    PageFrame.Line(
                        line,
                        setup.SideMargin + indent,
                        _y,
                        text.Points,
                        "start",
                        "normal",
                        text.Italic ? "italic" : "normal"
                    )
                );
                first = false;
            }
            _y += Line(text.Points) * 0.25;
        }

        private void Row(BookletRow row)
        {
            var cells = Cells(row);
            var height = cells.Max(c => c.Count) * Line(row.Points);
            var page = Room(height + 2);
            Note(row);
            var x = setup.SideMargin;
            for (var i = 0; i < cells.Count; i++)
            {
                for (var line = 0; line < cells[i].Count; line++)
                {
                    page.Append(
                        PageFrame.Line(
                            cells[i][line],
                            x,
                            _y + (line + 1) * Line(row.Points),
                            row.Points,
                            "start",
                            row.Bold ? "bold" : "normal"
                        )
                    );
                }
                x += row.Widths[i] * Width;
            }
            _y += height + 1.6;
            if (row.Ruled)
            {
                page.Append(
                    CultureInfo.InvariantCulture,
                    $"<path d=\"M{setup.SideMargin * Units:0} {_y * Units:0} L{(setup.Width - setup.SideMargin) * Units:0} {_y * Units:0}\" stroke=\"#000000\" stroke-width=\"13\"/>"
                );
                _y += 0.6;
            }
        }

        private void Strip(BookletStrip strip)
        {
            var height = HeightOf(strip);
            if (height == 0)
            {
                return;
            }
            var inner = strip.Svg.IndexOf("class=\"definition-scale\"", StringComparison.Ordinal);
            var from = strip.Svg.IndexOf('>', inner) + 1;
            var to = strip.Svg.LastIndexOf(
                "</svg>",
                strip.Svg.LastIndexOf("</svg>", StringComparison.Ordinal) - 1,
                StringComparison.Ordinal
            );
            var glyphs = Glyphs().Match(strip.Svg).Value;
            var page = Room(height);
            page.Append(CultureInfo.InvariantCulture, $"<g transform=\"translate(0, {_y * Units:0})\">{glyphs}");
            page.Append(strip.Svg.AsSpan(from, to - from)).Append("</g>");
            // The prefix of links is declared on the engraver's own pages only.
            page.Replace("xlink:href", "href");
            _y += height + 1;
        }

        // Marks of rows as the page numbers that they stand for.
        private string Marked(string page) =>
            Reference()
                .Replace(
                    page,
                    m =>
                        _marks.TryGetValue(m.Groups[1].Value, out var number)
                            ? number.ToString(CultureInfo.InvariantCulture)
                            : m.Value
                );

        private string Numbered(string page, int number)
        {
            var end = page.LastIndexOf("</svg>", StringComparison.Ordinal);
            if (number == 1 || end < 0)
            {
                return page;
            }
            end = page.LastIndexOf("</svg>", end - 1, StringComparison.Ordinal);
            var line = PageFrame.Line(
                number.ToString(CultureInfo.InvariantCulture),
                setup.Width / 2,
                setup.Height - setup.EndMargin / 2,
                10,
                "middle"
            );
            return page.Insert(end, $"<g class=\"pgFoot\">{line}</g>");
        }

        // What stands for a page number is short in the end.
        private static List<string> Lines(string text, double points, double room) =>
            Reference().IsMatch($">{text}<") ? [text] : TextLines.Of(text, points, room);
    }

    [GeneratedRegex("<g class=\"pgFoot\">.*?</g>")]
    private static partial Regex Foot();

    [GeneratedRegex("viewBox=\"0 0 [0-9.]+ ([0-9.]+)\"")]
    private static partial Regex ViewBox();

    [GeneratedRegex("<defs>.*?</defs>", RegexOptions.Singleline)]
    private static partial Regex Glyphs();

    // A whole line; other words that begin so are somebody's own.
    [GeneratedRegex("(?<=>)@([a-z]+(?:-[a-z0-9]+)*)(?=<)")]
    private static partial Regex Reference();
}
