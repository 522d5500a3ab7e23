using System.Globalization;
using System.Text;
using System.Xml.Linq;

namespace Stridewright.Engraving;

/// <summary>
/// What stands around the music: title, subtitle and composer on the first page, a page number on the others. The
/// engraver's own header sets all text in one size; ours takes its place in the SVG.
/// </summary>
internal static class PageFrame
{
    /// <summary>Room for the header, in millimetres.</summary>
    public const double HeaderHeight = 19;

    /// <summary>The text that holds the header's place until it is set.</summary>
    public const string HeaderMark = "header";

    /// <summary>About the height of that text, in half staff spaces.</summary>
    public const double MarkHalfSpaces = 5;

    // The engraver's SVG counts hundredths of a millimetre inside its view box.
    private const double Unit = 0.01;

    /// <summary>A typographer's point in millimetres.</summary>
    public const double Point = 25.4 / 72;

    /// <summary>Sets the header (on page 1) or the page number into the engraver's SVG of a page, from 1.</summary>
    public static string Complete(string svg, int page, ScoreXml score, PageSetup setup)
    {
        if (page == 1)
        {
            return setup.Header ? WithHeader(svg, score, setup) : svg;
        }
        if (setup.ScreenWidth is not null)
        {
            return svg;
        }
        var end = svg.IndexOf("</svg>", StringComparison.Ordinal);
        var number = Line(
            page.ToString(CultureInfo.InvariantCulture),
            setup.Width / 2,
            setup.Height - setup.EndMargin / 2,
            10,
            "middle"
        );
        return end < 0 ? svg : svg.Insert(end, $"<g class=\"pgFoot\">{number}</g>");
    }

    private static string WithHeader(string svg, ScoreXml score, PageSetup setup)
    {
        var start = svg.IndexOf("class=\"pgHead", StringComparison.Ordinal);
        var end = start < 0 ? -1 : svg.IndexOf("</g>", start, StringComparison.Ordinal);
        if (end < 0)
        {
            return svg;
        }
        start = svg.IndexOf('>', start) + 1;
        // Places are counted from the upper left corner inside the margins.
        var width = setup.Width - 2 * setup.SideMargin;
        var composer = Fitted(11, score.Composer, width / 3);
        var beside = width - 2 * Width(composer, score.Composer);
        var header = new StringBuilder();
        header.Append(Line(score.Title, width / 2, 7, Fitted(24, score.Title, width), "middle", "bold"));
        header.Append(
            Line(score.Subtitle, width / 2, 13, Fitted(11.5, score.Subtitle, beside), "middle", "normal", "italic")
        );
        header.Append(Line(score.Composer, width, 13, composer, "end"));
        return string.Concat(svg.AsSpan(0, start), header.ToString(), svg.AsSpan(end));
    }

    // The size in points, or a smaller one with which the text fits into the room.
    private static double Fitted(double points, string? text, double room) =>
        Math.Min(points, points * room / Math.Max(Width(points, text), 1));

    // About the width of a text in millimetres: letters of a serif are half as wide as high on the average.
    private static double Width(double points, string? text) => (text ?? "").Length * 0.5 * points * Point;

    /// <summary>Width and height of a page in millimetres.</summary>
    public static (double Width, double Height) SizeOf(string svg)
    {
        const string Mark = "viewBox=\"";
        var start = svg.IndexOf(Mark, StringComparison.Ordinal) + Mark.Length;
        var box = SvgNumbers.List(svg[start..svg.IndexOf('"', start)]);
        return (box[2] / 10, box[3] / 10);
    }

    /// <summary>A page of text, in the frame and units of the engraver's own pages.</summary>
    public static string Sheet(string text, PageSetup setup) =>
        FormattableString.Invariant(
            $"""
            <svg viewBox="0 0 {setup.Width * 10:0} {setup.Height
                * 10:0}" version="1.1" xmlns="http://www.w3.org/2000/svg" overflow="visible">
               <svg class="definition-scale" color="black" viewBox="0 0 {Units(setup.Width)} {Units(setup.Height)}">
                  <g class="notes" font-family="Times, serif">{text}</g>
               </svg>
            </svg>
            """
        );

    /// <summary>A line of text; nothing where there is none.</summary>
    /// <param name="x">In millimetres from the left.</param>
    /// <param name="y">In millimetres from the top.</param>
    public static string Line(
        string? text,
        double x,
        double y,
        double points,
        string anchor,
        string weight = "normal",
        string style = "normal"
    ) =>
        string.IsNullOrEmpty(text)
            ? ""
            : new XElement(
                "text",
                new XAttribute("x", Units(x)),
                new XAttribute("y", Units(y)),
                new XAttribute("text-anchor", anchor),
                new XAttribute("font-size", Units(points * Point) + "px"),
                new XAttribute("font-weight", weight),
                new XAttribute("font-style", style),
                text
            ).ToString(SaveOptions.DisableFormatting);

    private static string Units(double millimetres) =>
        Math.Round(millimetres / Unit).ToString(CultureInfo.InvariantCulture);
}
