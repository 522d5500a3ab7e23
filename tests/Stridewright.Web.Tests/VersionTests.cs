using System.Text.Json.Nodes;
using System.Xml.Linq;
using Microsoft.Playwright;
using Stridewright.Testing;
using static Microsoft.Playwright.Assertions;

namespace Stridewright.Web.Tests;

/// <summary>Whole settings and versions beside each other.</summary>
public sealed class VersionTests(Page page, Chromium chromium) : IClassFixture<Page>, IClassFixture<Chromium>
{
    [Fact]
    public async Task Other_settings_are_unlike_and_one_that_is_taken_stays_as_it_was_seen()
    {
        var bytes = await File.ReadAllBytesAsync(Path.Combine(Corpus.CheckoutRoot, "samples", "ferry-bell.abc"));
        var brought = await Page.Json(await page.PostFile("ferry-bell.abc", bytes));
        var first = await Set((string)brought["id"]!, "{}");
        var others = (await Page.Json(await page.PostJson($"/api/settings/{first["id"]}/others", "{}"))).AsArray();
        Assert.Equal(2, others.Count);
        foreach (var other in others)
        {
            Assert.True((double)other!["motif"]! > 0.1);
            Assert.True((double)other["bass"]! > 0.1);
            var seen = await Xml((string)other["made"]!["setting"]!["id"]!);
            var again = await Set((string)other["made"]!["tunes"]!, "{}");
            Assert.Equal(Bars(seen).Values, Bars(await Xml((string)again["id"]!)).Values);
            var easier = await Set((string)other["made"]!["tunes"]!, """{"raggedness":0.2}""");
            Assert.NotNull(easier["id"]);
        }

        // By our own reckoning from the files: what each bar holds, by its number.
        var second = others[0]!["made"]!["setting"]!;
        var pair = $$"""{"first":"{{first["id"]}}","second":"{{second["id"]}}"}""";
        var compared = await Page.Json(await page.PostJson("/api/settings/compare", pair));
        var (one, two) = (Bars(await Xml((string)first["id"]!)), Bars(await Xml((string)second["id"]!)));
        Assert.Equal(
            one.Keys.Where(number => one[number] != two[number]),
            compared["bars"]!.AsArray().Select(b => (string)b!["number"]!)
        );
        Assert.Equal(one.Count - compared["bars"]!.AsArray().Count, (int)compared["same"]!);
    }

    [Theory]
    [InlineData(ColorScheme.Light, 1280, 800)]
    [InlineData(ColorScheme.Dark, 390, 844)]
    public async Task One_of_three_settings_is_taken_and_laid_beside_the_version_before(
        ColorScheme scheme,
        int width,
        int height
    )
    {
        var (desk, faults) = await Desks.Open(chromium, page, scheme, width, height);
        await desk.GetByRole(AriaRole.Button, new() { Name = "The Ferry Bell" }).ClickAsync();
        await Expect(desk.Locator(".kept-line[data-kept=true]")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await NameFirstVersions();
        var part = desk.GetByRole(AriaRole.Region, new() { Name = "Other settings and versions" });
        await part.GetByRole(AriaRole.Button, new() { Name = "See two other whole settings of it" }).FocusAsync();
        await desk.Keyboard.PressAsync("Enter");
        await Expect(part.Locator(".beside svg g.measure").First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Expect(part.GetByText("Unlike the first: another rhythm in")).ToHaveCountAsync(2);
        await Desks.Clean(desk);
        await Desks.Shot(desk, $"settings-{width}");
        await part.GetByRole(AriaRole.Button, new() { Name = "take the second" }).ClickAsync();
        await Expect(desk.GetByRole(AriaRole.Button, new() { Name = "take the last change back" })).ToBeVisibleAsync();
        await Expect(desk.Locator(".kept-line[data-kept=true]")).ToBeVisibleAsync();

        await part.GetByRole(AriaRole.Button, new() { Name = "compare two versions" }).ClickAsync();
        await Expect(part.GetByText("Framed: ")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Expect(part.Locator("rect.differs").First).ToBeAttachedAsync();
        await Desks.Clean(desk);
        await Desks.Shot(desk, $"compared-{width}");
        Assert.Equal(width, await desk.EvaluateAsync<int>("document.documentElement.scrollWidth"));

        await desk.GetByRole(AriaRole.Button, new() { Name = "take the last change back" }).ClickAsync();
        await Expect(part.GetByText("All bars are alike.")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        Assert.Empty(faults);
    }

    // So that they stay, however soon others follow.
    private async Task NameFirstVersions()
    {
        var list = await Page.Json(await page.Owner.GetAsync("/api/shelf/documents"));
        foreach (var item in list["items"]!.AsArray())
        {
            var path = $"/api/shelf/documents/{item!["id"]}/versions/1/name";
            var content = new StringContent("""{"name":"first"}""", System.Text.Encoding.UTF8, "application/json");
            Assert.True((await page.Owner.PutAsync(path, content)).IsSuccessStatusCode);
        }
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

    private async Task<XDocument> Xml(string id) =>
        XDocument.Parse(await page.Owner.GetStringAsync($"/api/settings/{id}/files/musicxml"));

    // What is struck, without ids, stems and beams.
    private static Dictionary<string, string> Bars(XDocument score) =>
        score
            .Descendants("measure")
            .ToDictionary(
                m => (string)m.Attribute("number")!,
                m =>
                    string.Join(
                        ' ',
                        m.Elements()
                            .Where(e => e.Name.LocalName is "note" or "backup" or "forward")
                            .Select(e =>
                                $"{e.Element("pitch")?.Value}{e.Element("duration")?.Value}{e.Element("chord")?.Name}{e.Element("tie")?.Attribute("type")?.Value}"
                            )
                    )
            );
}
