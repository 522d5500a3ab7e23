using System.Text.Json;
using Microsoft.Playwright;
using Stridewright.Arranging;
using Stridewright.Music;
using Stridewright.Testing;
using Stridewright.Workbench;
using Stridewright.Workbench.Pocket;
using static Microsoft.Playwright.Assertions;

namespace Stridewright.Web.Tests;

/// <summary>A file for a phone, opened from the disk in a browser without a network.</summary>
public sealed class PocketPageTests(Chromium chromium) : IClassFixture<Chromium>, IDisposable
{
    private const string Hostile =
        "</title></script><script>window.hit = 1</script><img src=x onerror='window.hit = 2'>";

    // What the page starts, taken at the browser's edge: each recording with its loudness every twentieth of a second.
    private const string Edge = """
        window.edge = { starts: [], recordings: new Map() };
        const start = AudioBufferSourceNode.prototype.start;
        AudioBufferSourceNode.prototype.start = function (when, ...rest) {
          if (this.buffer.duration > 0.5) {
            edge.starts.push({ when, rate: this.playbackRate.value });
            if (!edge.recordings.has(this.buffer)) {
              const samples = this.buffer.getChannelData(1);
              const step = this.buffer.sampleRate / 20;
              edge.recordings.set(this.buffer, Array.from({ length: 40 }, (_, i) =>
                Math.sqrt(samples.slice(i * step, (i + 1) * step).reduce((sum, s) => sum + s * s, 0) / step)));
            }
          }
          return start.call(this, when, ...rest);
        };
        """;

    private const string CannotDecode = """
        AudioContext.prototype.decodeAudioData = () => Promise.reject(new DOMException("no", "EncodingError"));
        """;

