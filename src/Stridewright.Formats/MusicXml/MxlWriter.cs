using System.IO.Compression;

namespace Stridewright.Formats.MusicXml;

/// <summary>
/// Writes a compressed MusicXML file (MusicXML 4.0, compressed .mxl files): a ZIP archive whose first entry is
/// <c>mimetype</c>, stored and not compressed, whose <c>META-INF/container.xml</c> names the score. The same score gives
/// the same bytes: the entries bear the first moment that ZIP can write.
/// </summary>
public static class MxlWriter
{
    /// <summary>The media type of compressed MusicXML.</summary>
    public const string MediaType = "application/vnd.recordare.musicxml";

    private const string ScoreEntry = "score.musicxml";

    private const string Container = $"""
        <?xml version="1.0" encoding="UTF-8"?>
        <container>
          <rootfiles>
            <rootfile full-path="{ScoreEntry}" media-type="application/vnd.recordare.musicxml+xml"/>
          </rootfiles>
        </container>

        """;

    // 1980-01-01 00:00, the beginning of ZIP's time.
    private static readonly DateTimeOffset Beginning = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Packs a score.</summary>
    /// <param name="musicXml">The score as <see cref="MusicXmlWriter"/> writes it.</param>
    /// <param name="destination">Written from its present position; stays open.</param>
    public static void Write(ReadOnlySpan<byte> musicXml, Stream destination)
    {
        ArgumentNullException.ThrowIfNull(destination);
        // In memory first: only where it can go back does the archive write sizes before contents, as readers of the
        // media type expect.
        using var packed = new MemoryStream();
        using (var archive = new ZipArchive(packed, ZipArchiveMode.Create, leaveOpen: true))
        {
            Add(archive, "mimetype", CompressionLevel.NoCompression, System.Text.Encoding.ASCII.GetBytes(MediaType));
            Add(
                archive,
                "META-INF/container.xml",
                CompressionLevel.Optimal,
                System.Text.Encoding.UTF8.GetBytes(Container.ReplaceLineEndings("\n"))
            );
            Add(archive, ScoreEntry, CompressionLevel.Optimal, musicXml);
        }
        packed.WriteTo(destination);
    }

    private static void Add(ZipArchive archive, string name, CompressionLevel level, ReadOnlySpan<byte> content)
    {
        var entry = archive.CreateEntry(name, level);
        entry.LastWriteTime = Beginning;
        using var stream = entry.Open();
        stream.Write(content);
    }
}
