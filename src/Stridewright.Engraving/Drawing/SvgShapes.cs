using System.Xml.Linq;
using SkiaSharp;

namespace Stridewright.Engraving;

/// <summary>Outlines of the engraver's shapes.</summary>
internal static class SvgShapes
{
    /// <summary>The outline of a shape; null for an element that is none.</summary>
    public static SKPath? Read(XElement shape)
    {
        float Of(string name) => SvgNumbers.Of(shape, name);
        switch (shape.Name.LocalName)
        {
            case "path":
                return SKPath.ParseSvgPathData((string?)shape.Attribute("d"));
            case "polygon":
                return Line(SvgNumbers.List((string?)shape.Attribute("points")), close: true);
            case "polyline":
                return Line(SvgNumbers.List((string?)shape.Attribute("points")), close: false);
            case "line":
                return Line([Of("x1"), Of("y1"), Of("x2"), Of("y2")], close: false);
            case "rect":
                return Made(builder =>
                    builder.AddRoundRect(
                        new SKRoundRect(
                            SKRect.Create(Of("x"), Of("y"), Of("width"), Of("height")),
                            Of("rx"),
                            shape.Attribute("ry") is null ? Of("rx") : Of("ry")
                        )
                    )
                );
            case "ellipse":
                return Oval(Of("cx"), Of("cy"), Of("rx"), Of("ry"));
            case "circle":
                return Oval(Of("cx"), Of("cy"), Of("r"), Of("r"));
            default:
                return null;
        }
    }

    private static SKPath Oval(float x, float y, float across, float down) =>
        Made(builder => builder.AddOval(new SKRect(x - across, y - down, x + across, y + down)));

    private static SKPath Line(float[] points, bool close) =>
        Made(builder =>
            builder.AddPoly(
                points.Chunk(2).Where(p => p.Length == 2).Select(p => new SKPoint(p[0], p[1])).ToArray(),
                close
            )
        );

    private static SKPath Made(Action<SKPathBuilder> build)
    {
        using var builder = new SKPathBuilder();
        build(builder);
        return builder.Detach();
    }
}
