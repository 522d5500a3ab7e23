using Stridewright.Formats.MusicXml;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Arranging.Tests;

/// <summary>Scores as they are written.</summary>
internal static class Sheets
{
    public static IReadOnlyList<SheetBar> Of(Score score)
    {
        using var file = new MemoryStream();
        MusicXmlWriter.Write(score, file);
        file.Position = 0;
        return Sheet.Read(file);
    }
}
