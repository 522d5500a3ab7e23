using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using System.Xml.Linq;
using Microsoft.Playwright;
using Stridewright.Testing;
using UglyToad.PdfPig;
using static Microsoft.Playwright.Assertions;

namespace Stridewright.Web.Tests;

/// <summary>Hand-outs, put together on the page and taken away.</summary>
public sealed class HandoutTests(Page page, Chromium chromium) : IClassFixture<Page>, IClassFixture<Chromium>
{
    [Fact]
    public async Task Words_of_a_hand_out_are_text_and_it_is_one_page_in_each_kind()
    {
        var id = await Setting();
        var hostile = "</text><script>alert(1)</script><image href='x' onerror='y'/> & \u0007 ]]>";
        var wanted = new JsonObject
        {
            ["bars"] = "5-8",
            ["items"] = new JsonArray("plain", "keyboard", "text"),
            ["text"] = hostile,
            ["pupil"] = hostile,
            ["credit"] = hostile,
            ["paper"] = "letter",
        };
        var answer = await page.PostJson($"/api/settings/{id}/handouts", wanted.ToJsonString());
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
        var made = await Page.Json(answer);
        var svg = XDocument.Parse((string)made["svg"]!);
        Assert.DoesNotContain(svg.Descendants(), e => e.Name.LocalName is "script" or "image");
        Assert.Contains(
            svg.Descendants(),
            e => e.Value.Contains("<script>alert(1)</script>", StringComparison.Ordinal)
        );
        var pdf = await page.Owner.GetByteArrayAsync($"/api/handouts/{made["id"]}/pdf");
        using var document = PdfDocument.Open(pdf);
        var only = Assert.Single(document.GetPages());
        Assert.Equal(8.5 * 72, only.Width, 0.5); // ANSI/ASME Y14.1, A
        Assert.Contains("copyright", only.Text, StringComparison.Ordinal);
        var png = await page.Owner.GetByteArrayAsync($"/api/handouts/{made["id"]}/png");
        Assert.Equal([0x89, 0x50, 0x4e, 0x47], png[..4]);
        Assert.Equal(
            (string)made["svg"]!,
            Encoding.UTF8.GetString(await page.Owner.GetByteArrayAsync($"/api/handouts/{made["id"]}/svg"))
        );
        Assert.Equal(
            HttpStatusCode.NotFound,
            (await page.Owner.GetAsync($"/api/handouts/{made["id"]}/exe")).StatusCode
        );
    }

    [Theory]
    [InlineData("""{"bars":"99","items":["score"]}""", HttpStatusCode.BadRequest, "no range of bars")]
    [InlineData("""{"items":["hats"]}""", HttpStatusCode.BadRequest, "hats")]
    [InlineData("""{"items":["score","staves"],"staves":8}""", HttpStatusCode.UnprocessableEntity, "leave out")]
    [InlineData("""{"items":["levels"],"levels":[7]}""", HttpStatusCode.BadRequest, "no level")]
    [InlineData("""{"paper":"../a5"}""", HttpStatusCode.BadRequest, "paper")]
    public async Task What_cannot_be_is_said(string wanted, HttpStatusCode status, string says)
    {
        var answer = await page.PostJson($"/api/settings/{await Setting()}/handouts", wanted);
        Assert.Equal(status, answer.StatusCode);
        Assert.Contains(says, (string)(await Page.Json(answer))["detail"]!, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(ColorScheme.Light, 1280, 800)]
    [InlineData(ColorScheme.Dark, 820, 1180)]
    [InlineData(ColorScheme.Light, 390, 844)]
    public async Task A_page_for_a_pupil_is_put_together_with_keys_and_a_click(
        ColorScheme scheme,
        int width,
        int height
    )
    {
        var (desk, faults) = await Desks.Open(chromium, page, scheme, width, height);
        await desk.GetByRole(AriaRole.Button, new() { Name = "The Ferry Bell" }).ClickAsync();
        await Expect(desk.Locator(".score svg").First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await desk.GetByRole(AriaRole.Button, new() { Name = "put a hand-out together" }).FocusAsync();
        await desk.Keyboard.PressAsync("Enter");
        var part = desk.GetByRole(AriaRole.Region, new() { Name = "A hand-out" });
        var sheet = part.Locator(".sheet");
        await Expect(sheet.Locator("g.measure")).ToHaveCountAsync(4);
        // The bars have the focus: a range is typed.
        await desk.Keyboard.PressAsync("Control+a");
        await desk.Keyboard.TypeAsync("5-6");
        await Expect(sheet.Locator("g.measure")).ToHaveCountAsync(2);
        foreach (var item in new[] { "levels below each other", "a drawing of the keyboard", "the reasons" })
        {
            await part.GetByLabel(item, new() { Exact = true }).FocusAsync();
            await desk.Keyboard.PressAsync("Space");
        }
        await part.GetByLabel("with a name").CheckAsync();
        await part.GetByLabel("The pupil’s name").FillAsync("<b>Ada</b>");
        await Expect(sheet).ToContainTextAsync("for <b>Ada</b>");
        await Expect(sheet).ToContainTextAsync("level 5");
        await Expect(sheet).ToContainTextAsync("Rings: the right hand.");
        await Desks.Clean(desk);
        await Desks.Shot(desk, $"handout-{width}");
        Assert.Equal(width, await desk.EvaluateAsync<int>("document.documentElement.scrollWidth"));

        // Bars are chosen in the score too.
        await Click(9);
        await Expect(part.GetByLabel("Bars ", new() { Exact = true })).ToHaveValueAsync("9");
        if (width > 390)
        {
            await desk.Keyboard.DownAsync("Shift");
            await Click(11);
            await desk.Keyboard.UpAsync("Shift");
            await Expect(part.GetByLabel("Bars ", new() { Exact = true })).ToHaveValueAsync("9-11");
        }
        var download = await desk.RunAndWaitForDownloadAsync(() =>
            part.GetByRole(AriaRole.Link, new() { Name = "PDF" }).ClickAsync()
        );
        Assert.Equal("the-ferry-bell-hand-out.pdf", download.SuggestedFilename);
        Assert.Empty(faults);

        async Task Click(int bar)
        {
            var measure = desk.Locator(".score g.measure").Nth(bar);
            // Free of the line that stays at the foot.
            await measure.EvaluateAsync("bar => bar.scrollIntoView({ block: 'center', behavior: 'instant' })");
            var box = (await measure.BoundingBoxAsync())!;
            await desk.Mouse.ClickAsync(box.X + box.Width / 2, box.Y + box.Height / 2);
        }
    }

    private async Task<string> Setting()
    {
        var bytes = await File.ReadAllBytesAsync(Path.Combine(Corpus.CheckoutRoot, "samples", "ferry-bell.abc"));
        var brought = await Page.Json(await page.PostFile("ferry-bell.abc", bytes));
        var wanted = $$"""{"tunes":"{{brought["id"]}}","number":1,"wishes":{"key":"F"} }""";
        return (string)(await Page.Json(await page.PostJson("/api/settings", wanted)))["id"]!;
    }
}
