using System.Net;
using System.Text.Json.Nodes;
using Microsoft.Playwright;
using Stridewright.Testing;
using static Microsoft.Playwright.Assertions;

namespace Stridewright.Web.Tests;

/// <summary>Tunes corrected where they stand, played in, and kept by themselves.</summary>
public sealed class TuneTests(Page page, Chromium chromium) : IClassFixture<Page>, IClassFixture<Chromium>
{
    private const string Small = """{"text":"X:1\nT:Small\nM:2/4\nL:1/8\nK:C\nG2|\"C\"c2 e2|\"G7\"d2 ^A2|\"C\"c4|]"}""";

    [Fact]
    public async Task Notes_chords_key_metre_and_pick_up_are_corrected()
    {
        var id = (string)(await Page.Json(await page.PostJson("/api/tunes/text", Small)))["id"]!;
        var told = await Told(id);
        Assert.Equal(("C major", "2/4", "1/4"), Signature(told));
        Assert.Equal(["G", "C", "D"], Letters(told, 0).Concat(Letters(told, 1)[..1]).Concat(Letters(told, 2)[..1]));

        id = await Corrected(
            id,
            """{"action":"notes","bar":1,"notes":[{"at":"0","length":"1/8","pitches":["E5"]},{"at":"1/4","length":"1/4","pitches":["F5"]}]}"""
        );
        Assert.Equal(["E5@0+1/8", "F5@1/4+1/4"], Notes(await Told(id), 1));
        // Two chords share a bar in halves (common practice, and as in a line of chords).
        id = await Corrected(id, """{"action":"chords","bar":2,"value":"Dm G7"}""");
        Assert.Equal("Dm G7", (string)(await Told(id))["bars"]![2]!["chords"]!);
        // In F the black key between A and B is B flat: the signature has it.
        id = await Corrected(id, """{"action":"key","value":"F"}""");
        Assert.Equal("Bb4@1/4+1/4", Notes(await Told(id), 2)[1]);
        id = await Corrected(id, """{"action":"metre","value":"4/4"}""");
        told = await Told(id);
        Assert.Equal(("F major", "4/4", "1/4"), Signature(told));
        Assert.Equal(["1/4", "1", "1"], told["bars"]!.AsArray().Select(b => (string)b!["length"]!));
        Assert.Equal(["E5@0+1/8", "F5@1/4+1/4", "D5@1/2+1/4", "Bb4@3/4+1/4"], Notes(told, 1));
        id = await Corrected(id, """{"action":"pick-up","value":"0"}""");
        told = await Told(id);
        Assert.Equal(("F major", "4/4", "0"), Signature(told));
        // What runs over a new bar line goes on behind it.
        Assert.Equal(["Bb4@0+1/4", "C5@1/4+1/2"], Notes(told, 1));
        var set = await page.PostJson("/api/settings", $$"""{"tunes":"{{id}}","number":1,"wishes":{} }""");
        Assert.True(set.IsSuccessStatusCode, await set.Content.ReadAsStringAsync());
    }

