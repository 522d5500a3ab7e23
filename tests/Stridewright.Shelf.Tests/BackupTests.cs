using Microsoft.Data.Sqlite;
using static Stridewright.Shelf.Tests.Place;

namespace Stridewright.Shelf.Tests;

public sealed class BackupTests : IDisposable
{
    private readonly Place _place = new();

    public void Dispose() => _place.Dispose();

    [Fact]
    public async Task A_backup_goes_to_another_shelf_and_the_old_one_is_kept()
    {
        using var other = new Place();
        using var shelf = _place.Take();
        using var target = other.Take();
        var head = await Add(shelf, Setting("one"), "Saturday");
        await shelf.Save(head.Id, 1, Setting("two"), null, None);
        var zip = await BackUp(shelf);
        await shelf.Save(head.Id, 2, Setting("after the backup"), null, None);

        var lost = await Add(target, Setting("only there"));
        var kept = await target.Restore(new MemoryStream(zip), None);
        Assert.Equal("two", (await target.Get(head.Id, null, None)).Text);
        Assert.Equal(2, (await target.History(head.Id, None)).Count);
        Assert.Equal(1, (await target.Find(new() { Tag = "saturday" }, None)).Count);
        await Assert.ThrowsAsync<ShelfException>(() => target.Get(lost.Id, null, None));
        Assert.Equal(1, Count(kept, lost.Id));
        Assert.DoesNotContain(other.Files(), f => f.StartsWith("unfinished-", StringComparison.Ordinal));
        // It goes on from there.
        await target.Save(head.Id, 2, Setting("three"), null, None);
        target.Dispose();
        using var again = other.Take();
        Assert.Equal("three", (await again.Get(head.Id, null, None)).Text);
    }

    [Fact]
    public async Task A_backup_is_whole_while_saves_go_on()
    {
        using var other = new Place();
        using var shelf = _place.Take();
        var head = await Add(shelf, Setting("0"));
        var saving = Task.Run(async () =>
        {
            for (var i = 1; i <= 60; i++)
            {
                await shelf.Save(head.Id, i, Setting($"{i}"), null, None);
            }
        });
        using var target = other.Take();
        for (var i = 0; i < 5; i++)
        {
            await target.Restore(new MemoryStream(await BackUp(shelf)), None);
            var document = await target.Get(head.Id, null, None);
            Assert.Equal($"{document.Version.Number - 1}", document.Text);
        }
        await saving;
        Assert.InRange(other.Files().Count(f => f.Contains("before-restore")), 1, 5);
    }

    public static TheoryData<string> Hostile =>
        [
            "nothing",
            "text",
            "cut",
            "no database inside",
            "two databases",
            "other names",
            "climbing name",
            "many entries",
            "too large inside",
            "cut database",
            "another program's database",
            "trigger",
            "view",
            "later version",
            "lost version",
            "lost references",
        ];

    [Theory]
    [MemberData(nameof(Hostile))]
    public async Task What_is_no_backup_is_refused_and_the_shelf_is_as_it_was(string kind)
    {
        using var mine = Shelf.Take(_place.Folder, _place, mostInside: 4 * 1024 * 1024);
        var head = await Add(mine, Setting("mine"));
        var zip = await Made(kind);
        var before = _place.Files();
        var refused = await Assert.ThrowsAsync<ShelfException>(() => mine.Restore(new MemoryStream(zip), None));
        Assert.NotEmpty(refused.Message);
        Assert.NotEqual(ShelfFault.Missing, refused.Fault);
        Assert.Equal("mine", (await mine.Get(head.Id, null, None)).Text);
        Assert.Equal(before, _place.Files());
        Assert.False(File.Exists(Path.Combine(Path.GetTempPath(), "climbed.db")));
    }

    private static async Task<byte[]> Made(string kind)
    {
        using var place = new Place();
        using var shelf = place.Take();
        for (var i = 0; i < 20; i++)
        {
            await Add(shelf, Setting(new string('x', 9000)));
        }
        var zip = await BackUp(shelf);
        shelf.Dispose();
        var database = await File.ReadAllBytesAsync(place.Database, None);
        return kind switch
        {
            "nothing" => [],
            "text" => "dear shelf"u8.ToArray(),
            "cut" => zip[..(zip.Length / 2)],
            "no database inside" => Zip(("shelf.db", new byte[9999])),
            "two databases" => Zip(("shelf.db", database), ("b/shelf.db", database)),
            "other names" => Zip(("letters.db", database)),
            "climbing name" => Zip(("../../climbed.db", database)),
            "many entries" => Zip([
                ("shelf.db", database),
                .. Enumerable.Range(0, 5000).Select(i => ($"{i}", Array.Empty<byte>())),
            ]),
            "too large inside" => Zip(("shelf.db", [.. database, .. new byte[8 * 1024 * 1024]])),
            "cut database" => Zip(("shelf.db", database[..(database.Length / 2)])),
            "another program's database" => Zip(("shelf.db", Foreign(place))),
            "trigger" => Changed(place, "CREATE TRIGGER t AFTER INSERT ON Versions BEGIN DELETE FROM Versions; END"),
            "view" => Changed(place, "CREATE VIEW v AS SELECT * FROM Versions"),
            "later version" => Changed(
                place,
                "INSERT INTO \"__EFMigrationsHistory\" VALUES ('99990101000000_Later', '99.0')"
            ),
            "lost version" => Changed(
                place,
                "DELETE FROM Versions WHERE DocumentId IN (SELECT Id FROM Documents LIMIT 1)"
            ),
            "lost references" => Changed(place, "DELETE FROM Documents WHERE Id IN (SELECT Id FROM Documents LIMIT 1)"),
            _ => throw new ArgumentOutOfRangeException(nameof(kind)),
        };
    }

    private static byte[] Changed(Place place, string sql)
    {
        Ask(place.Database, sql);
        return Zip(("shelf.db", File.ReadAllBytes(place.Database)));
    }

    private static byte[] Foreign(Place place)
    {
        var file = Path.Combine(place.Folder, "foreign.db");
        Ask(file, "CREATE TABLE letters (id INTEGER PRIMARY KEY, text TEXT)");
        return File.ReadAllBytes(file);
    }

    private static long Count(string file, string id) =>
        (long)Ask(file, $"SELECT count(*) FROM Documents WHERE Id = '{id}'")!;

    private static object? Ask(string file, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={file};Pooling=False;Foreign Keys=False");
        connection.Open();
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // Of this test.
        command.CommandText = "PRAGMA journal_mode=DELETE";
        command.ExecuteNonQuery();
        command.CommandText = sql;
#pragma warning restore CA2100
        return command.ExecuteScalar();
    }
}
