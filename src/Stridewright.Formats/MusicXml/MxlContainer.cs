using System.IO.Compression;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>
/// Finds the score in a compressed file (MusicXML 4.0, "Compressed .MXL files"): a zip archive whose
/// META-INF/container.xml names it. Inflated bytes are counted as they come.
/// </summary>
internal static class MxlContainer
{
    private const string ContainerName = "META-INF/container.xml";

    public static bool IsZip(ReadOnlySpan<byte> bytes) =>
        bytes.StartsWith("PK\x03\x04"u8) || bytes.StartsWith("PK\x05\x06"u8);

    /// <summary>The bytes of the score, or null with the reason among the findings.</summary>
    public static byte[]? Extract(byte[] file, Findings findings)
    {
        try
        {
            using var archive = new ZipArchive(new MemoryStream(file), ZipArchiveMode.Read);
            if (archive.Entries.Count > MusicXmlLimits.Entries)
            {
                findings.Fail(Place.Whole, MusicXmlMessages.TooManyEntries);
                return null;
            }
            if (FindScore(archive, findings) is not { } entry)
            {
                findings.Fail(Place.Whole, MusicXmlMessages.NoScoreInZip);
                return null;
            }
            findings.Entry = Element.Clean(entry.FullName);
            return Inflate(entry, findings);
        }
        catch (Exception e)
            when (e
                    is InvalidDataException
                        or IOException
                        or NotSupportedException
                        or ArgumentException
                        or OverflowException
            )
        {
            findings.Fail(Place.Whole, MusicXmlMessages.BrokenZip);
            return null;
        }
    }

    private static ZipArchiveEntry? FindScore(ZipArchive archive, Findings findings)
    {
        var container = archive.Entries.FirstOrDefault(e => Normal(e.FullName) == ContainerName);
        var named = container is null ? null : NamedScore(container);
        var entry = named is null
            ? null
            : archive.Entries.FirstOrDefault(e =>
                Normal(e.FullName) == Normal(named) && Normal(named) != ContainerName
            );
        if (entry is not null)
        {
            return entry;
        }
        var first = archive.Entries.FirstOrDefault(e =>
            !Normal(e.FullName).StartsWith("META-INF/", StringComparison.OrdinalIgnoreCase)
            && (
                e.FullName.EndsWith(".xml", StringComparison.OrdinalIgnoreCase)
                || e.FullName.EndsWith(".musicxml", StringComparison.OrdinalIgnoreCase)
            )
        );
        if (first is not null)
        {
            findings.Note(Place.Whole, MusicXmlMessages.ContainerIgnored(Element.Clean(first.FullName) ?? ""));
        }
        return first;
    }

    private static string? NamedScore(ZipArchiveEntry container)
    {
        var trial = new Findings(); // a broken container is repaired, so its faults are not the reader's
        var bytes = Inflate(container, trial);
        var root = bytes is null ? null : XmlLoader.Load(bytes, _ => null, trial);
        return root?.Child("rootfiles")?.All("rootfile").Select(r => r["full-path"]).FirstOrDefault(p => p is not null);
    }

    private static byte[]? Inflate(ZipArchiveEntry entry, Findings findings)
    {
        using var source = entry.Open();
        using var kept = new MemoryStream();
        var buffer = new byte[64 * 1024];
        var mostByRatio = Math.Max(MusicXmlLimits.FreelyInflated, entry.CompressedLength * MusicXmlLimits.Ratio);
        int count;
        while ((count = source.Read(buffer)) > 0)
        {
            kept.Write(buffer, 0, count);
            if (kept.Length > MusicXmlLimits.Bytes)
            {
                findings.Fail(Place.Whole, MusicXmlMessages.TooLarge);
                return null;
            }
            if (kept.Length > mostByRatio)
            {
                findings.Fail(Place.Whole, MusicXmlMessages.InflatesTooFar);
                return null;
            }
        }
        return kept.ToArray();
    }

    private static string Normal(string path) => path.Replace('\\', '/').TrimStart('/');
}