    [Theory]
    [InlineData("""{"action":"notes","bar":1,"notes":[{"at":"0","length":"1","pitches":["E5"]}]}""", "bar line")]
    [InlineData("""{"action":"notes","bar":1,"notes":[{"at":"x","length":"1/8","pitches":["E5"]}]}""", "stroke")]
    [InlineData("""{"action":"chords","bar":1,"value":"C Hx9"}""", "'Hx9'")]
    [InlineData("""{"action":"chords","bar":1,"value":"C@7"}""", "no chord of this bar")]
    [InlineData("""{"action":"key","value":"<b>"}""", "no key")]
    [InlineData("""{"action":"metre","value":"5/7"}""", "no metre")]
    [InlineData("""{"action":"metre","value":"999999999999/4"}""", "no metre")]
    [InlineData("""{"action":"pick-up","value":"3/1"}""", "no pick-up")]
    [InlineData("""{"action":"notes","bar":99}""", "bar")]
    [InlineData("""{"action":"burn"}""", "not corrected")]
    public async Task What_cannot_be_corrected_says_why(string change, string says)
    {
        var id = (string)(await Page.Json(await page.PostJson("/api/tunes/text", Small)))["id"]!;
        var answer = await page.PostJson($"/api/tunes/{id}/1/corrections", change);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(says, (string)(await Page.Json(answer))["detail"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_tune_a_figure_and_what_is_shown_come_back_from_the_shelf()
    {
        var ferry = await File.ReadAllBytesAsync(Path.Combine(Corpus.CheckoutRoot, "samples", "ferry-bell.abc"));
        var tunes = (string)(await Page.Json(await page.PostFile("ferry-bell.abc", ferry)))["id"]!;
        var item = await Page.Json(await page.PostJson("/api/shelf/tunes", $$"""{"tunes":"{{tunes}}","number":1}"""));
        Assert.Equal(("tune", "F major"), ((string)item["kind"]!, (string)item["key"]!));
        var opened = await Page.Json(await page.PostJson($"/api/shelf/documents/{item["id"]}/open", ""));
        var back = (string)opened["brought"]!["id"]!;
        Assert.Equal((string)(await Told(tunes))["abc"]!, (string)(await Told(back))["abc"]!);

        var made = await Set(tunes, """{"fingers":true,"largePrint":true,"noChords":true}""");
        var kept = await Page.Json(
            await page.PostJson("/api/shelf/arrangements", $$"""{"setting":"{{made["id"]}}"}""")
        );
        var wishes = (await Page.Json(await page.PostJson($"/api/shelf/documents/{kept["id"]}/open", "")))["wishes"]!;
        Assert.Equal(
            (true, true, true, false),
            ((bool)wishes["fingers"]!, (bool)wishes["largePrint"]!, (bool)wishes["noChords"]!, (bool)wishes["notes"]!)
        );

        var bars = (await Page.Json(await page.Owner.GetAsync($"/api/settings/{made["id"]}/bars")))["bars"]!.AsArray();
        var wish = $$"""{"action":"figure","bar":"{{bars[5]!["id"]}}","hand":"left","figure":"a turn","bars":1}""";
        var with = await Page.Json(await page.PostJson($"/api/settings/{made["id"]}/spots", wish));
        var setting = (string)with["setting"]!["id"]!;
        var figure = await Page.Json(
            await page.PostJson("/api/shelf/figures", $$"""{"setting":"{{setting}}","figure":"a turn"}""")
        );
        var other = await Set(tunes, "{}");
        var taken = await Page.Json(await page.PostJson($"/api/settings/{other["id"]}/figures/{figure["id"]}", ""));
        var list = await Page.Json(await page.Owner.GetAsync($"/api/settings/{taken["setting"]!["id"]}/bars"));
        Assert.Equal(["a turn"], list["figures"]!.AsArray().Select(f => (string)f!["name"]!));
        var none = await page.PostJson($"/api/settings/{other["id"]}/figures/{item["id"]}", "");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, none.StatusCode);
    }

    [Theory]
    [InlineData(ColorScheme.Light, 1280, 800)]
    [InlineData(ColorScheme.Dark, 390, 844)]
    public async Task The_tune_is_seen_straightened_and_corrected_with_keys(ColorScheme scheme, int width, int height)
    {
        var (desk, faults) = await Desks.Open(chromium, page, scheme, width, height);
        await desk.GetByRole(AriaRole.Button, new() { Name = "The Ferry Bell" }).ClickAsync();
        await Expect(desk.Locator(".score .harm").First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        var part = desk.GetByRole(AriaRole.Region, new() { Name = "The tune by itself" });
        await part.GetByRole(AriaRole.Button).First.FocusAsync();
        await desk.Keyboard.PressAsync("Enter");
        await Expect(part.Locator(".sheet g.measure").First).ToBeVisibleAsync();
        await part.GetByLabel("straightened, before it is ragged").CheckAsync();
        await Expect(part.Locator(".sheet").First)
            .ToHaveAttributeAsync("aria-label", "The tune The Ferry Bell, straightened, page 1");
        await part.GetByLabel("Which bar of the tune").SelectOptionAsync(new SelectOptionValue { Label = "2" });
        await part.GetByLabel("Chords ").FillAsync("Em9");
        await desk.Keyboard.PressAsync("Enter");
        await Expect(part.GetByText("Corrected;")).ToBeVisibleAsync();
        await Expect(desk.Locator(".score .harm", new() { HasText = "m9" }).First)
            .ToBeVisibleAsync(new() { Timeout = 60_000 });
        var notes = part.GetByRole(AriaRole.Listbox);
        await notes.FocusAsync();
        var before = await notes.GetByRole(AriaRole.Option).First.InnerTextAsync();
        await desk.Keyboard.PressAsync("ArrowUp");
        await part.GetByRole(AriaRole.Button, new() { Name = "write these notes" }).ClickAsync();
        await Expect(part.GetByRole(AriaRole.Button, new() { Name = "write these notes" })).ToBeDisabledAsync();
        await Expect(notes.GetByRole(AriaRole.Option).First).Not.ToHaveTextAsync(before);
        await Desks.Clean(desk);
        await Desks.Shot(desk, $"tune-{width}");
        Assert.Equal(width, await desk.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        var undo = desk.GetByRole(AriaRole.Button, new() { Name = "take the last change back" });
        await undo.ClickAsync();
        await Expect(notes.GetByRole(AriaRole.Option).First).ToHaveTextAsync(before);
        await undo.ClickAsync();
        await Expect(desk.Locator(".score .harm", new() { HasText = "m9" }))
            .ToHaveCountAsync(0, new() { Timeout = 60_000 });
        Assert.Empty(faults);
    }

    [Fact]
    public async Task A_tune_is_played_in_to_a_click()
    {
        var context = await chromium.Browser.NewContextAsync();
        await context.AddInitScriptAsync(Edge);
        var (desk, faults) = await Desks.OpenIn(context, page);
        await desk.GetByRole(AriaRole.Button, new() { Name = "play it in on a MIDI keyboard" }).ClickAsync();
        await Desks.Clean(desk);
        await desk.GetByRole(AriaRole.Button, new() { Name = "start the click" }).ClickAsync();
        await Expect(desk.GetByText("Listening: 0 notes.")).ToBeVisibleAsync();
        await desk.WaitForFunctionAsync("() => edge.begin !== undefined");
        // Quarters of a scale to 88 clicks a minute, behind a bar of counting in, each a little off its beat.
        await desk.EvaluateAsync(
            """
            () => [60, 62, 64, 65, 67, 69, 71, 72].forEach((key, i) => {
              const at = edge.begin + (2 + i) * 60000 / 88 + (i % 2 ? 25 : -20);
              edge.keys.onmidimessage({ data: new Uint8Array([0x90, key, 80]), timeStamp: at });
              edge.keys.onmidimessage({ data: new Uint8Array([0x80, key, 0]), timeStamp: at + 55000 / 88 });
            })
            """
        );
        await Expect(desk.GetByText("Listening: 8 notes.")).ToBeVisibleAsync();
        var answer = await desk.RunAndWaitForResponseAsync(
            () => desk.GetByRole(AriaRole.Button, new() { Name = "that was it" }).ClickAsync(),
            r => r.Url.Contains("/api/tunes?name=played.mid", StringComparison.Ordinal)
        );
        var told = await Told((string)JsonNode.Parse(await answer.TextAsync())!["id"]!);
        Assert.Equal("2/4", (string)told["metre"]!);
        Assert.Equal(
            ["C", "D", "E", "F", "G", "A", "B", "C"],
            Enumerable.Range(0, told["bars"]!.AsArray().Count).SelectMany(b => Letters(told, b))
        );
        Assert.All(
            Enumerable.Range(0, 4),
            b => Assert.Equal(["0", "1/4"], told["bars"]![b]!["notes"]!.AsArray().Select(n => (string)n!["at"]!))
        );
        Assert.Empty(faults);
    }

    // A MIDI keyboard at the browser's edge, and the moment of the first click, the high one.
    private const string Edge = """
        const keys = {
          id: "k", name: "Keys", manufacturer: "", version: "1", type: "input", state: "connected", connection: "open",
          onmidimessage: null, open: async () => keys, close: async () => keys, addEventListener() {}, removeEventListener() {},
        };
        window.edge = { keys };
        const start = OscillatorNode.prototype.start;
        OscillatorNode.prototype.start = function (at) {
          if (this.frequency.value > 1300) edge.begin ??= performance.now() + (at - this.context.currentTime) * 1000;
          return start.call(this, at);
        };
        navigator.requestMIDIAccess = async () => ({
          inputs: new Map([["k", keys]]), outputs: new Map(), sysexEnabled: false, onstatechange: null,
          addEventListener() {}, removeEventListener() {},
        });
        """;

    private async Task<JsonNode> Told(string id) => await Page.Json(await page.Owner.GetAsync($"/api/tunes/{id}/1"));

    private async Task<string> Corrected(string id, string change)
    {
        var answer = await page.PostJson($"/api/tunes/{id}/1/corrections", change);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
        return (string)(await Page.Json(answer))["id"]!;
    }

    private async Task<JsonNode> Set(string tunes, string wishes)
    {
        var answer = await page.PostJson(
            "/api/settings",
            $$"""{"tunes":"{{tunes}}","number":1,"wishes":{{wishes}} }"""
        );
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
        return await Page.Json(answer);
    }

    private static (string, string, string) Signature(JsonNode told) =>
        ((string)told["key"]!, (string)told["metre"]!, (string)told["pickUp"]!);

    private static List<string> Notes(JsonNode told, int bar) =>
        [.. told["bars"]![bar]!["notes"]!.AsArray().Select(n => $"{n!["pitches"]![0]}@{n["at"]}+{n["length"]}")];

    private static List<string> Letters(JsonNode told, int bar) =>
        [.. told["bars"]![bar]!["notes"]!.AsArray().Select(n => ((string)n!["pitches"]![0]!)[..1])];
}