    private readonly string _folder = Directory.CreateTempSubdirectory("pocket-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData(ColorScheme.Light, 390, 844)]
    [InlineData(ColorScheme.Dark, 390, 844)]
    [InlineData(ColorScheme.Light, 820, 1180)]
    [InlineData(ColorScheme.Dark, 820, 1180)]
    public async Task It_opens_from_the_disk_and_plays_with_no_network(ColorScheme scheme, int width, int height)
    {
        var (page, faults, asked) = await Open(Written(), scheme, width, height);
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("The Ferry Bell");
        await Expect(page.GetByText("For Ada")).ToBeVisibleAsync();
        await Expect(page.GetByText("Today, 15 minutes in all")).ToBeVisibleAsync();
        await Desks.Clean(page);
        await NothingCut(page);
        await Desks.Shot(page, $"pocket-{width}-{scheme}");

        await page.GetByRole(AriaRole.Button, new() { Name = "Play it" }).ClickAsync();
        await page.WaitForFunctionAsync("() => edge.starts.length > 12", null, new() { Timeout = 60_000 });
        await page.WaitForFunctionAsync(
            "() => document.querySelector('.cursor').dataset.notes",
            null,
            new() { Timeout = 60_000 }
        );
        // A ring lies round a head of the very note that is struck.
        Assert.True(
            await page.EvaluateAsync<bool>(
                """
                () => {
                  const layer = document.querySelector(".cursor");
                  const heads = [...document.querySelectorAll(".notehead")].map(h => h.getBoundingClientRect());
                  const rings = [...layer.querySelectorAll(".cursor-ring:not([hidden])")].map(r => r.getBoundingClientRect());
                  return rings.length > 0 && rings.every(r =>
                    heads.some(h => Math.abs(h.left + h.width / 2 - r.left - r.width / 2) < 1.5 && Math.abs(h.top + h.height / 2 - r.top - r.height / 2) < 1.5));
                }
                """
            )
        );
        await Desks.Shot(page, $"pocket-playing-{width}-{scheme}");
        await Desks.Clean(page);
        await page.Keyboard.PressAsync("Escape");
        await Expect(page.GetByText("Stopped.")).ToBeVisibleAsync();
        Assert.Empty(asked);
        Assert.Empty(faults);
    }

    [Fact]
    public async Task Where_the_browser_cannot_decode_the_file_does_and_it_sounds_alike()
    {
        var file = Written();
        var own = await Loudness(file, Edge);
        var forced = await Loudness(file, Edge + CannotDecode);
        Assert.Equal(own.Length, forced.Length);
        Assert.NotEmpty(own);
        foreach (var (a, b) in own.Zip(forced))
        {
            Assert.True(a.Max() > 0.001, "a recording is silent");
            // The browser resamples to the rate of its output; loudness stays.
            Assert.All(a.Zip(b), pair => Assert.Equal(pair.First, pair.Second, 0.02 * a.Max()));
        }
    }

    [Fact]
    public async Task A_line_of_today_lays_out_its_bars_hand_and_tempo_and_ticks_stay_for_the_day()
    {
        var file = Written();
        var (page, faults, _) = await Open(file, ColorScheme.Light, 390, 844);
        await page.GetByRole(AriaRole.Button, new() { Name = "lay it out: The leaps of the left hand" }).ClickAsync();
        Assert.Equal("5", await Chosen(page, "First bar"));
        Assert.Equal("6", await Chosen(page, "Last bar"));
        Assert.Equal("the left hand alone", await Chosen(page, "What is played"));
        Assert.StartsWith("at 60 % of it", await Chosen(page, "The speed"), StringComparison.Ordinal);
        Assert.Equal("over and over", await Chosen(page, "How often"));

        // Played so: nothing but keys of the left hand in bars 5 and 6, at six tenths of the pace.
        await page.Keyboard.PressAsync("Enter"); // the focus is on the word that plays
        await page.WaitForFunctionAsync("() => edge.starts.length > 7", null, new() { Timeout = 60_000 });
        await page.Keyboard.PressAsync("Escape");
        var first = await page.EvaluateAsync<double[]>("() => edge.starts.slice(0, 8).map(s => s.when)");
        var steps = await page.EvaluateAsync<double[]>(
            """
            () => {
              const { bars, notes } = JSON.parse(document.getElementById("data").textContent).parts[0].heard;
              const [from, to] = [bars.find(b => b.number === "5"), bars.find(b => b.number === "6")];
              return notes.filter(n => n.hand === "left" && n.at > from.at - 1e-4 && n.at < to.at + to.length - 1e-4).map(n => n.at / 0.6);
            }
            """
        );
        Assert.All(first.Zip(steps), pair => Assert.Equal(pair.Second - steps[0], pair.First - first[0], 0.001));

        await page.GetByRole(AriaRole.Checkbox).Nth(1).CheckAsync();
        await Expect(page.GetByText("1 of 2 done.")).ToBeVisibleAsync();
        await page.ReloadAsync();
        await Expect(page.GetByRole(AriaRole.Checkbox).Nth(1)).ToBeCheckedAsync();
        await Expect(page.GetByRole(AriaRole.Checkbox).Nth(0)).Not.ToBeCheckedAsync();
        Assert.Empty(faults);
    }

    [Fact]
    public async Task It_is_played_by_keys_alone_and_by_touch()
    {
        var (page, faults, _) = await Open(Written(), ColorScheme.Light, 390, 844);
        var place = page.GetByRole(AriaRole.Slider);
        await place.FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await page.Keyboard.PressAsync("ArrowRight");
        await Expect(place).ToHaveTextAsync("bar 2");
        await page.GetByRole(AriaRole.Button, new() { Name = "begin here" }).FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        Assert.Equal("2", await Chosen(page, "First bar"));
        await place.FocusAsync();
        await page.Keyboard.PressAsync("Space");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Stop", Exact = true })).ToBeVisibleAsync();
        await page.Keyboard.PressAsync("Space");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Play it" })).ToBeVisibleAsync();

        var bar = page.Locator("#b4");
        await bar.ScrollIntoViewIfNeededAsync();
        var box = (await bar.BoundingBoxAsync())!;
        await page.Touchscreen.TapAsync(box.X + box.Width / 2, box.Y + box.Height / 2);
        await Expect(place).ToHaveTextAsync("bar 4");
        Assert.Empty(faults);
    }

    [Fact]
    public async Task Names_titles_words_and_tasks_are_text_whatever_they_hold()
    {
        var score = Score() with { Title = Hostile, Composer = Hostile, Subtitle = Hostile };
        var wish = new PocketWish
        {
            Title = Hostile,
            Player = Hostile,
            Parts = [new(Hostile, score), new("<b>step</b>", score)],
            Today = [new(Hostile + "<!-- <script>")],
        };
        var (page, faults, asked) = await Open(Write(wish), ColorScheme.Light, 390, 844);
        await Expect(page).ToHaveTitleAsync(Hostile);
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync(Hostile);
        Assert.Equal(4, await page.GetByText(Hostile, new() { Exact = true }).CountAsync()); // title, credits, a choice
        Assert.Null(await page.EvaluateAsync<int?>("() => window.hit ?? null"));
        Assert.Equal(0, await page.Locator("main img, main script, main b").CountAsync());
        await NothingCut(page);
        await Desks.Clean(page);
        await Desks.Shot(page, "pocket-hostile");
        Assert.Empty(asked);
        Assert.Empty(faults);

        // And the policy would not have let it run.
        await page.EvaluateAsync(
            "() => { const s = document.createElement('script'); s.textContent = 'window.hit = 3'; document.body.append(s); }"
        );
        Assert.Null(await page.EvaluateAsync<int?>("() => window.hit ?? null"));
        await Assert.ThrowsAsync<PlaywrightException>(() => page.EvaluateAsync("() => fetch('https://example.org')"));
    }

    private static ILocator Pick(IPage page, string label) => page.GetByLabel(label, new() { Exact = true });

    private static Task<string> Chosen(IPage page, string label) =>
        Pick(page, label).EvaluateAsync<string>("s => s.selectedOptions[0].textContent");

    private static async Task NothingCut(IPage page) =>
        Assert.True(
            await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth")
                <= await page.EvaluateAsync<int>("() => innerWidth"),
            "it is wider than the screen"
        );

    private async Task<double[][]> Loudness(string file, string edge)
    {
        var (page, faults, _) = await Open(file, ColorScheme.Light, 390, 844, edge);
        await page.GetByRole(AriaRole.Button, new() { Name = "Play it" }).ClickAsync();
        await page.WaitForFunctionAsync("() => edge.starts.length > 12", null, new() { Timeout = 60_000 });
        await page.Keyboard.PressAsync("Escape");
        Assert.Empty(faults);
        var told = await page.EvaluateAsync<JsonElement>("() => [...edge.recordings.values()].slice(0, 5)");
        return told.Deserialize<double[][]>()!;
    }

    private async Task<(IPage Page, List<string> Faults, List<string> Asked)> Open(
        string file,
        ColorScheme scheme,
        int width,
        int height,
        string edge = Edge
    )
    {
        var context = await chromium.Browser.NewContextAsync(
            new()
            {
                ColorScheme = scheme,
                ViewportSize = new() { Width = width, Height = height },
                HasTouch = true,
                Offline = true,
            }
        );
        await context.AddInitScriptAsync(edge);
        var page = await context.NewPageAsync();
        var (faults, asked) = (new List<string>(), new List<string>());
        page.Console += (_, said) =>
        {
            if (said.Type is "error" or "warning")
            {
                faults.Add(said.Text);
            }
        };
        page.PageError += (_, fault) => faults.Add(fault);
        var address = new Uri(file).AbsoluteUri;
        page.Request += (_, request) =>
        {
            if (request.Url != address && !request.Url.StartsWith("data:", StringComparison.Ordinal))
            {
                asked.Add(request.Url);
            }
        };
        await page.GotoAsync(address);
        await Expect(page.Locator(".page > svg").First).ToBeVisibleAsync();
        return (page, faults, asked);
    }

    private string Written() =>
        Write(
            new PocketWish
            {
                Title = "The Ferry Bell",
                Player = "Ada",
                Parts = [new("The Ferry Bell", Score())],
                Today =
                [
                    new("The leaps of the left hand")
                    {
                        FirstBar = "5",
                        LastBar = "6",
                        Hand = "left",
                        QuartersPerMinute = 48,
                        Minutes = 5,
                    },
                    new("The whole of it, without stopping") { Minutes = 10 },
                ],
            }
        );

    private string Write(PocketWish wish)
    {
        using var tools = new StandardTools();
        var bytes = new PocketFile(tools).Write(wish, CancellationToken.None, out var problem);
        Assert.Equal("", problem);
        var path = Path.Combine(_folder, "pocket.html");
        File.WriteAllBytes(path, bytes!);
        return path;
    }

    private static Score Score()
    {
        using var tools = new StandardTools();
        var abc = File.ReadAllBytes(Path.Combine(Corpus.CheckoutRoot, "samples", "ferry-bell.abc"));
        using var stream = new MemoryStream(abc);
        var tune = tools.ReadAbc(stream, null).Value![0];
        return tools.Arrange(tune, new Brief { BeatsPerMinute = 80 }, CancellationToken.None).Arrangement!.Score;
    }
}
