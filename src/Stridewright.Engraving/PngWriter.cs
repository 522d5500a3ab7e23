using SkiaSharp;

namespace Stridewright.Engraving;

/// <summary>Writes engraved pages as pictures.</summary>
public static class PngWriter
{
    /// <summary>Finest resolution, in dots per inch: an A4 page then takes about 140 MB while it is drawn.</summary>
    public const int MaxResolution = 600;

    /// <summary>Writes one page on white.</summary>
    /// <param name="page">The page, from 1.</param>
    /// <param name="stream">Written from its present position; stays open.</param>
    /// <param name="dotsPerInch">Resolution, 20 to <see cref="MaxResolution"/>.</param>
    public static void Write(EngravedScore score, int page, Stream stream, int dotsPerInch = 150)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentOutOfRangeException.ThrowIfLessThan(page, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(page, score.Pages.Count);
        ArgumentOutOfRangeException.ThrowIfLessThan(dotsPerInch, 20);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(dotsPerInch, MaxResolution);
        int Dots(double millimetres) => (int)Math.Round(millimetres / 25.4 * dotsPerInch);
        var size = new SKSizeI(Dots(score.Width), Dots(score.Height));
        using var bitmap = new SKBitmap(
            new SKImageInfo(size.Width, size.Height, SKColorType.Rgb888x, SKAlphaType.Opaque)
        );
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        using var painter = new SvgPainter();
        painter.Draw(score.Pages[page - 1], canvas, new SKSize(size.Width, size.Height));
        canvas.Flush();
        bitmap.Encode(stream, SKEncodedImageFormat.Png, 100);
    }
}
