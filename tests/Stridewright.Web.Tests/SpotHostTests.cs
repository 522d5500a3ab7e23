using System.Net;
using System.Text.Json;
using System.Text.Json.Nodes;
using Stridewright.Testing;

namespace Stridewright.Web.Tests;

/// <summary>Work on single bars over the contract.</summary>
public sealed class SpotHostTests(Page page) : IClassFixture<Page>
{
    private static readonly string Ferry = File.ReadAllText(
        Path.Combine(Corpus.CheckoutRoot, "samples", "ferry-bell.abc")
    );

    [Fact]
    public async Task A_kept_bar_stays_when_the_brief_changes_around_it()
    {
        var made = await Made();
        var kept = await Work(made, new { action = "keep", bar = "b6" });
        Assert.Empty(kept["changed"]!.AsArray());
        var before = await Strokes(Id(kept), "b6");
        var ragged = await Setting(kept["tunes"]!.GetValue<string>(), 1.0);
        Assert.Equal(before, await Strokes(ragged, "b6"));
        Assert.NotEqual(await Strokes(made, "b2"), await Strokes(ragged, "b2"));
    }

    [Fact]
    public async Task Kept_bars_stay_when_the_tune_is_corrected_elsewhere()
    {
        var made = await Made();
        var right = await Work(made, KeepOf("b3", "right"));
        var kept = await Work(Id(right), KeepOf("b3", "left"));
        var both = await Work(Id(kept), KeepOf("b6", "left"));
        // The fourth bar's chord is another: the third is as it was. With the sixth bar's chord its left hand goes.
        var elsewhere = await Corrected((string)both["tunes"]!, 4, "Am7");
        var setting = await Setting(elsewhere, 0.5);
        Assert.Equal(["b3 left right", "b6 left"], await Kept(setting));
        Assert.Equal(await Strokes(Id(both), "b3"), await Strokes(setting, "b3"));
        var there = await Setting(await Corrected(elsewhere, 6, "Bbm6"), 0.5);
        Assert.Equal(["b3 left right"], await Kept(there));
        // In another metre no bar is what it was.
        var answer = await page.PostJson(
            $"/api/tunes/{elsewhere}/1/corrections",
            """{"action":"metre","bar":0,"value":"4/4"}"""
        );
        Assert.Empty(await Kept(await Setting((string)(await Page.Json(answer))["id"]!, 0.5)));
    }

    [Fact]
    public async Task Another_way_is_what_was_shown_of_it()
    {
        var made = await Made();
        var ways = (await Get($"/api/settings/{made}/bars/b6/ways"))!.AsArray();
        Assert.NotEmpty(ways);
        var name = ways[0]!["name"]!.GetValue<string>();
        var seen = await Get($"/api/settings/{made}/bars/b6/ways/{name}");
        Assert.Contains("<svg", seen!["picture"]!.GetValue<string>(), StringComparison.Ordinal);
        var taken = await Work(
            made,
            new
            {
                action = "choose",
                bar = "b6",
                way = name,
            }
        );
        Assert.Equal("6", taken["changed"]!.AsArray()[0]!.GetValue<string>());
        var bar = await Get($"/api/settings/{Id(taken)}/bars/b6");
        Assert.Equal(seen["effort"]!.GetValue<double>(), bar!["bar"]!["effort"]!.GetValue<double>(), 6);
        var heard = seen["heard"]!["notes"]!.AsArray().Select(n => n!["key"]!.GetValue<int>()).Order();
        var struck = (await Get($"/api/settings/{Id(taken)}/heard"))!["notes"]!
            .AsArray()
            .Where(n => n!["id"]!.GetValue<string>().StartsWith("b6-", StringComparison.Ordinal))
            .Select(n => n!["key"]!.GetValue<int>())
            .Distinct()
            .Order();
        Assert.Equal(heard.Distinct(), struck);
    }

