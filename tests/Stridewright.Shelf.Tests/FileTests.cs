using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Stridewright.Shelf.Storage;
using static Stridewright.Shelf.Tests.Place;

namespace Stridewright.Shelf.Tests;

public sealed class FileTests : IDisposable
{
    private readonly Place _place = new();

    public void Dispose() => _place.Dispose();

    [Fact]
    public void The_migrations_make_the_model()
    {
        using var context = new ShelfContextFactory().CreateDbContext([]);
        Assert.False(context.Database.HasPendingModelChanges());
    }

    [Fact]
    public async Task It_writes_ahead_waits_for_the_disk_and_is_private()
    {
        using var shelf = _place.Take();
        await Add(shelf, Setting("text"));
        using (var context = new ShelfFile(_place.Database).Context())
        {
            // 2 is FULL (sqlite.org/pragma.html#pragma_synchronous).
            Assert.Equal("wal", context.Database.SqlQueryRaw<string>("PRAGMA journal_mode").AsEnumerable().Single());
            Assert.Equal(2, context.Database.SqlQueryRaw<int>("PRAGMA synchronous").AsEnumerable().Single());
        }
        if (!OperatingSystem.IsWindows())
        {
            const UnixFileMode Others = (UnixFileMode)0b111_111;
            Assert.Equal((UnixFileMode)0b111_000_000, File.GetUnixFileMode(_place.Folder));
            Assert.Contains("shelf.db-wal", _place.Files());
            foreach (var file in Directory.GetFiles(_place.Folder))
            {
                Assert.Equal(UnixFileMode.None, File.GetUnixFileMode(file) & Others);
            }
        }
    }

    [Fact]
    public async Task A_folder_that_was_open_to_others_is_closed_to_them()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }
        using (var shelf = _place.Take())
        {
            await Add(shelf, Setting("text"));
        }
        File.SetUnixFileMode(_place.Folder, (UnixFileMode)0b111_111_111);
        File.SetUnixFileMode(_place.Database, (UnixFileMode)0b110_110_110);
        using (_place.Take())
        {
            Assert.Equal((UnixFileMode)0b111_000_000, File.GetUnixFileMode(_place.Folder));
            Assert.Equal((UnixFileMode)0b110_000_000, File.GetUnixFileMode(_place.Database));
        }
    }

    [Fact]
    public void A_folder_serves_one_at_a_time_and_the_refusal_names_it()
    {
        using (_place.Take())
        {
            var refused = Assert.Throws<ShelfException>(_place.Take);
            Assert.Contains(_place.Folder, refused.Message);
        }
        _place.Take().Dispose();
    }

    [Fact]
    public void A_folder_of_other_things_or_a_file_is_left_alone()
    {
        Directory.CreateDirectory(_place.Folder);
        File.WriteAllText(Path.Combine(_place.Folder, "letter.txt"), "dear");
        Assert.Contains("other things", Assert.Throws<ShelfException>(_place.Take).Message);
        Assert.Equal(["letter.txt"], _place.Files());
        var file = Path.Combine(_place.Folder, "letter.txt");
        Assert.Contains(file, Assert.Throws<ShelfException>(() => Shelf.Take(file, _place)).Message);
    }

    [Fact]
    public async Task A_file_of_an_earlier_version_is_copied_before_it_is_changed()
    {
        _place.Take().Dispose();
        var file = new ShelfFile(_place.Database);
        using (var context = file.Context())
        {
            var first = context.Database.GetMigrations().First();
            Assert.True(context.Database.GetMigrations().Count() > 1);
            await context.Database.MigrateAsync(first, None);
            // What a killed migration left would be waited for without end.
            await context.Database.ExecuteSqlRawAsync(
                """
                INSERT INTO Documents (Id, Kind, Made, "Current") VALUES ('a', 'tune', 1, 1);
                INSERT INTO Versions (DocumentId, Number, "From", Saved, IsBeside, Title, Sought, Text)
                VALUES ('a', 1, 0, 1, 0, 'Old', 'old', 'an old text');
                CREATE TABLE IF NOT EXISTS "__EFMigrationsLock" ("Id" INTEGER NOT NULL PRIMARY KEY, "Timestamp" TEXT NOT NULL);
                INSERT OR REPLACE INTO "__EFMigrationsLock" VALUES (1, '2026-01-01');
                """,
                None
            );
        }
        file.Close();
        var before = Applied(_place.Database);
        using (var shelf = _place.Take())
        {
            Assert.Equal("an old text", (await shelf.Get("a", null, None)).Text);
        }
        var copy = Assert.Single(
            _place.Files(),
            f => f.StartsWith("shelf.before-migration-", StringComparison.Ordinal)
        );
        Assert.Equal(before, Applied(Path.Combine(_place.Folder, copy)));
        Assert.NotEqual(before, Applied(_place.Database));
    }

    [Fact]
    public async Task A_file_of_a_later_version_is_refused_and_left_as_it_is()
    {
        using (var shelf = _place.Take())
        {
            await Add(shelf, Setting("text"));
        }
        Do(_place.Database, "INSERT INTO \"__EFMigrationsHistory\" VALUES ('99990101000000_Later', '99.0')");
        var before = await File.ReadAllBytesAsync(_place.Database, None);
        using (var shelf = _place.Take())
        {
            var refused = await Assert.ThrowsAsync<ShelfException>(() => shelf.Open(None));
            Assert.Contains("later version", refused.Message);
            Assert.Contains(_place.Database, refused.Message);
        }
        Assert.Equal(before, await File.ReadAllBytesAsync(_place.Database, None));
    }

    [Theory]
    [InlineData("this is no database at all, though it is long enough to be one")]
    [InlineData("SQLite format 3\0 and then nothing of the kind")]
    [InlineData(null)]
    public async Task A_damaged_file_is_told_and_never_written_over(string? text)
    {
        using (var shelf = _place.Take())
        {
            for (var i = 0; i < 40; i++)
            {
                await Add(shelf, Setting(new string('x', 5000)));
            }
        }
        var bytes = await File.ReadAllBytesAsync(_place.Database, None);
        if (text is null)
        {
            // A stretch in the middle is gone.
            bytes.AsSpan(bytes.Length / 3, bytes.Length / 3).Fill(0x5A);
        }
        else
        {
            bytes = System.Text.Encoding.ASCII.GetBytes(text.PadRight(4096, '.'));
        }
        await File.WriteAllBytesAsync(_place.Database, bytes, None);
        using (var shelf = _place.Take())
        {
            var refused = await Assert.ThrowsAsync<ShelfException>(() => shelf.Find(new(), None));
            Assert.Equal(ShelfFault.Unusable, refused.Fault);
            Assert.Contains(_place.Database, refused.Message);
            Assert.Contains("damaged", refused.Message);
        }
        Assert.Equal(bytes, await File.ReadAllBytesAsync(_place.Database, None));
    }

    private static List<string> Applied(string file)
    {
        using var context = new ShelfFile(file).Context();
        var applied = context.Database.GetAppliedMigrations().ToList();
        new ShelfFile(file).LetGo();
        return applied;
    }

    private static void Do(string file, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={file};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // Of this test.
        command.CommandText = sql;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }
}
