using System.Text.Json.Nodes;
using Stridewright.Workbench.Practising;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Cli.Tests;

public sealed class ProgressCommandTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("stridewright-progress-");

    public void Dispose() => _folder.Delete(recursive: true);

    private string Data => At("data");

    private string At(string name) => Path.Combine(_folder.FullName, name);

    [Fact]
    public async Task It_tells_a_players_weeks_and_what_is_due_and_writes_the_table()
    {
        await Keep();
        var run = Run("progress", "--data", Data, "--player", "ada", "--on", "2026-03-11", "--csv", At("p.csv"));
        Assert.Equal((0, ""), (run.ExitCode, run.Error));
        Assert.Contains("Ada: 1 take in the last seven days", run.Output, StringComparison.Ordinal);
        Assert.Contains("reached 72 quarters a minute of 90", run.Output, StringComparison.Ordinal);
        Assert.Contains("due       The Ferry Bell: the whole piece", run.Output, StringComparison.Ordinal);
        Assert.StartsWith("player,piece,week", File.ReadAllText(At("p.csv")), StringComparison.Ordinal);

        var json = JsonNode.Parse(Run("progress", "--data", Data, "--on", "2026-03-10", "--json").Output)!;
        Assert.Equal("progress", (string?)json["kind"]);
        Assert.Equal("2026-03-11", (string?)json["players"]![0]!["pieces"]![0]!["items"]![0]!["due"]);
        Assert.False((bool)json["players"]![0]!["pieces"]![0]!["items"]![0]!["isDue"]!);
    }

    [Fact]
    public async Task Nobody_is_forgotten_without_yes()
    {
        await Keep();
        var asked = Run("player", "forget", "Ada", "--data", Data);
        Assert.Equal(2, asked.ExitCode);
        Assert.Contains("1 take", asked.Error, StringComparison.Ordinal);
        Assert.Contains("Ada", Run("progress", "--data", Data).Output, StringComparison.Ordinal);

        var done = Run("player", "forget", "Ada", "--data", Data, "--yes");
        Assert.Equal(0, done.ExitCode);
        Assert.Contains("Backups", done.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Ada", Run("progress", "--data", Data).Output, StringComparison.Ordinal);
        Assert.Equal(2, Run("player", "forget", "Ada", "--data", Data, "--yes").ExitCode);
    }

    [Theory]
    [InlineData("--on", "tomorrow", "2026-03-14")]
    [InlineData("--player", "Nobody", "Nobody")]
    public async Task What_cannot_be_is_said(string option, string value, string said)
    {
        await Keep();
        var run = Run("progress", "--data", Data, option, value);
        Assert.Equal(2, run.ExitCode);
        Assert.StartsWith(option, run.Error, StringComparison.Ordinal);
        Assert.Contains(said, run.Error, StringComparison.Ordinal);
    }

    private static CliRun Run(params string[] args) => CliRun.Of(new FakeUseCases(), args);

    private async Task Keep()
    {
        using var shelf = ShelfDesk.Take(Data);
        var ada = await shelf.Players.Named("Ada", CancellationToken.None);
        await shelf.Takes.Save(
            new KeptTake
            {
                PlayerId = ada.Id,
                PlayerName = ada.Name,
                Title = "The Ferry Bell",
                // At noon, so that the day is the same in all zones in which people live but the outermost.
                At = new DateTimeOffset(2026, 3, 10, 12, 0, 0, TimeSpan.Zero),
                Midi = [77],
                Heard = new()
                {
                    Asked = 100,
                    Right = 99,
                    Wrong = 1,
                    Missing = 0,
                    Extra = 0,
                    Bars = 16,
                    BarsNotPlayed = 0,
                    QuartersPerMinute = 72,
                    AskedQuartersPerMinute = 90,
                },
            },
            CancellationToken.None
        );
    }
}