    [Fact]
    public async Task What_cannot_be_played_is_refused_with_the_reason()
    {
        var made = await Made();
        var strokes = new[]
        {
            new
            {
                at = "0",
                length = "1/4",
                pitches = new[] { "C3", "F5" },
            },
        };
        var tried = await page.PostJson(
            $"/api/settings/{made}/bars/b6/try",
            JsonSerializer.Serialize(
                new
                {
                    action = "write",
                    hand = "right",
                    strokes,
                }
            )
        );
        var seen = await Page.Json(tried);
        Assert.Contains("mm for C3 and F5", seen["refusal"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.Null(seen["picture"]);
        var answer = await Answer(
            made,
            new
            {
                action = "write",
                bar = "b6",
                hand = "right",
                strokes,
            }
        );
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
    }

    [Theory]
    [InlineData("1/0", "C4")]
    [InlineData("-1/8", "C4")]
    [InlineData("99999999999/1", "C4")]
    [InlineData("9/1", "C4")]
    [InlineData("0", "H4")]
    [InlineData("0", "C99999999999999999")]
    [InlineData("0", "<script>")]
    public async Task Strokes_that_are_none_are_refused(string at, string pitch)
    {
        var made = await Made();
        var strokes = new[]
        {
            new
            {
                at,
                length = "1/8",
                pitches = new[] { pitch },
            },
        };
        var answer = await Answer(
            made,
            new
            {
                action = "write",
                bar = "b6",
                hand = "left",
                strokes,
            }
        );
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
    }

    [Fact]
    public async Task A_figure_of_the_left_hand_is_made_and_played_elsewhere()
    {
        var made = await Made();
        var named = await Work(
            made,
            new
            {
                action = "figure",
                bar = "b3",
                hand = "left",
                figure = "the landing",
            }
        );
        Assert.Equal(
            "the landing",
            (await Get($"/api/settings/{Id(named)}/bars"))!["figures"]![0]!["name"]!.GetValue<string>()
        );
        var answer = await Answer(
            Id(named),
            new
            {
                action = "use",
                bar = "b5",
                figure = "the landing",
            }
        );
        Assert.True(
            answer.StatusCode is HttpStatusCode.OK or HttpStatusCode.UnprocessableEntity,
            await answer.Content.ReadAsStringAsync()
        );
        var unknown = await Answer(
            Id(named),
            new
            {
                action = "use",
                bar = "b5",
                figure = "none such",
            }
        );
        Assert.Equal(HttpStatusCode.UnprocessableEntity, unknown.StatusCode);
    }

    [Fact]
    public async Task A_run_is_put_where_its_kind_belongs()
    {
        var made = await Made();
        var named = await Work(
            made,
            new
            {
                action = "figure",
                bar = "b4",
                hand = "left",
                figure = "the steps",
                kind = "run",
            }
        );
        var figure = (await Get($"/api/settings/{Id(named)}/bars"))!["figures"]![0]!;
        Assert.Equal(("the steps", "run"), ((string)figure["name"]!, (string)figure["kind"]!));
        var used = await Work(Id(named), new { action = "use", figure = "the steps" });
        var bars = (await Get($"/api/settings/{Id(used)}/bars"))!["bars"]!.AsArray();
        var kept = bars.Where(b => b!["kept"]!.AsArray().Any(h => (string)h! == "left")).ToList();
        Assert.Contains(kept, b => (string)b!["number"]! == "4");
        var odd = await Answer(
            made,
            new
            {
                action = "figure",
                bar = "b4",
                figure = "x",
                kind = "tail",
            }
        );
        Assert.Equal(HttpStatusCode.UnprocessableEntity, odd.StatusCode);
    }

    [Theory]
    [InlineData("/api/settings/none/bars")]
    [InlineData("/api/settings/none/bars/b1")]
    [InlineData("/api/settings/none/bars/b1/ways")]
    public async Task Settings_that_are_not_there_are_told(string path) =>
        Assert.Equal(HttpStatusCode.NotFound, (await page.Owner.GetAsync(path)).StatusCode);

    private async Task<string> Made()
    {
        var brought = await Page.Json(
            await page.PostJson("/api/tunes/text", JsonSerializer.Serialize(new { text = Ferry }))
        );
        return await Setting(brought["id"]!.GetValue<string>(), 0.5);
    }

    private async Task<string> Setting(string tunes, double raggedness)
    {
        var wishes = new { level = 4, raggedness };
        var answer = await page.PostJson(
            "/api/settings",
            JsonSerializer.Serialize(
                new
                {
                    tunes,
                    number = 1,
                    wishes,
                }
            )
        );
        return (await Page.Json(answer))["id"]!.GetValue<string>();
    }

    private static object KeepOf(string bar, string hand) =>
        new
        {
            action = "keep",
            bar,
            hand,
        };

    private async Task<string> Corrected(string tunes, int bar, string chords)
    {
        var change = JsonSerializer.Serialize(
            new
            {
                action = "chords",
                bar,
                value = chords,
            }
        );
        return (string)(await Page.Json(await page.PostJson($"/api/tunes/{tunes}/1/corrections", change)))["id"]!;
    }

    private async Task<IEnumerable<string>> Kept(string setting) =>
        (await Get($"/api/settings/{setting}/bars"))!["bars"]!
            .AsArray()
            .Where(b => b!["kept"]!.AsArray().Count > 0)
            .Select(b => $"{b!["id"]} {string.Join(' ', b["kept"]!.AsArray().Select(k => (string)k!).Order())}");

    private Task<HttpResponseMessage> Answer(string setting, object wish) =>
        page.PostJson($"/api/settings/{setting}/spots", JsonSerializer.Serialize(wish));

    private async Task<JsonNode> Work(string setting, object wish) => await Page.Json(await Answer(setting, wish));

    private async Task<JsonNode?> Get(string path) => await Page.Json(await page.Owner.GetAsync(path));

    private async Task<string> Strokes(string setting, string bar)
    {
        var notes = await Get($"/api/settings/{setting}/bars/{bar}");
        return notes!["right"]!.ToJsonString() + notes["left"]!.ToJsonString();
    }

    private static string Id(JsonNode done) => done["setting"]!["id"]!.GetValue<string>();
}
