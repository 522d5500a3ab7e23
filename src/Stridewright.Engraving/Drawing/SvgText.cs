using System.Text;
using System.Xml.Linq;
using SkiaSharp;

namespace Stridewright.Engraving;

/// <summary>Sets one text element: runs in several styles, in chunks that are each aligned as a whole.</summary>
internal sealed class SvgText(Faces faces)
{
    private readonly record struct Piece(string Text, SKFont Font, SKColor Colour, float Width, float Rise);

    // The engraver reckons with a narrower serif: at this size ours takes the room that was left for it.
    private const float FaceScale = 0.92f;

    private readonly List<Piece> _chunk = [];
    private float _x;
    private float _y;
    private float _rise;
    private SKTextAlign _anchor;

    /// <summary>Width of a line in the plain face, in the unit of its size.</summary>
    public static double WidthOf(string text, double size)
    {
        // Measured large, so that rounding does not matter.
        const float Measure = 100;
        var width = 0f;
        foreach (var rune in text.EnumerateRunes())
        {
            if (Faces.Shared.For(rune.Value, false, false) is var (face, scale))
            {
                using var font = new SKFont(face, Measure * scale) { LinearMetrics = true };
                width += font.MeasureText(rune.ToString());
            }
        }
        return width / Measure * size * FaceScale;
    }

    public void Draw(XElement text, SvgStyle style, SKCanvas canvas)
    {
        (_x, _y, _rise) = (0, 0, 0);
        Read(text, style, canvas);
        Flush(canvas);
    }

    private void Read(XElement element, SvgStyle style, SKCanvas canvas)
    {
        if (element.Attribute("x") is not null || element.Attribute("y") is not null)
        {
            // A run with a place of its own starts a new chunk.
            Flush(canvas);
            _x = element.Attribute("x") is null ? _x : SvgNumbers.Of(element, "x");
            _y = element.Attribute("y") is null ? _y : SvgNumbers.Of(element, "y");
            (_rise, _anchor) = (0, style.Anchor);
        }
        _rise += SvgNumbers.Of(element, "dy");
        foreach (var node in element.Nodes())
        {
            switch (node)
            {
                case XElement { Name.LocalName: "tspan" } run:
                    Read(run, style.With(run), canvas);
                    break;
                // White space with a line break is the indentation of the file.
                case XText { Value: var value } when !(string.IsNullOrWhiteSpace(value) && value.Contains('\n')):
                    Add(value, style);
                    break;
            }
        }
    }

    private void Add(string text, SvgStyle style)
    {
        var run = new StringBuilder();
        SKTypeface? runFace = null;
        var runSize = 0f;
        void Close()
        {
            if (run.Length > 0)
            {
                Append(run.ToString(), runFace!, runSize, style);
                run.Clear();
            }
        }
        foreach (var rune in text.EnumerateRunes())
        {
            var size = style.FontSize * FaceScale * (TextSigns.IsMusic(rune.Value) ? TextSigns.SizeBesideMusic : 1);
            foreach (var shown in (TextSigns.For(rune.Value) ?? rune.ToString()).EnumerateRunes())
            {
                // A character that no face has is left out rather than printed as a box.
                if (faces.For(shown.Value, style.Bold, style.Italic) is not var (face, scale))
                {
                    continue;
                }
                if (face != runFace || size * scale != runSize)
                {
                    Close();
                    (runFace, runSize) = (face, size * scale);
                }
                run.Append(shown.ToString());
            }
        }
        Close();
    }

    private void Flush(SKCanvas canvas)
    {
        var width = _chunk.Sum(piece => piece.Width);
        var x =
            _x
            - _anchor switch
            {
                SKTextAlign.Center => width / 2,
                SKTextAlign.Right => width,
                _ => 0,
            };
        using var paint = new SKPaint { IsAntialias = true };
        foreach (var piece in _chunk)
        {
            paint.Color = piece.Colour;
            canvas.DrawText(piece.Text, x, _y + piece.Rise, SKTextAlign.Left, piece.Font, paint);
            x += piece.Width;
            piece.Font.Dispose();
        }
        _x = _anchor == SKTextAlign.Left ? x : _x;
        _chunk.Clear();
    }

    private void Append(string text, SKTypeface face, float size, SvgStyle style)
    {
        var font = new SKFont(face, size)
        {
            Subpixel = true,
            LinearMetrics = true,
            Hinting = SKFontHinting.None,
        };
        _chunk.Add(new Piece(text, font, style.Colour, font.MeasureText(text), _rise));
    }
}
