using System.Text.RegularExpressions;
using System.Xml.Linq;
using Stridewright.Testing;
using Stridewright.Workbench;

namespace Stridewright.Cli.Tests;

/// <summary>Runs every line of the table of samples in docs/forms.md and looks for its part in the score that is
/// written, by the elements of MusicXML alone.</summary>
public sealed partial class FormSampleTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("stridewright-forms-");

    private static readonly Dictionary<string, Func<Bar[], bool>> Signs = new()
    {
        ["intro"] = bars => Starts(bars).SequenceEqual([("Intro", 0), ("A", 4)]),
        ["intro(run)"] = IsRun,
        ["vamp"] = bars =>
            bars[0].Has("repeat", "direction", "forward") && bars[1].Has("repeat", "direction", "backward"),
        ["strains"] = bars => Starts(bars).Select(s => s.Name).SequenceEqual(["A", "B", "A"]),
        ["varied choruses"] = bars =>
            Parts(bars).Where(p => p[0].Heading == "A").ToList() is { Count: > 2 } a
            && a.Zip(a.Skip(1)).All(p => Differing(p.First, p.Second) > 0.3),
        ["A*"] = bars =>
            bars.Any(b => b.Has("ending", "number", "1") && b.Has("repeat", "direction", "backward"))
            && bars.Any(b => b.Has("ending", "number", "2")),
        ["half"] = bars => Parts(bars) is [var whole, var half] && half.Length * 2 == whole.Length,
        // trade: one more flat.
        ["trio"] = bars =>
            Parts(bars) is [var a, var trio] && trio[0].Fifths == a[0].Fifths - 1 && trio[0].Heading == "Trio",
        // Its last two bars stay on the tonic: the tag has the cadence before them too.
        ["tag"] = bars => Starts(bars)[^1] == ("Tag", bars.Length - 4),
        ["end"] = bars => Starts(bars)[^1] == ("End", bars.Length - 1),
        ["stop-time"] = bars => bars.SkipLast(1).All(b => b.Strokes(Left) <= 1) && bars[0].Has("staccato"),
        ["breaks"] = bars => new[] { 6, 7, 14, 15 }.All(i => bars[i].Strokes(Left) <= 1) && bars[4].Strokes(Left) > 1,
        ["high"] = bars => Parts(bars) is [var a, var high] && Math.Abs(Height(high) - Height(a) - 12) < 1.5,
        ["thick"] = bars => Parts(bars) is [var thin, var thick] && Keys(thick) > Keys(thin) + 0.15,
        ["rag"] = bars => Parts(bars) is [var plain, var ragged] && OffBeats(ragged) > OffBeats(plain) + 10,
        ["turnaround"] = bars =>
            Parts(bars)[0]
                [^2..]
                .SelectMany(b => b.Chords)
                .SequenceEqual(["C major", "A dominant", "D dominant", "G dominant"]),
        ["segue"] = bars => Parts(bars)[0][^1] is var last && last.Words.Contains("segue") && !last.Has("bar-style"),
        // Each chorus has the tune's own 32 bars, the pick-up stands in the bar before; no bar is short.
        ["pick-up"] = bars =>
            bars.All(b => !b.Implicit) && Starts(bars).SequenceEqual([("Intro", 0), ("A", 4), ("A", 36)]),
        ["pedal"] = bars => bars[0].Has("pedal", "type", "start") && bars[0].Has("pedal", "type", "stop"),
        ["dynamics"] = bars => Parts(bars) is [var a, var b] && a[0].Has("mf") && b[0].Has("ff"),
        ["minutes"] = bars => Math.Abs(bars.Sum(b => b.Seconds(bars[0].Tempo)) - 120) <= 10,
    };

    private const string Right = "1",
        Left = "2";

    public static TheoryData<string, string> Lines =>
        new(
            Row()
                .Matches(File.ReadAllText(Path.Combine(Corpus.CheckoutRoot, "docs", "forms.md")))
                .Select(m => (m.Groups[1].Value, m.Groups[2].Value))
        );

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void Every_part_has_a_line() => Assert.Equal(Signs.Keys.Order(), Lines.Select(l => l.Data.Item1).Order());

    [Theory]
    [MemberData(nameof(Lines))]
    public void A_line_shows_its_part(string part, string line)
    {
        var words = Word().Matches(line).Select(m => m.Value.Trim('"')).ToArray();
        words[1] = Path.Combine(Corpus.CheckoutRoot, words[1]);
        using var output = new StringWriter();
        using var error = new StringWriter();
        string[] all = [.. words, "--format", "musicxml", "--out", _folder.FullName];
        var code = new CommandLineApp(UseCases.Open, output, error).Run(all, TestContext.Current.CancellationToken);
        Assert.True(code == 0, error.ToString());
        var score = XDocument.Load(_folder.EnumerateFiles("*.musicxml").Single().FullName);
        Assert.True(Signs[part](Bar.Of(score)), $"{part} is not in the score of: {line}");
    }

    // Levels nest: same key, form and bar numbers (design, section 4).
    [Fact]
    public void Levels_of_one_range_share_the_form_of_the_highest()
    {
        var tune = Path.Combine(Corpus.CheckoutRoot, "samples", "lanterns-on-the-landing.abc");
        string[] words = ["arrange", tune, "--levels", "3-5", "--form", "usual"];
        using var output = new StringWriter();
        using var error = new StringWriter();
        string[] all = [.. words, "--format", "musicxml", "--out", _folder.FullName];
        var code = new CommandLineApp(UseCases.Open, output, error).Run(all, TestContext.Current.CancellationToken);
        Assert.True(code == 0, error.ToString());
        var scores = _folder.EnumerateFiles().Select(f => Bar.Of(XDocument.Load(f.FullName))).ToList();
        Assert.Equal(3, scores.Count);
        Assert.All(scores, s => Assert.Equal(Starts(scores[2]), Starts(s)));
        Assert.All(scores, s => Assert.Equal(scores[2].Select(b => b.Fifths), s.Select(b => b.Fifths)));
        Assert.Contains(Parts(scores[0]), p => p.All(b => b.Strokes(Left) <= 1));
    }

    private static (string Name, int Bar)[] Starts(Bar[] bars) =>
        [.. bars.Select((b, i) => (b.Heading, i)).Where(s => s.Heading is not null).Select(s => (s.Heading!, s.i))];

    private static List<Bar[]> Parts(Bar[] bars)
    {
        var starts = Starts(bars).Select(s => s.Bar).Append(bars.Length).ToList();
        return [.. starts.Zip(starts.Skip(1)).Select(s => bars[s.First..s.Second])];
    }

    private static double Differing(Bar[] a, Bar[] b)
    {
        var (first, second) = (Onsets(a), Onsets(b));
        return 1 - (double)first.Intersect(second).Count() / Math.Max(first.Count, second.Count);
    }

    private static HashSet<string> Onsets(Bar[] bars) =>
        [.. bars.SelectMany((bar, i) => bar.Onsets(Right).Select(o => $"{i} {o.At} {string.Join(',', o.Keys)}"))];

    private static double Height(Bar[] bars) => bars.SelectMany(b => b.Onsets(Right)).Average(o => o.Keys.Max());

    private static double Keys(Bar[] bars) => bars.SelectMany(b => b.Onsets(Right)).Average(o => o.Keys.Count);

    private static int OffBeats(Bar[] bars) => bars.SelectMany(b => b.Onsets(Right)).Count(o => o.At % 0.5 != 0);

    private static bool IsRun(Bar[] bars)
    {
        var tops = bars[..4].SelectMany(b => b.Onsets(Right)).Select(o => o.Keys.Max()).ToList();
        return tops[..8].Zip(tops[1..8]).All(p => p.Second - p.First is 1 or 2 or 3)
            && tops[^1] % 12 == 9 // the dominant of D minor
            && bars[..3].All(b => b.Strokes(Left) == 1);
    }

    [GeneratedRegex(@"^\| ([^|]+) \| `(arrange [^`]+)` \|$", RegexOptions.Multiline)]
    private static partial Regex Row();

    [GeneratedRegex("\"[^\"]+\"|[^ ]+")]
    private static partial Regex Word();
}
