using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Stridewright.Testing;

namespace Stridewright.Web.Tests;

public sealed partial class HostTests(Page page) : IClassFixture<Page>
{
    private static readonly string Ferry = Path.Combine(Corpus.CheckoutRoot, "samples", "ferry-bell.abc");

    [Fact]
    public async Task The_contract_is_the_committed_one()
    {
        var file = Path.Combine(Corpus.CheckoutRoot, "src", "Stridewright.Web", "openapi.json");
        var committed = JsonNode.Parse(await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken));
        var served = await Page.Json(await page.Owner.GetAsync("/api/contract.json"));
        Assert.True(JsonNode.DeepEquals(committed, served), served.ToJsonString());
    }

    [Fact]
    public async Task A_tune_is_brought_set_shown_and_taken_away()
    {
        var brought = await Page.Json(await page.PostFile("ferry-bell.abc", await File.ReadAllBytesAsync(Ferry)));
        var tune = brought["tunes"]![0]!;
        Assert.Equal(("The Ferry Bell", "F major"), ((string?)tune["title"], (string?)tune["key"]));
        var answer = await page.PostJson("/api/settings", Wanted(brought, """{"key":"Bb","leftLevel":3}"""));
        var made = await Page.Json(answer);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("Bb major", ((string?)made["tune"]!["setting"]!["key"])!.Replace('♭', 'b'));
        var id = (string)made["id"]!;
        Assert.StartsWith(
            "<svg",
            await page.Owner.GetStringAsync($"/api/settings/{id}/pages/1"),
            StringComparison.Ordinal
        );
        // The first bytes of Standard MIDI Files 1.0 and of ISO 32000.
        Assert.Equal("MThd", await Start("midi"));
        Assert.Equal("%PDF", await Start("pdf"));
        Assert.Equal("<?xm", await Start("musicxml"));

        async Task<string> Start(string format)
        {
            var file = await page.Owner.GetAsync($"/api/settings/{id}/files/{format}");
            Assert.StartsWith(
                "the-ferry-bell.",
                file.Content.Headers.ContentDisposition!.FileName,
                StringComparison.Ordinal
            );
            return Encoding.ASCII.GetString((await file.Content.ReadAsByteArrayAsync())[..4]);
        }
    }

    // What lies on the desk is laid out once, what is printed with care for its turns: of the same bars.
    [Fact]
    public async Task The_print_has_the_bars_of_the_desk()
    {
        var brought = await Page.Json(await page.PostFile("ferry-bell.abc", await File.ReadAllBytesAsync(Ferry)));
        var wishes = """{"form":"intro A A A A A A end","level":5}""";
        var made = await Page.Json(await page.PostJson("/api/settings", Wanted(brought, wishes)));
        var address = $"/api/settings/{made["id"]}";
        var desk = new StringBuilder();
        for (var number = 1; number <= (int)made["pages"]!; number++)
        {
            desk.Append(await page.Owner.GetStringAsync($"{address}/pages/{number}"));
        }
        var told = await Page.Json(await page.Owner.GetAsync(address + "/print"));
        var print = told["pages"]!.AsArray().Select(p => (string)p!).ToList();
        Assert.True(print.Count > 2);
        Assert.Equal(Bars(desk.ToString()), Bars(string.Concat(print)));
        Assert.Equal(HttpStatusCode.NotFound, (await page.Owner.GetAsync("/api/settings/none/print")).StatusCode);

        static IEnumerable<string> Bars(string pages) => MeasureId().Matches(pages).Select(m => m.Groups[1].Value);
    }

    [GeneratedRegex("id=\"([^\"]+)\" class=\"measure\"")]
    private static partial Regex MeasureId();

    [Fact]
    public async Task Chords_alone_make_a_left_hand_and_a_fault_in_them_has_its_column()
    {
        var brought = await Page.Json(await page.PostJson("/api/tunes/text", """{"text":"F | D7 | G7 C7 | F"}"""));
        var made = await Page.Json(await page.PostJson("/api/settings", Wanted(brought, """{"feel":"stride"}""")));
        Assert.True((bool)made["tune"]!["setting"]!["leftHandOnly"]!);
        Assert.Equal("4/4", (string?)made["tune"]!["setting"]!["metre"]);
        var broken = await Page.Json(await page.PostJson("/api/tunes/text", """{"text":"F | Hx7 |\nF"}"""));
        Assert.Empty(broken["tunes"]!.AsArray());
        var finding = broken["findings"]![0]!;
        Assert.Equal(("error", 1, 5), ((string?)finding["severity"], (int?)finding["line"], (int?)finding["column"]));
    }

    [Theory]
    [InlineData("""{"key":"H"}""", 400, "key")]
    [InlineData("""{"leftLevel":9}""", 400, "left")]
    [InlineData("""{"leftLevel":"4"}""", 400, null)]
    [InlineData("""{"player":"/etc/passwd"}""", 404, null)]
    [InlineData("""{"feel":"waltz"}""", 422, "ferry-bell.abc")]
    public async Task A_wish_that_cannot_be_is_refused_in_words(string wishes, int status, string? subject)
    {
        var brought = await Page.Json(await page.PostFile("ferry-bell.abc", await File.ReadAllBytesAsync(Ferry)));
        var answer = await page.PostJson("/api/settings", Wanted(brought, wishes));
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        var fault = await Page.Json(answer);
        Assert.Equal((status, status), ((int)answer.StatusCode, (int)fault["status"]!));
        Assert.NotEmpty((string)fault["detail"]!);
        Assert.Equal(subject, (string?)fault["problems"]!.AsArray().FirstOrDefault()?["subject"]);
    }

    [Theory]
    [InlineData("../../etc/passwd")]
    [InlineData("x.mid")]
    [InlineData("x.musicxml")]
    [InlineData("x.abc")]
    public async Task A_file_that_is_no_tune_says_so(string name)
    {
        var answer = await page.PostFile(
            name,
            Encoding.UTF8.GetBytes("<!DOCTYPE a [<!ENTITY b SYSTEM 'file:///etc/passwd'>]><a>&b;</a>")
        );
        var text = await answer.Content.ReadAsStringAsync();
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains("\"severity\":\"error\"", text);
        Assert.DoesNotContain("root:", text);
    }

    [Fact]
    public async Task What_is_too_large_is_refused()
    {
        var text = new string('x', 300 * 1024);
        var typed = await page.PostJson("/api/tunes/text", $$"""{"text":"{{text}}"}""");
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, typed.StatusCode);
        Assert.Contains("256 KiB", (string?)(await Page.Json(typed))["detail"]);
    }

    [Theory]
    [InlineData("evil.example")]
    [InlineData("127.0.0.1:1")]
    [InlineData("localhost.evil.example")]
    public async Task A_foreign_host_is_refused(string host)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/") { Headers = { Host = host } };
        Assert.Equal(HttpStatusCode.MisdirectedRequest, (await page.Owner.SendAsync(request)).StatusCode);
    }

    [Fact]
    public async Task Without_the_token_or_from_another_origin_nothing_is_done()
    {
        using var stranger = new HttpClient { BaseAddress = page.Host.Root };
        Assert.Equal(HttpStatusCode.Unauthorized, (await stranger.GetAsync("/api/contract.json")).StatusCode);
        await stranger.GetAsync("/open/0123");
        Assert.Equal(HttpStatusCode.Unauthorized, (await stranger.GetAsync("/api/contract.json")).StatusCode);
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/tunes/text")
        {
            Content = new StringContent("""{"text":"F"}""", Encoding.UTF8, "application/json"),
        };
        Assert.Equal(HttpStatusCode.Forbidden, (await stranger.SendAsync(request)).StatusCode);
    }

    [Fact]
    public async Task The_page_allows_no_script_but_its_own_and_each_answer_has_its_nonce()
    {
        var (first, second) = (await page.Owner.GetAsync("/"), await page.Owner.GetAsync("/"));
        var policy = first.Headers.GetValues("Content-Security-Policy").Single();
        Assert.Contains("default-src 'none'; script-src 'self';", policy);
        Assert.DoesNotContain("unsafe", policy);
        Assert.NotEqual(policy, second.Headers.GetValues("Content-Security-Policy").Single());
        var nonce = policy.Split("'nonce-")[1].Split('\'')[0];
        Assert.Contains($"content=\"{nonce}\"", await first.Content.ReadAsStringAsync());
        var answer = await page.Owner.GetAsync("/api/contract.json");
        Assert.True(answer.Headers.CacheControl!.NoStore);
    }

    private static string Wanted(JsonNode brought, string wishes) =>
        $$"""{"tunes":"{{brought["id"]}}","number":1,"wishes":{{wishes}}}""";
}
