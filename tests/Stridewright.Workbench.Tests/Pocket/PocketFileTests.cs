using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Stridewright.Sound;
using Stridewright.Testing;

namespace Stridewright.Workbench.Tests.Pocket;

public sealed partial class PocketFileTests : IDisposable
{
    private const long MostBytes = 8_000_000; // as was asked for, at ten pages

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void What_is_heard_is_what_the_midi_file_says()
    {
        var (html, midi) = Written("ferry-bell.abc");
        using var tools = new StandardTools();
        using var stream = new MemoryStream(midi);
        var sounds = Ringing.Of(tools.ReadTake(stream).Value!).ToList();
        var heard = Data(html)["parts"]![0]!["heard"]!;
        var notes = heard["notes"]!.AsArray();
        Assert.Equal(sounds.Count, notes.Count);
        // A tenth of a millisecond, to which times are rounded; the order of one moment's keys does not matter.
        var told = notes
            .Select(n => ((double)n!["at"]!, (int)n["key"]!, (int)n["velocity"]!, (double)n["length"]!))
            .OrderBy(n => Math.Round(n.Item1, 3))
            .ThenBy(n => n.Item2)
            .ToList();
        var played = sounds.OrderBy(s => Math.Round(s.Start, 3)).ThenBy(s => s.Stroke.Key).ToList();
        Assert.All(
            told.Zip(played),
            pair =>
            {
                Assert.Equal(
                    (pair.Second.Stroke.Key, pair.Second.Stroke.Velocity),
                    (pair.First.Item2, pair.First.Item3)
                );
                Assert.Equal(pair.Second.Start, pair.First.Item1, 0.0001);
                Assert.Equal(pair.Second.Lifted - pair.Second.Start, pair.First.Item4, 0.0001);
            }
        );
    }

    [Fact]
    public void It_is_the_same_bytes_each_time_and_holds_every_note_for_both_screens()
    {
        var (html, _) = Written("ferry-bell.abc");
        Assert.Equal(html, Written("ferry-bell.abc").Html);
        var ids = Data(html)["parts"]![0]!["heard"]!["notes"]!
            .AsArray()
            .Select(n => (string)n!["id"]!)
            .Distinct()
            .ToList();
        foreach (var screen in new[] { "narrow-0", "wide-0" })
        {
            var template = Regex.Match(html, $"<template id=\"{screen}\">(.*?)</template>", RegexOptions.Singleline);
            Assert.All(ids, id => Assert.Contains($"id=\"{id}\"", template.Value, StringComparison.Ordinal));
        }
        // Every sign that is drawn stands in the file.
        Assert.All(
            Link().Matches(html),
            link => Assert.Contains($"<g id=\"{link.Groups[1].Value}\">", html, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Its_policy_lets_nothing_run_but_what_stands_in_it_and_nothing_be_fetched()
    {
        var (html, _) = Written("ferry-bell.abc");
        var policy = Regex.Match(html, "Content-Security-Policy\" content=\"([^\"]*)\"").Groups[1].Value;
        Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.Contains("connect-src 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe-inline", policy, StringComparison.Ordinal);
        // W3C, Content Security Policy Level 3, 2.3.1: the digest of the element's text in UTF-8, in base64.
        Assert.Contains($"script-src 'sha256-{Hash(html, "script>")}' ", policy, StringComparison.Ordinal);
        Assert.Contains($"style-src 'sha256-{Hash(html, "style>")}';", policy, StringComparison.Ordinal);
        // Letters that a browser would read as others (WHATWG HTML, 13.2.3.5).
        Assert.DoesNotContain('\0', html);
        Assert.DoesNotContain('\r', html);
        Assert.DoesNotMatch("(?:src|href)=\"(?!#|data:)", html);
    }

    [Fact]
    public void Ten_pages_fit()
    {
        // Two hundred and forty bars with most of the keyboard, ten pages of A4 in the usual print.
        var bars = string.Concat(
            Enumerable.Repeat("\"F\"C2FA c2A2|\"Bb\"d2dB F2D2|\"C7\"E2GB c2e2|\"F\"f2c2 A2F2|\n", 80)
        );
        var abc = _folder.Put("long.abc", $"X:1\nT:Ten pages\nM:2/4\nL:1/16\nK:F\n{bars}");
        using var cases = UseCases.Open();
        var report = cases.Arrange(
            new ArrangeRequest
            {
                Tunes = [abc],
                OutputFolder = _folder["out"],
                Formats = [OutputFormat.Svg, OutputFormat.Phone],
            },
            cancellation: TestContext.Current.CancellationToken
        );
        Assert.Empty(report.Problems);
        var pages = _folder.Files("out").Count(f => f.EndsWith(".svg", StringComparison.Ordinal));
        var length = new FileInfo(_folder["out/long.html"]).Length;
        TestContext.Current.TestOutputHelper?.WriteLine($"{pages} pages, {length} bytes");
        Assert.InRange(pages, 10, 14);
        Assert.InRange(length, 1_000_000, MostBytes);
    }

    private static string Hash(string html, string element)
    {
        var start = html.LastIndexOf("<" + element, StringComparison.Ordinal) + element.Length + 1;
        var text = html[start..html.IndexOf("</" + element, start, StringComparison.Ordinal)];
        return Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
    }

    private static JsonNode Data(string html) =>
        JsonNode.Parse(Regex.Match(html, "id=\"data\">(.*?)</script>", RegexOptions.Singleline).Groups[1].Value)!;

    private (string Html, byte[] Midi) Written(string sample)
    {
        using var cases = UseCases.Open();
        var report = cases.Arrange(
            new ArrangeRequest
            {
                Tunes = [Path.Combine(Corpus.CheckoutRoot, "samples", sample)],
                OutputFolder = _folder["out"],
                Formats = [OutputFormat.Midi, OutputFormat.Phone],
            },
            cancellation: TestContext.Current.CancellationToken
        );
        Assert.Empty(report.Problems);
        var name = Path.GetFileNameWithoutExtension(sample);
        return (File.ReadAllText(_folder[$"out/{name}.html"]), File.ReadAllBytes(_folder[$"out/{name}.mid"]));
    }

    [GeneratedRegex("href=\"#([^\"]*)\"")]
    private static partial Regex Link();
}
