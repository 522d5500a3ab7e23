using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Stridewright.Shelf.Storage;

/// <summary>One database file: opened, brought up to date, asked, checked, copied.</summary>
internal sealed class ShelfFile
{
    // Primary result codes (sqlite.org/rescode.html).
    private const int ReadOnlyCode = 8,
        IoCode = 10,
        CorruptCode = 11,
        FullCode = 13,
        CannotOpenCode = 14,
        NotADatabaseCode = 26;

    private readonly DbContextOptions<ShelfContext> _options;
    private readonly string _connection;

    public ShelfFile(string path)
    {
        Path = path;
        _connection = new SqliteConnectionStringBuilder { DataSource = path, ForeignKeys = true }.ToString();
        _options = new DbContextOptionsBuilder<ShelfContext>()
            .UseSqlite(_connection)
            .AddInterceptors(new OnOpening())
            .Options;
    }

    public string Path { get; }

    public ShelfContext Context() => new(_options);

    /// <summary>What a fault of the database means to a person; null: it is none.</summary>
    public static string? Sentence(Exception fault, string file) =>
        (fault as SqliteException ?? fault.InnerException as SqliteException)?.SqliteErrorCode switch
        {
            CorruptCode or NotADatabaseCode => ShelfMessages.Broken(file),
            FullCode => ShelfMessages.DiskFull,
            ReadOnlyCode or IoCode or CannotOpenCode => ShelfMessages.Unreadable(file),
            _ => null,
        };

    /// <summary>Brings the file's tables up to date; a new file gets them.</summary>
    /// <param name="copy">Called once before a file with tables is changed.</param>
    /// <exception cref="ShelfException">The file is newer than this program, damaged, or no shelf.</exception>
    public void BringUpToDate(Action copy)
    {
        using var context = Context();
        var all = context.Database.GetMigrations().ToList();
        var tables = Ask("SELECT count(*) FROM sqlite_master");
        var applied = tables == "0" ? [] : Applied();
        if (applied.Except(all).Any())
        {
            throw new ShelfException(ShelfMessages.Newer(Path));
        }
        if ((tables != "0" && applied.Count == 0) || Ask("PRAGMA quick_check(1)") != "ok")
        {
            throw new ShelfException(ShelfMessages.Broken(Path));
        }
        Ask("PRAGMA journal_mode=WAL");
        if (all.Except(applied).Any())
        {
            if (applied.Count > 0)
            {
                copy();
            }
            // Nobody else has the folder: a mark that a killed migration left is nobody's.
            Ask("DROP TABLE IF EXISTS \"__EFMigrationsLock\"");
            context.Database.Migrate();
        }
    }

    /// <summary>Whether it begins as a database does (sqlite.org/fileformat.html, 1.3).</summary>
    public bool IsDatabase()
    {
        using var file = new FileStream(Path, FileMode.Open, FileAccess.Read);
        var start = new byte[16];
        return file.ReadAtLeast(start, start.Length, throwOnEndOfStream: false) == start.Length
            && start.AsSpan().SequenceEqual("SQLite format 3\0"u8);
    }

    /// <summary>Whether the tables are those of the model, and every document has the version that holds.</summary>
    public bool CanBeRead()
    {
        using var context = Context();
        _ = context.Tags.AsNoTracking().FirstOrDefault();
        return context.Documents.All(d => d.Versions.Any(v => v.Number == d.Current));
    }

    /// <summary>Whether every page and every reference is sound, and nothing stands in it but tables and their indexes.</summary>
    public bool IsSound() =>
        Ask("PRAGMA integrity_check(1)") == "ok"
        && Ask("SELECT count(*) FROM pragma_foreign_key_check") == "0"
        && Ask("SELECT count(*) FROM sqlite_master WHERE type NOT IN ('table', 'index') OR sql LIKE 'CREATE VIRTUAL%'")
            == "0";

    /// <summary>Writes a copy as of this moment, whatever is being written.</summary>
    /// <param name="file">Does not exist; it is made for its owner alone.</param>
    public void CopyTo(string file)
    {
        ShelfFolder.CreatePrivate(file).Dispose();
        using var connection = Open();
        using var command = connection.CreateCommand();
        command.CommandText = "VACUUM INTO $file";
        command.Parameters.AddWithValue("$file", file);
        command.ExecuteNonQuery();
        using var written = new FileStream(file, FileMode.Open, FileAccess.ReadWrite);
        written.Flush(flushToDisk: true);
    }

    /// <summary>Writes the file anew without its free pages, in which deleted texts would still stand, and empties the log
    /// of what was written (sqlite.org/lang_vacuum.html, sqlite.org/pragma.html#pragma_wal_checkpoint).</summary>
    public void Tidy()
    {
        LetGo();
        Ask("VACUUM");
        Ask("PRAGMA wal_checkpoint(TRUNCATE)");
    }

    /// <summary>Puts all into the one file and lets it go, so that it can be moved.</summary>
    public void Close()
    {
        LetGo();
        Ask("PRAGMA wal_checkpoint(TRUNCATE)");
        Ask("PRAGMA journal_mode=DELETE");
        LetGo();
    }

    /// <summary>Ends the connections that are kept for the next question.</summary>
    public void LetGo()
    {
        using var connection = new SqliteConnection(_connection);
        SqliteConnection.ClearPool(connection);
    }

    private List<string> Applied()
    {
        if (Ask("SELECT count(*) FROM sqlite_master WHERE name = '__EFMigrationsHistory'") == "0")
        {
            return [];
        }
        using var context = Context();
        return context.Database.GetAppliedMigrations().ToList();
    }

    private string Ask(string sql)
    {
        using var connection = Open();
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // Sentences of this file alone.
        command.CommandText = sql;
#pragma warning restore CA2100
        return Convert.ToString(command.ExecuteScalar(), System.Globalization.CultureInfo.InvariantCulture) ?? "";
    }

    private SqliteConnection Open()
    {
        var connection = new SqliteConnection(_connection);
        connection.Open();
        OnOpening.Prepare(connection);
        return connection;
    }

    /// <summary>What holds for every connection: a commit is on the disk, and nothing in a file is trusted to run.</summary>
    private sealed class OnOpening : DbConnectionInterceptor
    {
        public override void ConnectionOpened(
            System.Data.Common.DbConnection connection,
            ConnectionEndEventData eventData
        ) => Prepare(connection);

        public static void Prepare(System.Data.Common.DbConnection connection)
        {
            using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA synchronous=FULL; PRAGMA trusted_schema=OFF";
            command.ExecuteNonQuery();
        }
    }
}
