using System.Globalization;
using System.Xml.Linq;

namespace Stridewright.Engraving;

/// <summary>The marks of a chart in the engraver's small SVG vocabulary; lengths are in millimetres. All differ by shape, so
/// that they are told apart in black and white.</summary>
internal sealed class ChartMarks
{
    private const double Point = 25.4 / 72;
    private const double Units = 10;
    private readonly XElement _page;

    public ChartMarks(double width, double height)
    {
        _page = new XElement(
            "svg",
            new XAttribute("viewBox", $"0 0 {N(width)} {N(height)}"),
            new XAttribute("width", $"{width.ToString(CultureInfo.InvariantCulture)}mm"),
            new XAttribute("height", $"{height.ToString(CultureInfo.InvariantCulture)}mm"),
            new XAttribute("font-family", "Source Serif 4, serif")
        );
    }

    /// <summary>The page as SVG.</summary>
    public override string ToString() =>
        _page
            .ToString(SaveOptions.DisableFormatting)
            .Replace("<svg ", "<svg xmlns=\"http://www.w3.org/2000/svg\" ", StringComparison.Ordinal);

    /// <summary>Puts a picture on the page.</summary>
    public void Put(XElement picture) => _page.Add(picture);

    /// <param name="anchor"><c>start</c>, <c>middle</c> or <c>end</c>.</param>
    public void Text(
        string text,
        double x,
        double y,
        double points,
        string anchor = "start",
        bool bold = false,
        bool italic = false,
        string colour = "#000000"
    ) =>
        _page.Add(
            new XElement(
                "text",
                new XAttribute("x", N(x)),
                new XAttribute("y", N(y)),
                new XAttribute("text-anchor", anchor),
                new XAttribute("font-size", N(points * Point) + "px"),
                new XAttribute("font-weight", bold ? "bold" : "normal"),
                italic ? new XAttribute("font-style", "italic") : null,
                colour == "#000000" ? null : new XAttribute("fill", colour),
                text
            )
        );

    /// <summary>A solid bar.</summary>
    public void Bar(double x, double y, double width, double height, string colour = "#000000") =>
        _page.Add(
            new XElement(
                "rect",
                new XAttribute("x", N(x)),
                new XAttribute("y", N(y)),
                new XAttribute("width", N(Math.Max(width, 0.1))),
                new XAttribute("height", N(height)),
                new XAttribute("fill", colour),
                new XAttribute("stroke-width", 0)
            )
        );

    /// <summary>A hollow bar.</summary>
    public void Frame(double x, double y, double width, double height)
    {
        Bar(x, y, width, height, "#ffffff");
        Outline($"M{N(x)} {N(y)}h{N(width)}v{N(height)}h{N(-width)}z");
    }

    /// <summary>A ring around a place, hollow or filled.</summary>
    public void Ring(double x, double y, double size, bool isFilled = false)
    {
        var r = N(size / 2);
        var outline = $"M{N(x - size / 2)} {N(y)}a{r} {r} 0 1 0 {N(size)} 0a{r} {r} 0 1 0 {N(-size)} 0z";
        Filled(outline, isFilled ? "#000000" : "#ffffff");
        Outline(outline);
    }

    /// <summary>A hollow diamond around a place.</summary>
    public void Diamond(double x, double y, double size)
    {
        var d = N(size / 2);
        var outline = $"M{N(x - size / 2)} {N(y)}l{d} -{d}l{d} {d}l-{d} {d}z";
        Filled(outline, "#ffffff");
        Outline(outline);
    }

    /// <summary>A thin straight line.</summary>
    public void Line(double fromX, double fromY, double toX, double toY, string colour = "#000000") =>
        _page.Add(
            new XElement(
                "path",
                new XAttribute("d", $"M{N(fromX)} {N(fromY)}L{N(toX)} {N(toY)}"),
                new XAttribute("fill", "none"),
                new XAttribute("stroke", colour),
                new XAttribute("stroke-width", N(0.2))
            )
        );

    private void Filled(string data, string colour) =>
        _page.Add(
            new XElement(
                "path",
                new XAttribute("d", data),
                new XAttribute("fill", colour),
                new XAttribute("stroke-width", 0)
            )
        );

    private void Outline(string data) =>
        _page.Add(
            new XElement(
                "path",
                new XAttribute("d", data),
                new XAttribute("fill", "none"),
                new XAttribute("stroke", "#000000"),
                new XAttribute("stroke-width", N(0.3))
            )
        );

    private static string N(double millimetres) =>
        Math.Round(millimetres * Units, 1).ToString(CultureInfo.InvariantCulture);
}
