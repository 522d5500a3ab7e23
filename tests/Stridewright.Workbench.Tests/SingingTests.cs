using Stridewright.Arranging;
using Stridewright.Formats.MusicXml;
using Stridewright.Music;
using Stridewright.Testing;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Tests;

/// <summary>Accompaniments and sketches as files: what they hold, and how many pages they take.</summary>
public sealed class SingingTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public static TheoryData<string> Samples =>
        new(Directory.EnumerateFiles(Root, "*.abc").Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal));

    private static string Root => Path.Combine(Corpus.CheckoutRoot, "samples");

    public void Dispose() => _folder.Dispose();

    [Theory]
    [MemberData(nameof(Samples))]
    public void An_accompaniment_is_valid_and_judge_and_midi_know_nothing_of_its_small_staff(string sample)
    {
        using var tools = new StandardTools();
        var brief = new Brief
        {
            Singer = new Singer(),
            RightLevel = 6,
            LeftLevel = 5,
        };
        var arrangement = tools.Arrange(ReadTune(tools, sample), brief, Cancel).Arrangement!;
        var score = arrangement.Score;
        Assert.Contains(score.Bars, b => b.Above.Any(e => e.Notes.Count > 0));
        var without = score with { Bars = score.Bars.Select(b => b with { Above = [] }).ToValueList() };
        Assert.Equal(tools.ToMidi(without), tools.ToMidi(score));
        Assert.Equal(tools.Judge(without, brief.Hands, null), tools.Judge(score, brief.Hands, null));
        var xml = tools.ToMusicXml(score);
        Assert.Empty(MusicXmlSchema.Faults(new MemoryStream(xml)));
        Assert.Equal(
            MusicXmlReader.ReadScore(new MemoryStream(tools.ToMusicXml(without))).Value,
            MusicXmlReader.ReadScore(new MemoryStream(xml)).Value
        );
    }

    [Fact]
    public void An_accompaniment_passes_the_independent_audit_for_small_usual_and_wide_hands()
    {
        foreach (var span in (int[])[185, 205, 230])
        {
            var report = Run(
                [.. Samples.Select(s => Path.Combine(Root, s.Data))],
                new ArrangeRequest
                {
                    Tunes = [],
                    OutputFolder = _folder[$"{span}"],
                    Formats = [OutputFormat.MusicXml],
                    Wishes = new Wishes
                    {
                        Accompany = true,
                        Range = "F3-E5",
                        Level = 5,
                        Span = $"{span}",
                        Form = "intro A end",
                    },
                }
            );
            Assert.Empty(report.Problems);
            Assert.All(report.Written, w => Assert.NotNull(w.Setting.Voice));
            Assert.Empty(Audit.Failures(span, [.. report.Written.Select(w => (w.Outputs[0].Path, (string?)null))]));
        }
    }

    [Fact]
    public void A_sketch_of_32_bars_fits_one_page_and_a_longer_one_says_how_many_it_takes()
    {
        var report = Run(
            [Path.Combine(Root, "rain-on-the-awning.abc"), Path.Combine(Root, "paper-boats-by-the-steps.abc")],
            new ArrangeRequest
            {
                Tunes = [],
                OutputFolder = _folder["out"],
                Formats = [OutputFormat.MusicXml, OutputFormat.Svg],
                Sketch = true,
            }
        );
        Assert.Empty(report.Problems);
        var (rain, boats) = (report.Written[0], report.Written[1]);
        Assert.Equal(32, rain.Setting.Bars);
        Assert.Equal(["rain-on-the-awning.sketch.svg"], Sketches(rain));
        Assert.Empty(rain.Reading);
        Assert.True(Sketches(boats).Count > 1);
        Assert.Contains(
            boats.Reading,
            r => r.Message.Contains($"takes {Sketches(boats).Count} pages", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Every_sample_of_up_to_32_bars_fits_one_page_with_its_words()
    {
        var report = Run(
            [.. Samples.Select(s => Path.Combine(Root, s.Data))],
            new ArrangeRequest
            {
                Tunes = [],
                OutputFolder = _folder["out"],
                Formats = [OutputFormat.Svg],
                Sketch = true,
                Wishes = new Wishes { Lyrics = true },
            }
        );
        var short32 = report.Written.Where(w => w.Setting.Bars <= 32).ToList();
        Assert.InRange(short32.Count, 6, 99);
        Assert.All(short32, w => Assert.True(Sketches(w).Count == 1, $"{w.Title}: {Sketches(w).Count} pages"));
    }

    // Source: the schema of MusicXML 4.0; the tune as its own lead sheet has it, the basses as the setting has them.
    [Theory]
    [MemberData(nameof(Samples))]
    public void A_sketch_holds_the_plain_tune_the_chords_and_the_settings_basses(string sample)
    {
        using var tools = new StandardTools();
        var tune = ReadTune(tools, sample);
        var arrangement = tools.Arrange(tune, new Brief { Sketch = true, LeftLevel = 3 }, Cancel).Arrangement!;
        var sketch = arrangement.Sketch!;
        Assert.Empty(MusicXmlSchema.Faults(new MemoryStream(tools.ToMusicXml(sketch))));
        Assert.Equal(arrangement.Score.Bars.Select(b => b.Chords), sketch.Bars.Select(b => b.Chords));
        var plain = Strokes(LeadSheet.Of(tools.Plain(tune)), Hand.Right);
        var shown = Strokes(sketch, Hand.Right);
        Assert.Equal(plain.Count, shown.Count);
        Assert.Single(plain.Zip(shown, (p, s) => s.Key - p.Key).Distinct());
        Assert.Single(
            plain.Zip(shown).Where(p => !p.First.Start.IsZero).Select(p => p.Second.Start.Per(p.First.Start)).Distinct()
        );
        var lowest = Strokes(arrangement.Score, Hand.Left)
            .GroupBy(s => s.Start)
            .ToDictionary(g => g.Key, g => g.Min(s => s.Key));
        var basses = Strokes(sketch, Hand.Left);
        Assert.All(basses, b => Assert.Equal(lowest[b.Start], b.Key));
        Assert.Equal(basses.Count, basses.DistinctBy(b => b.Start).Count());
        // Every full bar's first bass is among them.
        var start = ScoreTime.Zero;
        foreach (var bar in sketch.Bars)
        {
            Assert.True(!lowest.ContainsKey(start) || basses.Any(b => b.Start == start));
            start += bar.Length;
        }
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static List<string> Sketches(WrittenTune tune) =>
        [
            .. tune
                .Outputs.Select(o => Path.GetFileName(o.Path))
                .Where(n =>
                    n.Contains(".sketch", StringComparison.Ordinal) && n.EndsWith(".svg", StringComparison.Ordinal)
                ),
        ];

    private static List<Sounding> Strokes(Score score, Hand hand) => [.. Timeline.Of(score).Where(s => s.Hand == hand)];

    private static Tune ReadTune(StandardTools tools, string sample)
    {
        using var file = File.OpenRead(Path.Combine(Root, sample));
        return tools.ReadAbc(file, null).Value![0];
    }

    private static ArrangeReport Run(string[] tunes, ArrangeRequest request)
    {
        using var useCases = UseCases.Open();
        return useCases.Arrange(request with { Tunes = tunes.ToValueList() }, null, Cancel);
    }
}
