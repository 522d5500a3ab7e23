using System.IO.Compression;
using Stridewright.Music;

namespace Stridewright.Shelf.Tests;

/// <summary>A data folder of a test, and a clock that goes when it is told to.</summary>
internal sealed class Place : TimeProvider, IDisposable
{
    public static readonly CancellationToken None = CancellationToken.None;

    private DateTimeOffset _now = new(2026, 11, 26, 21, 4, 0, TimeSpan.Zero);

    public string Folder { get; } = Path.Combine(Path.GetTempPath(), "shelf-" + Guid.NewGuid().ToString("N"));

    public string Database => Path.Combine(Folder, "shelf.db");

    public Shelf Take() => Shelf.Take(Folder, this);

    public override DateTimeOffset GetUtcNow() => _now;

    public void Wait(TimeSpan time) => _now += time;

    public string[] Files() => Directory.GetFiles(Folder).Select(f => Path.GetFileName(f)!).Order().ToArray();

    public void Dispose()
    {
        if (Directory.Exists(Folder))
        {
            Directory.Delete(Folder, recursive: true);
        }
    }

    public static Content Setting(string text, string title = "The Ferry Bell", double effort = 40) =>
        new(title, text, "F major", "2/4", effort);

    public static Task<DocumentHead> Add(Shelf shelf, Content content, params string[] tags) =>
        shelf.Add(DocumentKind.Arrangement, content, tags.ToValueList(), sitting: null, None);

    public static async Task<byte[]> BackUp(Shelf shelf)
    {
        await using var zip = await shelf.BackUp(None);
        using var bytes = new MemoryStream();
        await zip.CopyToAsync(bytes);
        return bytes.ToArray();
    }

    /// <summary>A zip of these files.</summary>
    public static byte[] Zip(params (string Name, byte[] Bytes)[] files)
    {
        using var bytes = new MemoryStream();
        using (var archive = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, content) in files)
            {
                using var entry = archive.CreateEntry(name, CompressionLevel.Fastest).Open();
                entry.Write(content);
            }
        }
        return bytes.ToArray();
    }
}
