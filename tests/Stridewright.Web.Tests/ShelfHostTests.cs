using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using Stridewright.Testing;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Web.Tests;

/// <summary>The shelf over the contract.</summary>
public sealed class ShelfHostTests(Page page) : IClassFixture<Page>
{
    private static readonly string Ferry = Path.Combine(Corpus.CheckoutRoot, "samples", "ferry-bell.abc");

    [Theory]
    [InlineData("""{"key":"Bb","leftLevel":3,"raggedness":0.25,"minutes":"1:45","span":"185","noOctaves":true}""")]
    [InlineData(
        """{"feel":"stride","harmony":"rich","form":"intro A A end","beatsPerMinute":100,"seed":7,"showPlain":true}"""
    )]
    public async Task A_setting_that_was_kept_is_the_same_when_it_is_opened_again(string wishes)
    {
        var made = await Made(wishes);
        var kept = await Page.Json(await page.PostJson("/api/shelf/arrangements", $$"""{"setting":"{{made}}"}"""));
        var opened = await Page.Json(await page.PostJson($"/api/shelf/documents/{kept["id"]}/open", ""));
        Assert.Equal("The Ferry Bell", (string?)opened["brought"]!["tunes"]![0]!["title"]);
        foreach (var (name, value) in JsonNode.Parse(wishes)!.AsObject())
        {
            Assert.True(JsonNode.DeepEquals(value, opened["wishes"]![name]), name);
        }
        var again = await page.PostJson(
            "/api/settings",
            $$"""{"tunes":"{{opened["brought"]!["id"]}}","number":1,"wishes":{{opened["wishes"]}}}"""
        );
        var id = (string)(await Page.Json(again))["id"]!;
        Assert.Equal(await MusicXml(made), await MusicXml(id));
        // Nothing is new, so there is no new version.
        var saved = await Page.Json(
            await Put($"/api/shelf/arrangements/{kept["id"]}", $$"""{"setting":"{{id}}","from":1}""")
        );
        Assert.Equal((1, null), ((int)saved["item"]!["version"]!, saved["beside"]));
    }

    [Fact]
    public async Task Chords_alone_are_kept_too()
    {
        var brought = await Page.Json(await page.PostJson("/api/tunes/text", """{"text":"F | D7 | G7 C7 | F"}"""));
        var made = await Setting(brought, """{"leftLevel":2}""");
        var kept = await Page.Json(await page.PostJson("/api/shelf/arrangements", $$"""{"setting":"{{made}}"}"""));
        var opened = await Page.Json(await page.PostJson($"/api/shelf/documents/{kept["id"]}/open", ""));
        Assert.True((bool)opened["brought"]!["tunes"]![0]!["chordsOnly"]!);
        Assert.Equal(
            await MusicXml(made),
            await MusicXml(await Setting(opened["brought"]!, opened["wishes"]!.ToJsonString()))
        );
    }

    [Fact]
    public async Task A_save_that_comes_second_is_a_conflict_and_both_are_kept()
    {
        var (first, second, third) = (await Made("{}"), await Made("""{"key":"G"}"""), await Made("""{"key":"Eb"}"""));
        var kept = await Page.Json(await page.PostJson("/api/shelf/arrangements", $$"""{"setting":"{{first}}"}"""));
        var place = $"/api/shelf/arrangements/{kept["id"]}";
        Assert.Equal(HttpStatusCode.OK, (await Put(place, $$"""{"setting":"{{second}}","from":1}""")).StatusCode);
        var late = await Put(place, $$"""{"setting":"{{third}}","from":1}""");
        Assert.Equal(HttpStatusCode.Conflict, late.StatusCode);
        var both = await Page.Json(late);
        Assert.Equal((2, 3), ((int)both["item"]!["version"]!, (int)both["beside"]!["number"]!));
        var history = await Page.Json(await page.Owner.GetAsync($"/api/shelf/documents/{kept["id"]}/versions"));
        Assert.Equal(
            ["Eb major", "G major", "F major"],
            history["versions"]!.AsArray().Select(v => (string?)v!["key"])
        );
        var again = await Page.Json(
            await page.PostJson($"/api/shelf/documents/{kept["id"]}/versions/3/again", """{"from":2}""")
        );
        Assert.Equal("Eb major", (string?)again["item"]!["key"]);
        var apart = await Page.Json(await page.PostJson($"/api/shelf/documents/{kept["id"]}/versions/2/copy", ""));
        Assert.NotEqual((string?)kept["id"], (string?)apart["id"]);
    }

