using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;

namespace Stridewright.Web.Tests;

/// <summary>Takes over the contract: what a page says twice, too late, or wrongly.</summary>
public sealed class TakeHostTests(Page page) : IClassFixture<Page>
{
    private static readonly object Strike = new
    {
        at = 1.0,
        key = 60,
        velocity = 64,
    };
    private static readonly object Release = new
    {
        at = 1.5,
        key = 60,
        velocity = 0,
    };

    [Fact]
    public async Task What_is_told_twice_counts_once_and_a_gap_is_asked_for_again()
    {
        var take = await Begun(await Setting());
        Assert.Equal(0, await Told(take, 5, Strike));
        Assert.Equal(1, await Told(take, 0, Strike));
        Assert.Equal(1, await Told(take, 0, Strike));
        Assert.Equal(2, await Told(take, 0, Strike, Release));
        Assert.Equal(2, await Told(take, 2));
    }

    [Theory]
    [InlineData("""{"at":-1,"key":60,"velocity":64}""")]
    [InlineData("""{"at":1,"key":128,"velocity":64}""")]
    [InlineData("""{"at":1,"key":60,"velocity":200}""")]
    [InlineData("""{"at":1e9,"key":60,"velocity":64}""")]
    [InlineData("""{"at":1,"velocity":64}""")]
    [InlineData("""{"at":1,"key":60,"velocity":64,"pedal":true}""")]
    public async Task What_no_keyboard_tells_is_refused_with_a_sentence(string played)
    {
        var take = await Begun(await Setting());
        var answer = await page.PostJson($"/api/takes/{take}/events", $$"""{"from":0,"events":[{{played}}]}""");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(
            "seconds from the start",
            (string)(await Page.Json(answer))["detail"]!,
            StringComparison.Ordinal
        );
        Assert.Equal(1, await Told(take, 0, Strike));
    }

    [Fact]
    public async Task Takes_and_settings_that_are_not_there_are_said_to()
    {
        var told = await page.PostJson("/api/takes/nothing/events", """{"from":0,"events":[]}""");
        Assert.Equal(HttpStatusCode.NotFound, told.StatusCode);
        var begun = await page.PostJson("/api/settings/nothing/takes", """{"speed":1,"taps":false}""");
        Assert.Equal(HttpStatusCode.NotFound, begun.StatusCode);
        var setting = await Setting();
        var looked = await page.Owner.GetAsync($"/api/settings/{setting}/takes/nothing");
        Assert.Equal(HttpStatusCode.NotFound, looked.StatusCode);
        var empty = await page.PostJson($"/api/settings/{setting}/takes/{await Begun(setting)}/done", "");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, empty.StatusCode);
    }

    [Fact]
    public async Task A_file_that_no_shelf_takes_is_refused_before_it_is_read()
    {
        var content = new ByteArrayContent(new byte[701 * 1024]);
        content.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
        var answer = await page.Owner.PostAsync($"/api/settings/{await Setting()}/takes/file", content);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    private async Task<string> Setting()
    {
        var brought = await Page.Json(await page.PostJson("/api/tunes/text", """{"text":"F | D7 | G7 C7 | F"}"""));
        var wanted = JsonSerializer.Serialize(
            new
            {
                tunes = (string)brought["id"]!,
                number = 1,
                wishes = new { },
            }
        );
        return (string)(await Page.Json(await page.PostJson("/api/settings", wanted)))["id"]!;
    }

    private async Task<string> Begun(string setting) =>
        (string)
            (await Page.Json(await page.PostJson($"/api/settings/{setting}/takes", """{"speed":1,"taps":false}""")))[
                "take"
            ]!;

    private async Task<int> Told(string take, int from, params object[] events)
    {
        var answer = await page.PostJson($"/api/takes/{take}/events", JsonSerializer.Serialize(new { from, events }));
        return (int)(await Page.Json(answer))["count"]!;
    }
}
