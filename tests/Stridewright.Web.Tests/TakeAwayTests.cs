using System.Buffers.Binary;
using System.IO.Compression;
using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using System.Xml.Linq;
using Microsoft.Playwright;
using Stridewright.Testing;
using UglyToad.PdfPig;
using static Microsoft.Playwright.Assertions;

namespace Stridewright.Web.Tests;

/// <summary>What can be taken away of a setting, each kind read back by another reader.</summary>
public sealed class TakeAwayTests(Page page, Chromium chromium) : IClassFixture<Page>, IClassFixture<Chromium>
{
    private const string Wishes = """{"key":"Bb","leftLevel":3,"form":"usual"}""";
    private static readonly string Ferry = Path.Combine(Corpus.CheckoutRoot, "samples", "ferry-bell.abc");

    [Theory]
    [InlineData("pdf", "the-ferry-bell.pdf", "The Ferry Bell")]
    [InlineData("large-print", "the-ferry-bell-large-print.pdf", "The Ferry Bell")]
    [InlineData("reasons", "the-ferry-bell-with-reasons.pdf", "Notes")]
    [InlineData("right-hand", "the-ferry-bell-right-hand.pdf", "the right hand alone")]
    [InlineData("left-hand", "the-ferry-bell-left-hand.pdf", "the left hand alone")]
    public async Task On_paper_it_says_what_it_is(string format, string name, string words)
    {
        var made = await Made(Wishes);
        var (given, bytes) = await File(made, format);
        using var pdf = PdfDocument.Open(bytes);
        var text = string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
        Assert.Equal(name, given);
        Assert.Contains(words, text);
        // ISO 216: 210 by 297 mm; ISO 32000 counts 72 points to an inch.
        Assert.All(pdf.GetPages(), p => Assert.Equal(210 / 25.4 * 72, p.Width, 0.5));
        Assert.All(pdf.GetPages(), p => Assert.Equal(297 / 25.4 * 72, p.Height, 0.5));
    }

    [Fact]
    public async Task Large_print_takes_more_pages_and_one_hand_fewer()
    {
        var made = await Made(Wishes);
        var pages = (int)made["pages"]!;
        Assert.True(await Count("large-print") > pages);
        Assert.True(await Count("right-hand") < pages);
        Assert.True(await Count("left-hand") < pages);
        Assert.Equal(pages, await Count("pdf"));

        async Task<int> Count(string format)
        {
            using var pdf = PdfDocument.Open((await File(made, format)).Bytes);
            return pdf.NumberOfPages;
        }
    }

