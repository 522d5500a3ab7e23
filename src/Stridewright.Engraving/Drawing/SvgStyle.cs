using System.Xml.Linq;
using SkiaSharp;

namespace Stridewright.Engraving;

/// <summary>The inherited properties of an element of the engraver's SVG.</summary>
internal sealed record SvgStyle
{
    public static readonly SvgStyle Plain = new();

    public bool Fill { get; init; } = true;

    public SKColor Colour { get; init; } = SKColors.Black;

    public float StrokeWidth { get; init; } = 1;

    public string? Dashes { get; init; }

    public SKStrokeCap Cap { get; init; } = SKStrokeCap.Butt;

    public SKStrokeJoin Join { get; init; } = SKStrokeJoin.Miter;

    public float FontSize { get; init; } = 16;

    public bool Bold { get; init; }

    public bool Italic { get; init; }

    public SKTextAlign Anchor { get; init; } = SKTextAlign.Left;

    public bool Visible { get; init; } = true;

    /// <summary>This style changed by the attributes of an element.</summary>
    public SvgStyle With(XElement element)
    {
        var style = this;
        foreach (var attribute in element.Attributes())
        {
            var value = attribute.Value;
            style = attribute.Name.LocalName switch
            {
                "class" => style.WithClass(value),
                "fill" => style with { Fill = value != "none", Colour = style.Parsed(value) },
                // Frames around section names.
                "fill-opacity" => style with { Fill = style.Fill && SvgNumbers.Parse(value) > 0 },
                "color" or "stroke" => style with { Colour = style.Parsed(value) },
                "stroke-width" => style with { StrokeWidth = SvgNumbers.Parse(value) },
                "stroke-dasharray" => style with { Dashes = value == "none" ? null : value },
                "stroke-linecap" => style with { Cap = value == "round" ? SKStrokeCap.Round : SKStrokeCap.Butt },
                "stroke-linejoin" => style with { Join = value == "round" ? SKStrokeJoin.Round : SKStrokeJoin.Miter },
                "font-size" => style with { FontSize = SvgNumbers.Parse(value) },
                "font-weight" => style with { Bold = value == "bold" },
                "font-style" => style with { Italic = value is "italic" or "oblique" },
                "text-anchor" => style with { Anchor = Aligned(value) },
                "visibility" => style with { Visible = value != "hidden" },
                "display" => style with { Visible = style.Visible && value != "none" },
                _ => style,
            };
        }
        return style;
    }

    // The rules of the style sheet that the engraver puts into every page.
    private SvgStyle WithClass(string names) =>
        names.Split(' ')[0] switch
        {
            "ending" or "fing" or "reh" or "tempo" => this with { Bold = true },
            "dir" or "dynam" or "mNum" => this with { Italic = true },
            "label" => this with { Bold = false },
            _ => this,
        };

    private SKColor Parsed(string value) =>
        value is not ("none" or "currentColor") && SKColor.TryParse(value, out var colour) ? colour : Colour;

    private static SKTextAlign Aligned(string anchor) =>
        anchor switch
        {
            "middle" => SKTextAlign.Center,
            "end" => SKTextAlign.Right,
            _ => SKTextAlign.Left,
        };
}
