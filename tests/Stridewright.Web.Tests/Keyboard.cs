using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.Playwright;

namespace Stridewright.Web.Tests;

/// <summary>
/// A MIDI keyboard at the browser's edge, and somebody who plays on it what a setting's performance says, with faults that
/// are put in on purpose. Its messages bear the times at which they were played, so that nobody waits for them.
/// </summary>
internal sealed class Keyboard(IPage desk, JsonNode heard)
{
    /// <summary>To be run before the page: the keyboard, and what the report's first appearance is measured by.</summary>
    public const string Edge = """
        window.edge = { clicks: [] };
        const keys = {
          id: "k1", name: "Ferry Keys", manufacturer: "", version: "1", type: "input", state: "connected", connection: "open",
          onmidimessage: null, onstatechange: null, open: async () => keys, close: async () => keys,
          addEventListener() {}, removeEventListener() {},
        };
        navigator.requestMIDIAccess = async () => ({
          inputs: new Map(window.edge.hasNone ? [] : [["k1", keys]]), outputs: new Map(), sysexEnabled: false, onstatechange: null,
          addEventListener() {}, removeEventListener() {},
        });
        window.edge.play = (messages) => {
          window.edge.base ??= performance.now();
          for (const [at, ...data] of messages) {
            keys.onmidimessage({ data: new Uint8Array(data), timeStamp: window.edge.base + at * 1000 });
          }
          window.edge.last = performance.now();
          new MutationObserver((_, watch) => {
            if (document.getElementById("report-title")) {
              window.edge.shown ??= performance.now();
              watch.disconnect();
            }
          }).observe(document.body, { childList: true, subtree: true });
        };
        window.AudioContext = class extends window.AudioContext {
          constructor(options) { super(options); window.edge.context = this; }
          // A busy machine's audio stalls; here the ear's clock goes on evenly from where it was first asked.
          getOutputTimestamp() {
            const now = performance.now();
            this.zero ??= now - this.currentTime * 1000;
            return { performanceTime: now, contextTime: (now - this.zero) / 1000 };
          }
        };
        const start = AudioBufferSourceNode.prototype.start;
        AudioBufferSourceNode.prototype.start = function (when, ...rest) {
          if (this.buffer.duration < 0.1) {
            window.edge.clicks.push(when);
            // Whoever taps with every click does so without asking the test, which may be late itself.
            if (window.edge.late !== undefined) window.edge.tap("KeyF", window.edge.heardAt(when) + window.edge.late);
          }
          return start.call(this, when, ...rest);
        };
        window.edge.heardAt = (when) => {
          const { contextTime, performanceTime } = window.edge.context.getOutputTimestamp();
          return performanceTime + (when - contextTime) * 1000;
        };
        window.edge.tap = (code, moment) => {
          for (const [type, at] of [["keydown", moment], ["keyup", moment + 80]]) {
            const event = new KeyboardEvent(type, { code, key: code.at(-1).toLowerCase(), bubbles: true, cancelable: true });
            Object.defineProperty(event, "timeStamp", { value: at });
            document.body.dispatchEvent(event);
          }
        };
        """;

    /// <summary>As the performance has them, by time; a repeat's notes come again.</summary>
    public List<Note> Notes { get; } = heard["notes"].Deserialize<List<Note>>(JsonSerializerOptions.Web)!;

    public JsonArray Bars => (JsonArray)heard["bars"]!;

    public string IdOf(string number) => (string)Bars.First(b => (string)b!["number"]! == number)!["id"]!;

    /// <summary>The notes of bars by their printed numbers, the first time through.</summary>
    public List<Note> Of(int first, int last) =>
        Notes
            .Where(n =>
                Enumerable
                    .Range(first, last - first + 1)
                    .Any(bar =>
                        n.Id.StartsWith(IdOf(FormattableString.Invariant($"{bar}")) + "-", StringComparison.Ordinal)
                    )
            )
            .DistinctBy(n => n.Id)
            .ToList();

    /// <summary>Strikes these keys; each later call goes on by the same clock.</summary>
    public Task Play(IEnumerable<Note> notes)
    {
        var messages = notes
            .SelectMany(n =>
                new[]
                {
                    new[] { n.At, 0x90, n.Key, n.Velocity },
                    [n.At + Math.Max(0.03, 0.9 * n.Length), 0x80, n.Key, 64],
                }
            )
            .OrderBy(m => m[0])
            .ThenBy(m => m[1])
            .ToList();
        return desk.EvaluateAsync("messages => edge.play(messages)", messages);
    }

    internal sealed record Note(string Id, double At, double Length, int Key, int Velocity, string Hand, string Kind);
}
