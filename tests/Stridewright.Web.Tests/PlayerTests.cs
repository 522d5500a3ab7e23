using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Testing;
using static Microsoft.Playwright.Assertions;

namespace Stridewright.Web.Tests;

/// <summary>Players on the shelf, and settings for their hands.</summary>
public sealed partial class PlayerTests(Page page, Chromium chromium) : IClassFixture<Page>, IClassFixture<Chromium>
{
    private const string Lena =
        """{"name":"Lena <i>","said":[{"word":"span","value":"8in"},{"word":"left-without","value":"4"},{"word":"no-octaves","value":""}],"notes":"a\nb"}""";

    [Fact]
    public async Task A_setting_is_made_for_a_player_and_knows_whose_it_is_when_it_comes_back()
    {
        var item = await Page.Json(await page.PostJson("/api/players", $$"""{"player":{{Lena}} }"""));
        var told = await Page.Json(await page.Owner.GetAsync($"/api/players/{item["id"]}"));
        Assert.Equal("Lena <i>", (string)told["player"]!["name"]!);
        Assert.Equal(8 * 25.4, (double)told["right"]!["spanMm"]!, 0.01); // an inch has 25.4 mm
        Assert.Equal([4], told["left"]!["without"]!.AsArray().Select(n => (int)n!));

        var made = await Made($$"""{"player":"{{item["id"]}}","leftLevel":4,"rightLevel":5}""");
        var hands = made["tune"]!["setting"]!["hands"]!;
        Assert.Equal(203.2, (double)hands["spanMm"]!, 0.01);
        Assert.True((bool)hands["noOctaves"]!);
        Assert.Contains("left-without 4", hands["also"]!.AsArray().Select(a => (string)a!));

        var kept = await Page.Json(
            await page.PostJson("/api/shelf/arrangements", $$"""{"setting":"{{made["id"]}}"}""")
        );
        var opened = await Page.Json(await page.PostJson($"/api/shelf/documents/{kept["id"]}/open", ""));
        Assert.Equal((string)item["id"]!, (string?)opened["wishes"]!["player"]);
        Assert.Null((string?)opened["wishes"]!["span"]);
    }

    [Theory]
    [InlineData("""{"name":"","said":[]}""", "name")]
    [InlineData("""{"name":"A","said":[{"word":"span","value":"wide"}]}""", "span")]
    [InlineData("""{"name":"A","said":[{"word":"left-without","value":"1 2 3 4"}]}""", "left-without")]
    [InlineData("""{"name":"A","said":[{"word":"hat","value":"x"}]}""", "hat")]
    public async Task What_cannot_be_said_of_a_player_is_named(string said, string subject)
    {
        foreach (
            var (path, body) in new[] { ("/api/players/try", said), ("/api/players", $$"""{"player":{{said}} }""") }
        )
        {
            var answer = await page.PostJson(path, body);
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
            var problems = (await Page.Json(answer))["problems"]!.AsArray();
            Assert.Contains(subject, problems.Select(p => (string)p!["subject"]!));
        }
    }

    [Fact]
    public async Task A_take_that_is_none_and_a_player_who_is_none_are_refused()
    {
        var take = new ByteArrayContent(Encoding.ASCII.GetBytes("MThd nothing"));
        take.Headers.ContentType = new("application/octet-stream");
        var answer = await page.Owner.PostAsync("/api/players/leap-test?octave=-1", take);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var test = await page.Owner.GetByteArrayAsync("/api/players/leap-test/left/midi");
        Assert.Equal("MThd"u8, test.AsSpan(0, 4)); // Standard MIDI Files 1.0
        var gone = await page.PostJson(
            "/api/settings",
            $$"""{"tunes":"{{await Brought()}}","number":1,"wishes":{"player":"nobody"} }"""
        );
        Assert.Equal(HttpStatusCode.NotFound, gone.StatusCode);
    }

