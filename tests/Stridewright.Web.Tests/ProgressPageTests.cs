using System.Net;
using Microsoft.Playwright;
using Stridewright.Music;
using Stridewright.Workbench.Practising;
using Stridewright.Workbench.Shelves;
using static Microsoft.Playwright.Assertions;

namespace Stridewright.Web.Tests;

/// <summary>A teacher's book of progress on the page, its table, and a player who is forgotten.</summary>
public sealed class ProgressPageTests(Chromium chromium) : IClassFixture<Chromium>, IAsyncDisposable
{
    private const string Hostile = "=Ben <img src=x onerror=alert(1)>";

    private readonly string _data = Directory.CreateTempSubdirectory("stridewright-progress-").FullName;
    private PageHost? _host;

    public async ValueTask DisposeAsync()
    {
        if (_host is not null)
        {
            await _host.DisposeAsync();
        }
        Directory.Delete(_data, recursive: true);
    }

    [Theory]
    [InlineData(ColorScheme.Light, 390, 844)]
    [InlineData(ColorScheme.Dark, 1280, 800)]
    public async Task Everybody_in_short_one_at_length_a_table_and_forgetting(ColorScheme scheme, int width, int height)
    {
        await Keep();
        _host = await PageHost.Start(0, _data, CancellationToken.None);
        var context = await Desks.Context(chromium, scheme, width, height);
        var (desk, faults) = await Desks.At(context, _host.Address);
        await Button(desk, "See how players come on").ClickAsync();
        await Expect(desk.GetByRole(AriaRole.Heading, new() { Name = "How players come on" })).ToBeFocusedAsync();
        await Expect(Button(desk, "Ada")).ToBeVisibleAsync();
        await Expect(Button(desk, Hostile)).ToBeVisibleAsync();
        await Expect(desk.GetByText("Due today: The Ferry Bell: the whole piece.")).ToBeVisibleAsync();
        await Desks.Clean(desk);

        // By keys alone: to Ada, and through her weeks.
        await Button(desk, "Ada").FocusAsync();
        await desk.Keyboard.PressAsync("Enter");
        await Expect(desk.GetByRole(AriaRole.Heading, new() { Name = "The Ferry Bell" })).ToBeVisibleAsync();
        await Expect(desk.GetByText("Clean at 72 quarters a minute of 90.")).ToBeVisibleAsync();
        await Expect(desk.Locator(".progress tbody tr")).ToHaveCountAsync(3); // two weeks, one thing practised
        await Desks.Clean(desk);
        Assert.True(
            await desk.EvaluateAsync<bool>(
                "() => [document.documentElement, ...document.querySelectorAll('.progress .table')].every(e => e.scrollWidth <= e.clientWidth)"
            ),
            "something is cut"
        );
        await Desks.Shot(desk, $"progress-{scheme}");

        var table = await desk.RunAndWaitForDownloadAsync(() =>
            desk.GetByRole(AriaRole.Link, new() { Name = "as a table for a spreadsheet" }).ClickAsync()
        );
        Assert.Equal("progress.csv", table.SuggestedFilename);
        var lines = await File.ReadAllLinesAsync(await table.PathAsync());
        Assert.Equal(3, lines.Length); // the head, and Ada's two weeks
        Assert.All(lines[1..], line => Assert.StartsWith("Ada,The Ferry Bell,", line, StringComparison.Ordinal));

        await Button(desk, "throw Ada away, with all takes").ClickAsync();
        await Expect(Button(desk, "keep them")).ToBeFocusedAsync();
        await Desks.Clean(desk);
        await Button(desk, "Throw them away").ClickAsync();
        await Expect(desk.GetByText("Backups that were made before")).ToBeVisibleAsync();
        await Expect(Button(desk, "Ada")).ToHaveCountAsync(0);
        await Expect(Button(desk, Hostile)).ToBeVisibleAsync();
        Assert.Empty(faults);
        await context.CloseAsync();
    }

    [Fact]
    public async Task Who_is_not_there_is_said()
    {
        _host = await PageHost.Start(0, _data, CancellationToken.None);
        using var owner = new HttpClient(new SocketsHttpHandler { CookieContainer = new CookieContainer() })
        {
            BaseAddress = _host.Root,
        };
        owner.DefaultRequestHeaders.Add("Origin", _host.Root.GetLeftPart(UriPartial.Authority));
        await owner.GetStringAsync(_host.Address);
        foreach (var path in new[] { "/api/progress?player=x", "/api/progress.csv?player=x" })
        {
            Assert.Equal(HttpStatusCode.NotFound, (await owner.GetAsync(path)).StatusCode);
        }
        Assert.Equal(HttpStatusCode.NotFound, (await owner.DeleteAsync("/api/players/x")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await owner.GetAsync("/api/progress?zone=99999")).StatusCode);
    }

    private static ILocator Button(IPage desk, string name) =>
        desk.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    private async Task Keep()
    {
        using var shelf = ShelfDesk.Take(_data);
        var (ada, ben) = (
            await shelf.Players.Named("Ada", CancellationToken.None),
            await shelf.Players.Named(Hostile, CancellationToken.None)
        );
        // Three weeks and a day ago, and two weeks before that.
        foreach (var (player, days) in new[] { (ada, 22), (ada, 36), (ben, 200) })
        {
            await shelf.Takes.Save(
                new KeptTake
                {
                    PlayerId = player.Id,
                    PlayerName = player.Name,
                    Title = "The Ferry Bell",
                    At = TimeProvider.System.GetUtcNow().AddDays(-days),
                    Midi = new byte[] { 77, 84, 104, 100 }.ToValueList(),
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
}
