using System.Globalization;
using System.Xml.Linq;

namespace Stridewright.Engraving;

/// <summary>Engraved music as a picture among others on a page.</summary>
/// <param name="Height">In millimetres.</param>
internal sealed record Strip(string Svg, double Width, double Height)
{
    /// <summary>The picture at a place of a page that counts tenths of a millimetre.</summary>
    /// <param name="name">By which its glyphs and styles are told from those of others on the page.</param>
    public XElement At(double x, double y, string name)
    {
        var whole = XElement.Parse(Svg, LoadOptions.PreserveWhitespace);
        // Every glyph and every rule of style carries the id of the picture.
        var id = (string?)whole.Attribute("id") ?? "";
        if (id.Length > 0)
        {
            whole = XElement.Parse(Svg.Replace(id, name, StringComparison.Ordinal), LoadOptions.PreserveWhitespace);
        }
        var inner = whole.Elements().Single(e => e.Name.LocalName == "svg");
        foreach (var element in inner.Descendants())
        {
            element.Attribute("id")?.Remove();
        }
        var space = whole.Name.Namespace;
        return new XElement(
            space + "g",
            new XAttribute("id", name),
            whole.Elements().Where(e => e.Name.LocalName is "defs" or "style"),
            new XElement(
                space + "g",
                inner.Attributes().Where(a => a.Name.LocalName is "class" or "color" or "font-family"),
                new XAttribute("transform", $"translate({N(x)}, {N(y)}) scale(0.1, 0.1)"),
                inner.Nodes()
            )
        );
    }

    private static string N(double millimetres) =>
        Math.Round(millimetres * 10, 1).ToString(CultureInfo.InvariantCulture);
}