    [Theory]
    [InlineData(ColorScheme.Light, 820, 1180)]
    [InlineData(ColorScheme.Dark, 390, 844)]
    public async Task A_player_is_written_chosen_changed_put_away_and_taken_back(
        ColorScheme scheme,
        int width,
        int height
    )
    {
        var (desk, faults) = await Desks.Open(chromium, page, scheme, width, height);
        await desk.GetByRole(AriaRole.Button, new() { Name = "The Ferry Bell" }).ClickAsync();
        await Expect(desk.Locator(".score svg").First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        var part = desk.GetByRole(AriaRole.Region, new() { Name = "Players on the shelf, and new ones" });
        await Button(part, "players").FocusAsync();
        await desk.Keyboard.PressAsync("Enter");
        await Button(part, "a new player").FocusAsync();
        await desk.Keyboard.PressAsync("Enter");
        var name = $"Ada {width}";
        await desk.Keyboard.TypeAsync(name);
        await part.GetByLabel("Thumb to little finger, hand flat: ").FillAsync("7.4in");
        await part.GetByRole(AriaRole.Group, new() { Name = "Fingers of the left hand that cannot be used" })
            .GetByLabel("4")
            .CheckAsync();
        await Expect(part.GetByText("The left hand reaches")).ToBeVisibleAsync();
        await Desks.Clean(desk);
        await Desks.Shot(desk, $"player-{width}");
        Assert.Equal(width, await desk.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        await Button(part, "keep the player").ClickAsync();
        // The brief is for her now.
        await Expect(Button(desk, $"{name}’s hands, change it")).ToBeVisibleAsync();
        await Expect(Button(part, $"set it for {name}")).ToHaveAttributeAsync("aria-pressed", "true");

        await Button(part, $"change: {name}").ClickAsync();
        await part.GetByLabel("Thumb to little finger, hand flat: ").FillAsync("wide");
        await Expect(part.Locator(".fault")).ToBeVisibleAsync();
        await part.GetByLabel("Thumb to little finger, hand flat: ").FillAsync("200");
        await Button(part, "keep the player").ClickAsync();
        await Expect(Button(part, "a new player")).ToBeVisibleAsync();

        await Button(part, $"put away: {name}").ClickAsync();
        await Expect(part.GetByText($"{name} was put away.")).ToBeVisibleAsync();
        await Button(part, "take back").ClickAsync();
        await Expect(Button(part, $"set it for {name}")).ToBeVisibleAsync();
        // The browser tells of the span that was refused while it was typed.
        Assert.DoesNotContain(faults, f => !f.Contains("400 (Bad Request)", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(ColorScheme.Light, 1280, 800)]
    [InlineData(ColorScheme.Dark, 390, 844)]
    public async Task Leaps_are_measured_where_the_test_is_played_to_the_page(ColorScheme scheme, int width, int height)
    {
        var context = await Desks.Context(chromium, scheme, width, height);
        await context.AddInitScriptAsync(Keyboard.Edge);
        var (desk, faults) = await Desks.OpenIn(context, page);
        await desk.GetByRole(AriaRole.Button, new() { Name = "The Ferry Bell" }).ClickAsync();
        await Expect(desk.Locator(".score svg").First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        var part = desk.GetByRole(AriaRole.Region, new() { Name = "Players on the shelf, and new ones" });
        await Button(part, "players").ClickAsync();
        await Button(part, "a new player").ClickAsync();
        await Button(part, "begin with the left hand").ClickAsync();
        var parts = LeapTest.Parts(Hand.Left);
        for (var i = 0; i < parts.Count; i++)
        {
            await Expect(part.GetByText($"Part {i + 1} of {parts.Count}, ")).ToBeVisibleAsync();
            await Expect(part.GetByText($"0 of {parts[i].Keys.Count} keys struck.")).ToBeVisibleAsync();
            // As the click asks, begun a second from now.
            var messages = parts[i]
                .Keys.SelectMany(
                    (key, n) =>
                        new[]
                        {
                            new[] { 1 + n * parts[i].Seconds, 0x90, key, 80 },
                            [1 + (n + 0.5) * parts[i].Seconds, 0x80, key, 0],
                        }
                );
            await desk.EvaluateAsync("messages => { edge.base = undefined; edge.play(messages); }", messages);
            await Expect(part.GetByText($"{parts[i].Keys.Count} of {parts[i].Keys.Count} keys struck."))
                .ToBeVisibleAsync();
            if (i == 2)
            {
                await Desks.Clean(desk);
                await Desks.Shot(desk, $"leaps-{width}");
            }
            await Button(part, i < parts.Count - 1 ? "go on to the next part" : "that was it").ClickAsync();
        }
        // The test's own file says the same: nothing is slower there, and nothing faster.
        var written = new ByteArrayContent(await page.Owner.GetByteArrayAsync("/api/players/leap-test/left/midi"));
        written.Headers.ContentType = new("application/octet-stream");
        var told = await Page.Json(await page.Owner.PostAsync("/api/players/leap-test", written));
        var measured = (
            await part.GetByRole(AriaRole.Status).Filter(new() { HasText = "part 1:" }).InnerTextAsync()
        ).Split("; ");
        Assert.Equal(
            told["sentences"]!.AsArray().Select(s => Counted((string)s!).Words),
            measured.Select(s => Counted(s).Words)
        );
        // The page's clock gives milliseconds.
        Assert.All(
            told["sentences"]!.AsArray().Zip(measured),
            pair => Assert.Equal(Counted((string)pair.First!).Rate, Counted(pair.Second).Rate, 0.11)
        );
        await Expect(part.GetByText(MeasuredLeaps())).ToBeVisibleAsync();
        Assert.Empty(faults);
    }

    private static (string Words, double Rate) Counted(string sentence)
    {
        var comma = sentence.LastIndexOf(", ", StringComparison.Ordinal);
        return (sentence[..comma], double.Parse(sentence[(comma + 2)..].Split(' ')[0], CultureInfo.InvariantCulture));
    }

    [GeneratedRegex(@"^Measured: left leaps 1[78]\.?\d* a second, left strokes 8 a second")]
    private static partial Regex MeasuredLeaps();

    private static ILocator Button(IPage desk, string name) =>
        desk.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    private static ILocator Button(ILocator part, string name) =>
        part.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    private async Task<string> Brought()
    {
        var bytes = await File.ReadAllBytesAsync(Path.Combine(Corpus.CheckoutRoot, "samples", "ferry-bell.abc"));
        return (string)(await Page.Json(await page.PostFile("ferry-bell.abc", bytes)))["id"]!;
    }

    private async Task<JsonNode> Made(string wishes)
    {
        var wanted = $$"""{"tunes":"{{await Brought()}}","number":1,"wishes":{{wishes}} }""";
        var answer = await page.PostJson("/api/settings", wanted);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
        return await Page.Json(answer);
    }
}