    [Fact]
    public async Task Pictures_are_whole_pages_to_scale()
    {
        var made = await Made(Wishes);
        var (name, png) = await File(made, "png", 2);
        Assert.Equal("the-ferry-bell-page-2.png", name);
        // The signature and the first chunk of PNG (W3C, Portable Network Graphics, 5.2 and 11.2.1); 150 dots an inch.
        Assert.Equal([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a], png[..8]);
        Assert.Equal((int)Math.Round(210 / 25.4 * 150), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)));
        Assert.Equal((int)Math.Round(297 / 25.4 * 150), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20)));
        var svg = XDocument.Parse(Encoding.UTF8.GetString((await File(made, "svg", 1)).Bytes));
        Assert.Equal("{http://www.w3.org/2000/svg}svg", svg.Root!.Name.ToString());
        var beyond = await page.Owner.GetAsync($"/api/settings/{made["id"]}/files/png?page=99");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, beyond.StatusCode);
    }

    [Fact]
    public async Task The_arrangement_file_makes_the_same_setting_again()
    {
        var made = await Made(Wishes);
        var (name, file) = await File(made, "arrangement");
        var again = await Made(Wishes, "x.stridewright", file);
        Assert.Equal("the-ferry-bell.stridewright", name);
        Assert.Equal((await File(made, "musicxml")).Bytes, (await File(again, "musicxml")).Bytes);
    }

    [Fact]
    public async Task One_zip_holds_the_same_files_and_is_the_same_each_time()
    {
        var made = await Made(Wishes);
        var (name, bytes) = await File(made, "zip");
        Assert.Equal("the-ferry-bell.zip", name);
        Assert.Equal(bytes, (await File(made, "zip")).Bytes);
        using var zip = new ZipArchive(new MemoryStream(bytes));
        var pages = Enumerable.Range(1, (int)made["pages"]!);
        string[] endings =
        [
            ".pdf",
            "-large-print.pdf",
            "-with-reasons.pdf",
            "-right-hand.pdf",
            "-left-hand.pdf",
            ".musicxml",
            ".mxl",
            ".mid",
            ".html",
            ".stridewright",
            .. pages.SelectMany(p => new[] { $"-page-{p}.svg", $"-page-{p}.png" }),
            ".wav",
        ];
        Assert.Equal(endings.Select(e => "the-ferry-bell" + e), zip.Entries.Select(e => e.FullName));
        foreach (
            var (ending, format) in new[]
            {
                (".pdf", "pdf"),
                (".mxl", "mxl"),
                (".mid", "midi"),
                (".html", "phone"),
                (".wav", "wav"),
            }
        )
        {
            using var entry = new MemoryStream();
            await using var stream = await zip.GetEntry("the-ferry-bell" + ending)!.OpenAsync();
            await stream.CopyToAsync(entry);
            Assert.Equal((await File(made, format)).Bytes, entry.ToArray());
        }
    }

    [Fact]
    public async Task What_is_printed_follows_the_wishes_and_the_music_stays()
    {
        var (plain, other) = (
            await Made(Wishes),
            await Made("""{"key":"Bb","leftLevel":3,"form":"usual","noChords":true,"fingers":true,"notes":true}""")
        );
        var (before, after) = (await Xml(plain), await Xml(other));
        Assert.True(Count(before, "harmony") > 0);
        Assert.Equal((0, 0), (Count(before, "fingering"), Count(after, "harmony")));
        Assert.True(Count(after, "fingering") > 100);
        Assert.Contains(after.Descendants("miscellaneous-field"), f => (string?)f.Attribute("name") == "footnote-1");
        Assert.Equal((await File(plain, "midi")).Bytes, (await File(other, "midi")).Bytes);

        async Task<XDocument> Xml(JsonNode made) =>
            XDocument.Parse(Encoding.UTF8.GetString((await File(made, "musicxml")).Bytes).TrimStart('\ufeff'));

        static int Count(XDocument score, string name) => score.Descendants(name).Count();
    }

    [Fact]
    public async Task A_left_hand_has_no_right_hand_to_take_and_no_one_else_has_a_format()
    {
        var brought = await Page.Json(await page.PostJson("/api/tunes/text", """{"text":"F | D7 | G7 C7 | F"}"""));
        var made = await Set(brought, "{}");
        var right = await page.Owner.GetAsync($"/api/settings/{made["id"]}/files/right-hand");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, right.StatusCode);
        Assert.Contains("one hand", (string?)(await Page.Json(right))["detail"]);
        var unknown = await page.Owner.GetAsync($"/api/settings/{made["id"]}/files/exe");
        Assert.Equal(HttpStatusCode.NotFound, unknown.StatusCode);
    }

    [Theory]
    [InlineData(ColorScheme.Light, 1280, 800)]
    [InlineData(ColorScheme.Dark, 390, 844)]
    public async Task The_words_under_the_brief_change_the_print_the_sight_and_the_paper(
        ColorScheme scheme,
        int width,
        int height
    )
    {
        var (desk, faults) = await Desks.Open(chromium, page, scheme, width, height);
        await desk.GetByRole(AriaRole.Button, new() { Name = "The Ferry Bell" }).ClickAsync();
        var harmony = desk.Locator(".score .harm");
        await Expect(harmony.First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Button(desk, "with chord symbols, change it").FocusAsync();
        await desk.Keyboard.PressAsync("Enter");
        await Expect(desk.GetByRole(AriaRole.Radio, new() { Name = "with chord symbols" })).ToBeFocusedAsync();
        await desk.Keyboard.PressAsync("ArrowDown");
        await desk.Keyboard.PressAsync("Escape");
        await Expect(harmony).ToHaveCountAsync(0, new() { Timeout = 30_000 });
        await Button(desk, "without fingering, change it").ClickAsync();
        await desk.GetByText("with fingering", new() { Exact = true }).ClickAsync();
        await desk.Keyboard.PressAsync("Escape");
        await Expect(desk.Locator(".score .fing").First).ToBeVisibleAsync(new() { Timeout = 30_000 });
        await Desks.Clean(desk);
        await Desks.Shot(desk, $"printed-{scheme}");
        Assert.Equal(width, await desk.EvaluateAsync<int>("document.documentElement.scrollWidth"));

        var first = desk.Locator(".score .page").First;
        var usual = (await first.BoundingBoxAsync())!.Width;
        await Button(desk, "larger").ClickAsync();
        Assert.True((await first.BoundingBoxAsync())!.Width > usual * 1.15);
        await Button(desk, "as whole pages").ClickAsync();
        Assert.True((await first.BoundingBoxAsync())!.Height < height);
        await Button(desk, "as wide as the paper").ClickAsync();
        Assert.Equal(usual, (await first.BoundingBoxAsync())!.Width, 1.0);

        var pages = await desk.Locator(".score .page").CountAsync();
        await desk.EmulateMediaAsync(new() { Media = Media.Print });
        await Desks.Shot(desk, $"print-{scheme}");
        using var print = PdfDocument.Open(await desk.PdfAsync(new() { PreferCSSPageSize = true, Format = "A4" }));
        var text = string.Join(' ', print.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
        Assert.Equal(pages, print.NumberOfPages);
        Assert.Contains("The Ferry Bell", text);
        Assert.DoesNotContain("larger", text);
        Assert.DoesNotContain("Printed", text);
        Assert.Empty(faults);
    }

    private static ILocator Button(IPage desk, string name) =>
        desk.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    private async Task<JsonNode> Made(string wishes, string name = "ferry-bell.abc", byte[]? file = null)
    {
        var bytes = file ?? await System.IO.File.ReadAllBytesAsync(Ferry);
        return await Set(await Page.Json(await page.PostFile(name, bytes)), wishes);
    }

    private async Task<JsonNode> Set(JsonNode brought, string wishes)
    {
        var wanted = $$"""{"tunes":"{{brought["id"]}}","number":1,"wishes":{{wishes}}}""";
        var answer = await page.PostJson("/api/settings", wanted);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
        return await Page.Json(answer);
    }

    private async Task<(string? Name, byte[] Bytes)> File(JsonNode made, string format, int number = 1)
    {
        var file = await page.Owner.GetAsync($"/api/settings/{made["id"]}/files/{format}?page={number}");
        Assert.True(file.IsSuccessStatusCode, format);
        return (file.Content.Headers.ContentDisposition!.FileName, await file.Content.ReadAsByteArrayAsync());
    }
}
