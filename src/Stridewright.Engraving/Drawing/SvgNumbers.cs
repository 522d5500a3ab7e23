using System.Globalization;
using System.Xml.Linq;
using SkiaSharp;

namespace Stridewright.Engraving;

/// <summary>Numbers in SVG attributes; what cannot be read is 0.</summary>
internal static class SvgNumbers
{
    public static float Of(XElement element, string attribute) => Parse((string?)element.Attribute(attribute));

    /// <summary>A number, without its unit.</summary>
    public static float Parse(ReadOnlySpan<char> text)
    {
        text = text.Trim();
        if (text.EndsWith("px"))
        {
            text = text[..^2];
        }
        return float.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : 0;
    }

    /// <summary>Numbers between spaces or commas.</summary>
    public static float[] List(string? text) =>
        text is null
            ? []
            : text.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries).Select(t => Parse(t)).ToArray();

    /// <summary>Transforms such as <c>translate(10, 20) scale(1,-1)</c>, the last one applied first.</summary>
    public static SKMatrix Transform(string? text)
    {
        var matrix = SKMatrix.Identity;
        foreach (var step in (text ?? "").Split(')', StringSplitOptions.RemoveEmptyEntries))
        {
            if (step.Split('(') is [var name, var list])
            {
                matrix = matrix.PreConcat(Step(name.Trim(' ', ','), List(list)));
            }
        }
        return matrix;
    }

    private static SKMatrix Step(string name, float[] n) =>
        (name, n) switch
        {
            ("translate", [var x]) => SKMatrix.CreateTranslation(x, 0),
            ("translate", [var x, var y]) => SKMatrix.CreateTranslation(x, y),
            ("scale", [var both]) => SKMatrix.CreateScale(both, both),
            ("scale", [var x, var y]) => SKMatrix.CreateScale(x, y),
            ("rotate", [var degrees]) => SKMatrix.CreateRotationDegrees(degrees),
            ("rotate", [var degrees, var x, var y]) => SKMatrix.CreateRotationDegrees(degrees, x, y),
            ("matrix", [var a, var b, var c, var d, var e, var f]) => new SKMatrix(a, c, e, b, d, f, 0, 0, 1),
            _ => SKMatrix.Identity,
        };
}
