using System.IO.Compression;
using Microsoft.Data.Sqlite;
using Stridewright.Shelf.Storage;

namespace Stridewright.Shelf;

/// <summary>The whole shelf as one zip, and back. A zip that comes back may come from anybody.</summary>
internal static class Backups
{
    /// <summary>What a restore calls the copy of the shelf that was there before.</summary>
    public const string Restoring = "restore";

    /// <summary>Bytes of a database in a zip; thousands of arrangements with their histories are less.</summary>
    public const long MostInside = 512L * 1024 * 1024;

    private const string EntryName = "shelf.db";

    // A zip of ours has one entry; a program that packs it again may add a folder or two. Bytes of the list of entries.
    private const int MostEntries = 8,
        MostDirectory = 16 * 1024;

    // End of central directory record (PKWARE APPNOTE 4.3.16).
    private const int EndLength = 22,
        LongestComment = 65535;

    /// <summary>A zip as of this moment, whose file goes with the stream.</summary>
    public static Stream Write(ShelfFolder folder, ShelfFile shelf)
    {
        var copy = folder.UnfinishedFile(".db");
        var zip = ShelfFolder.CreatePrivate(folder.UnfinishedFile(".zip"), passes: true);
        try
        {
            shelf.CopyTo(copy);
            using (var archive = new ZipArchive(zip, ZipArchiveMode.Create, leaveOpen: true))
            {
                archive.CreateEntryFromFile(copy, EntryName, CompressionLevel.Fastest);
            }
            zip.Position = 0;
            return zip;
        }
        catch
        {
            zip.Dispose();
            throw;
        }
        finally
        {
            File.Delete(copy);
        }
    }

    /// <summary>Puts a zip that arrives into a file of the folder.</summary>
    public static async Task<string> Receive(ShelfFolder folder, Stream zip, CancellationToken cancellation)
    {
        var file = folder.UnfinishedFile(".zip");
        try
        {
            await using var received = ShelfFolder.CreatePrivate(file);
            await zip.CopyToAsync(received, cancellation);
            return file;
        }
        catch
        {
            File.Delete(file);
            throw;
        }
    }

    /// <summary>The database of a zip as a file of the folder: whole, a shelf's, up to date, closed.</summary>
    /// <exception cref="ShelfException">It is not.</exception>
    public static string Unpack(ShelfFolder folder, string zip, long mostInside)
    {
        var file = folder.UnfinishedFile(".db");
        try
        {
            Inflate(zip, file, mostInside);
            Check(new ShelfFile(file));
            return file;
        }
        catch (Exception fault)
        {
            foreach (var ending in new[] { "", "-wal", "-shm", "-journal" })
            {
                File.Delete(file + ending);
            }
            if (fault is InvalidDataException or SqliteException)
            {
                throw Refused(ShelfMessages.BrokenBackup);
            }
            throw;
        }
    }

    private static void Inflate(string zip, string file, long mostInside)
    {
        using var stream = new FileStream(zip, FileMode.Open, FileAccess.Read);
        if (!HasShortDirectory(stream))
        {
            throw Refused(ShelfMessages.NotAZip);
        }
        using var archive = new ZipArchive(stream, ZipArchiveMode.Read);
        var entries = archive.Entries.Where(e => e.Name == EntryName).ToList();
        if (entries.Count != 1 || archive.Entries.Count > MostEntries)
        {
            throw Refused(ShelfMessages.WrongInside);
        }
        using var inside = entries[0].Open();
        using var written = ShelfFolder.CreatePrivate(file);
        var buffer = new byte[128 * 1024];
        for (int read; (read = inside.Read(buffer)) > 0; )
        {
            // Counted as it comes: what an entry says of its size is only said.
            if (written.Length + read > mostInside)
            {
                throw Refused(ShelfMessages.TooLarge(mostInside));
            }
            written.Write(buffer.AsSpan(0, read));
        }
        written.Flush(flushToDisk: true);
    }

    // All entries are listed in memory before one is looked at: the list must be short, and end where the record of its end
    // begins.
    private static bool HasShortDirectory(FileStream zip)
    {
        var tail = new byte[(int)Math.Min(zip.Length, EndLength + LongestComment)];
        zip.Position = zip.Length - tail.Length;
        zip.ReadExactly(tail);
        zip.Position = 0;
        var at = tail.AsSpan().LastIndexOf("PK\x05\x06"u8);
        if (at < 0 || tail.Length - at < EndLength)
        {
            return false;
        }
        var end = tail.AsSpan(at);
        long size = BitConverter.ToUInt32(end[12..]),
            start = BitConverter.ToUInt32(end[16..]);
        return size <= MostDirectory && start + size == zip.Length - tail.Length + at;
    }

    private static void Check(ShelfFile restored)
    {
        try
        {
            if (!restored.IsDatabase())
            {
                throw Refused(ShelfMessages.WrongInside);
            }
            if (!restored.IsSound())
            {
                throw Refused(ShelfMessages.ForeignTables);
            }
            restored.BringUpToDate(() => { });
            if (!restored.CanBeRead())
            {
                throw Refused(ShelfMessages.BrokenBackup);
            }
            restored.Close();
        }
        finally
        {
            restored.LetGo();
        }
    }

    private static ShelfException Refused(string message) => new(ShelfFault.Refused, message);
}
