using System.Xml;
using System.Xml.Linq;
using SkiaSharp;

namespace Stridewright.Engraving;

/// <summary>
/// Draws pages of the engraver's SVG on a canvas. It knows the small vocabulary that the engraver writes: svg, g, use,
/// path, rect, ellipse, polygon, polyline, line, text and tspan. One painter serves the pages of one score, so
/// that each glyph's outline is parsed once.
/// </summary>
internal sealed class SvgPainter : IDisposable
{
    private static readonly XmlReaderSettings Settings = new()
    {
        DtdProcessing = DtdProcessing.Prohibit,
        XmlResolver = null,
        IgnoreComments = true,
    };

    // Outlines of glyphs by their path data; they come again on every page, other paths do not.
    private readonly Dictionary<string, SKPath> _outlines = [];

    // Glyphs of the page at hand by their id.
    private readonly Dictionary<string, (SKPath Outline, SKMatrix Matrix)> _glyphs = [];

    private readonly SvgText _text = new(Faces.Shared);
    private readonly SKPaint _fill = new() { IsAntialias = true };
    private readonly SKPaint _stroke = new() { IsAntialias = true, IsStroke = true };

    /// <summary>Draws one page; its view box fills the given size.</summary>
    public void Draw(string svg, SKCanvas canvas, SKSize size)
    {
        using var reader = XmlReader.Create(new StringReader(svg), Settings);
        _glyphs.Clear();
        DrawFrame(XElement.Load(reader, LoadOptions.PreserveWhitespace), SvgStyle.Plain, canvas, size);
    }

    public void Dispose()
    {
        foreach (var outline in _outlines.Values)
        {
            outline.Dispose();
        }
        _fill.Dispose();
        _stroke.Dispose();
    }

    private void DrawFrame(XElement frame, SvgStyle outer, SKCanvas canvas, SKSize size)
    {
        var style = outer.With(frame);
        using var kept = new SKAutoCanvasRestore(canvas);
        if (
            SvgNumbers.List((string?)frame.Attribute("viewBox"))
            is [var left, var top, > 0 and var width, > 0 and var height]
        )
        {
            canvas.Scale(size.Width / width, size.Height / height);
            canvas.Translate(-left, -top);
            size = new SKSize(width, height);
        }
        DrawChildren(frame, style, canvas, size);
    }

    private void DrawChildren(XElement parent, SvgStyle style, SKCanvas canvas, SKSize size)
    {
        foreach (var child in parent.Elements())
        {
            Draw(child, style, canvas, size);
        }
    }

    private void Draw(XElement element, SvgStyle outer, SKCanvas canvas, SKSize size)
    {
        switch (element.Name.LocalName)
        {
            case "svg":
                DrawFrame(element, outer, canvas, size);
                return;
            case "defs":
                ReadGlyphs(element);
                return;
            case "desc" or "style" or "title":
                return;
        }
        var style = outer.With(element);
        if (!style.Visible)
        {
            return;
        }
        var transform = (string?)element.Attribute("transform");
        using var kept = transform is null ? null : new SKAutoCanvasRestore(canvas);
        if (transform is not null)
        {
            canvas.Concat(SvgNumbers.Transform(transform));
        }
        switch (element.Name.LocalName)
        {
            case "g":
                DrawChildren(element, style, canvas, size);
                break;
            case "text":
                _text.Draw(element, style, canvas);
                break;
            case "use":
                DrawGlyph(element, style, canvas);
                break;
            default:
                DrawShape(element, style, canvas);
                break;
        }
    }

    private void ReadGlyphs(XElement definitions)
    {
        foreach (var glyph in definitions.Elements())
        {
            if (
                (string?)glyph.Attribute("id") is { } id
                && glyph.Descendants().FirstOrDefault(e => e.Name.LocalName == "path") is { } path
                && (string?)path.Attribute("d") is { } data
            )
            {
                if (!_outlines.TryGetValue(data, out var outline))
                {
                    outline = SKPath.ParseSvgPathData(data) ?? new SKPath();
                    _outlines.Add(data, outline);
                }
                _glyphs[id] = (outline, SvgNumbers.Transform((string?)path.Attribute("transform")));
            }
        }
    }

    private void DrawGlyph(XElement use, SvgStyle style, SKCanvas canvas)
    {
        var reference = use.Attributes().FirstOrDefault(a => a.Name.LocalName == "href")?.Value;
        if (reference is null || !_glyphs.TryGetValue(reference.TrimStart('#'), out var glyph))
        {
            return;
        }
        using var kept = new SKAutoCanvasRestore(canvas);
        canvas.Translate(SvgNumbers.Of(use, "x"), SvgNumbers.Of(use, "y"));
        canvas.Concat(glyph.Matrix);
        _fill.Color = style.Colour;
        canvas.DrawPath(glyph.Outline, _fill);
    }

    private void DrawShape(XElement element, SvgStyle style, SKCanvas canvas)
    {
        using var path = SvgShapes.Read(element);
        if (path is null)
        {
            return;
        }
        // A straight stroke has no inside: filling it would only swell the file.
        if (style.Fill && path.PointCount > 2)
        {
            _fill.Color = style.Colour;
            canvas.DrawPath(path, _fill);
        }
        if (style.StrokeWidth <= 0)
        {
            return;
        }
        _stroke.Color = style.Colour;
        _stroke.StrokeWidth = style.StrokeWidth;
        _stroke.StrokeCap = style.Cap;
        _stroke.StrokeJoin = style.Join;
        var dashes = SvgNumbers.List(style.Dashes);
        using var effect = dashes.Length is > 0 && dashes.Length % 2 == 0 ? SKPathEffect.CreateDash(dashes, 0) : null;
        _stroke.PathEffect = effect;
        canvas.DrawPath(path, _stroke);
        _stroke.PathEffect = null;
    }
}
