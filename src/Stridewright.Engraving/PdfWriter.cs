using SkiaSharp;

namespace Stridewright.Engraving;

/// <summary>Writes engraved pages as PDF with embedded faces; its text can be searched and copied.</summary>
public static class PdfWriter
{
    private const double PointsPerMillimetre = 72 / 25.4;

    /// <summary>Writes a PDF; the same score gives the same bytes, since no date is written.</summary>
    /// <param name="stream">Written from its present position; stays open.</param>
    /// <param name="title">The document's title; the score's own when null.</param>
    public static void Write(EngravedScore score, Stream stream, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(stream);
        var metadata = new SKDocumentPdfMetadata { Title = title ?? score.Title, Creator = "Stridewright" };
        using var output = new SKManagedWStream(stream);
        using var document = SKDocument.CreatePdf(output, metadata);
        using var painter = new SvgPainter();
        var size = new SKSize((float)(score.Width * PointsPerMillimetre), (float)(score.Height * PointsPerMillimetre));
        foreach (var page in score.Pages)
        {
            painter.Draw(page, document.BeginPage(size.Width, size.Height), size);
            document.EndPage();
        }
        document.Close();
    }
}
