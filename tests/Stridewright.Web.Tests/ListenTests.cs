using System.Text.Json;
using System.Text.Json.Nodes;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Stridewright.Testing;
using static Microsoft.Playwright.Assertions;

namespace Stridewright.Web.Tests;

/// <summary>
/// What the page plays is heard at the browser's edge: every buffer that is started, every MIDI message that is sent, and
/// the audio clock, all taken there and held against the performance that the host tells.
/// </summary>
public sealed class ListenTests(Page page, Chromium chromium) : IClassFixture<Page>, IClassFixture<Chromium>
{
    private const string Edge = """
        window.edge = { starts: [], sent: [], drawn: [] };
        window.AudioContext = class extends window.AudioContext {
          constructor(options) { super(options); window.edge.context = this; }
        };
        const start = AudioBufferSourceNode.prototype.start;
        AudioBufferSourceNode.prototype.start = function (when, ...rest) {
          if (this.buffer.duration > 0.5) {
            window.edge.starts.push({ when, rate: this.playbackRate.value });
          }
          return start.call(this, when, ...rest);
        };
        window.edge.heard = () => {
          const { contextTime, performanceTime } = window.edge.context.getOutputTimestamp();
          return contextTime + (performance.now() - performanceTime) / 1000;
        };
        window.edge.watch = () => {
          const layer = document.querySelector(".cursor");
          new MutationObserver(() => {
            window.edge.drawn.push({ at: window.edge.heard(), notes: layer.dataset.notes ?? "" });
          }).observe(layer, { attributes: true, attributeFilter: ["data-notes"] });
        };
        """;

    [Fact]
    public async Task The_cursor_is_on_the_notes_that_the_performance_names_for_the_audio_clock()
    {
        var (desk, heard, faults) = await Open(ColorScheme.Light, 1280, 800);
        await desk.EvaluateAsync("edge.watch()");
        await desk.GetByRole(AriaRole.Button, new() { Name = "Play it" }).ClickAsync();
        await desk.WaitForFunctionAsync("edge.drawn.length > 24", null, new() { Timeout = 30_000 });
        await desk.Keyboard.PressAsync("Escape");
        await Expect(desk.GetByText("Stopped.")).ToBeVisibleAsync();
        var notes = Notes(heard);
        var starts = await Starts(desk);
        Assert.Equal(
            notes.Take(starts.Count).Select(n => Math.Round(n.At - notes[0].At, 3)),
            starts.Select(s => Math.Round(s.When - starts[0].When, 3))
        );
        var begin = starts[0].When - notes[0].At;
        var drawn = JsonSerializer.Deserialize<List<Drawn>>(
            await desk.EvaluateAsync<string>("JSON.stringify(edge.drawn)"),
            Web
        )!;
        var lags = new List<double>();
        foreach (var (at, ids) in drawn.Where(d => d.Notes.Length > 0))
        {
            var shown = notes.First(n => n.Id == ids.Split(' ')[0]).At;
            Assert.Equal(notes.Where(n => Math.Abs(n.At - shown) < 0.001).Select(n => n.Id), ids.Split(' '));
            // Never before it is heard, and nothing else was struck meanwhile by more than a few frames.
            lags.Add(at - begin - shown);
        }
        TestContext.Current.TestOutputHelper?.WriteLine(
            $"lag ms: median {1000 * Median(lags):F1}, most {1000 * lags.Max():F1}, least {1000 * lags.Min():F1}"
        );
        Assert.InRange(lags.Min(), -0.005, 0.030);
        Assert.InRange(Median(lags), 0, 0.030);
        Assert.Empty(faults);
    }

    private static readonly JsonSerializerOptions Web = new(JsonSerializerDefaults.Web);

    private static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);

    private static async Task<List<Start>> Starts(IPage desk) =>
        JsonSerializer.Deserialize<List<Start>>(await desk.EvaluateAsync<string>("JSON.stringify(edge.starts)"), Web)!;

    private static List<Note> Notes(JsonNode heard) => heard["notes"].Deserialize<List<Note>>(Web)!;

    private async Task<(IPage Desk, JsonNode Heard, List<string> Faults)> Open(
        ColorScheme scheme,
        int width,
        int height,
        string more = ""
    )
    {
        var context = await chromium.Browser.NewContextAsync(
            new()
            {
                ColorScheme = scheme,
                ViewportSize = new() { Width = width, Height = height },
            }
        );
        await context.AddInitScriptAsync(Edge + more);
        var desk = await context.NewPageAsync();
        var faults = new List<string>();
        desk.Console += (_, said) =>
        {
            if (said.Type is "error" or "warning")
            {
                faults.Add(said.Text);
            }
        };
        desk.PageError += (_, fault) => faults.Add(fault);
        await desk.GotoAsync(page.Host.Address.ToString());
        var told = desk.WaitForResponseAsync(
            r => r.Url.EndsWith("/heard", StringComparison.Ordinal),
            new() { Timeout = 60_000 }
        );
        await desk.GetByRole(AriaRole.Button, new() { Name = "The Ferry Bell" }).ClickAsync();
        var heard = JsonNode.Parse(await (await told).TextAsync())!;
        await Expect(desk.Locator(".page svg").First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        return (desk, heard, faults);
    }

    private sealed record Note(
        string Id,
        double At,
        double Length,
        double Rings,
        int Key,
        int Velocity,
        string Hand,
        string Kind
    );

    private sealed record Start(double When, double Rate);

    private sealed record Drawn(double At, string Notes);
}