    [Fact]
    public async Task A_piece_is_renamed_tagged_found_put_away_taken_back_and_thrown_away()
    {
        var made = await Made("{}");
        var kept = await Page.Json(await page.PostJson("/api/shelf/arrangements", $$"""{"setting":"{{made}}"}"""));
        var place = $"/api/shelf/documents/{kept["id"]}";
        await Put(place + "/title", """{"title":"<script>Bell</script>"}""");
        await Put(place + "/tags", """{"tags":["For Saturday","<i>"]}""");
        await Put(place + "/versions/2/name", """{"name":"as played"}""");
        var found = await Page.Json(
            await page.Owner.GetAsync("/api/shelf/documents?words=script%20bell&key=F%20major&tag=for%20saturday")
        );
        var item = Assert.Single(found["items"]!.AsArray())!;
        Assert.Equal(("<script>Bell</script>", "2/4"), ((string?)item["title"], (string?)item["metre"]));
        Assert.Equal(1, (int)found["count"]!);
        // A save goes on under the title that it has on the shelf.
        var other = await Made("""{"key":"C"}""");
        var saved = await Page.Json(
            await Put($"/api/shelf/arrangements/{kept["id"]}", $$"""{"setting":"{{other}}","from":2}""")
        );
        Assert.Equal("<script>Bell</script>", (string?)saved["item"]!["title"]);

        await page.Owner.DeleteAsync(place);
        Assert.Equal(0, await Count("words=script"));
        Assert.Equal(1, await Count("words=script&deleted=true"));
        await page.PostJson(place + "/back", "");
        Assert.Equal(1, await Count("words=script"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await page.PostJson(place + "/purge", "")).StatusCode);
        await page.Owner.DeleteAsync(place);
        Assert.Equal(HttpStatusCode.OK, (await page.PostJson(place + "/purge", "")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await page.PostJson(place + "/open", "")).StatusCode);

        async Task<int> Count(string query) =>
            (int)(await Page.Json(await page.Owner.GetAsync("/api/shelf/documents?" + query)))["count"]!;
    }

    [Fact]
    public async Task The_whole_shelf_goes_into_a_zip_and_comes_back()
    {
        var made = await Made("{}");
        var kept = await Page.Json(await page.PostJson("/api/shelf/arrangements", $$"""{"setting":"{{made}}"}"""));
        var zip = await page.Owner.GetByteArrayAsync("/api/shelf/backup");
        Assert.Equal("PK"u8.ToArray(), zip[..2]);
        await page.Owner.DeleteAsync($"/api/shelf/documents/{kept["id"]}");
        var answer = await page.Owner.PostAsync("/api/shelf/backup", new ByteArrayContent(zip));
        Assert.StartsWith(
            "shelf.before-restore-",
            (string?)(await Page.Json(answer))["before"],
            StringComparison.Ordinal
        );
        var opened = await page.PostJson($"/api/shelf/documents/{kept["id"]}/open", "");
        Assert.Null((await Page.Json(opened))["item"]!["deleted"]);
    }

    [Fact]
    public async Task Two_starts_do_not_share_a_folder()
    {
        var refused = await Assert.ThrowsAsync<ShelfRefusedException>(() =>
            PageHost.Start(0, page.Host.Folder, CancellationToken.None)
        );
        Assert.Contains(page.Host.Folder, refused.Message);
    }

    private Task<HttpResponseMessage> Put(string path, string json) =>
        page.Owner.PutAsync(path, new StringContent(json, Encoding.UTF8, "application/json"));

    private async Task<string> Made(string wishes)
    {
        var brought = await Page.Json(await page.PostFile("ferry-bell.abc", await File.ReadAllBytesAsync(Ferry)));
        return await Setting(brought, wishes);
    }

    private async Task<string> Setting(JsonNode brought, string wishes)
    {
        var answer = await page.PostJson(
            "/api/settings",
            $$"""{"tunes":"{{brought["id"]}}","number":1,"wishes":{{wishes}}}"""
        );
        return (string)(await Page.Json(answer))["id"]!;
    }

    private Task<string> MusicXml(string id) => page.Owner.GetStringAsync($"/api/settings/{id}/files/musicxml");
}
