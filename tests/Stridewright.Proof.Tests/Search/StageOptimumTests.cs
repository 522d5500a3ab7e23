using CsCheck;
using Stridewright.Arranging;
using Stridewright.Arranging.Tests;
using Stridewright.Formats.Abc;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Proof.Tests.Search;

/// <summary>
/// Every search of every stage, each time it is run, against the optimum that CP-SAT proves for the arcs it was offered:
/// as it is where it has at most so many arcs, and cut to 16 layers of 12 candidates. Whatever its size, also against a
/// plain reckoning from its end.
/// </summary>
public sealed class StageOptimumTests
{
    private const int MostArcs = 10_000;
    private static readonly int[] Spans = [185, 205, 230];
    private static readonly string[] Stages =
    [
        nameof(LocalKeys),
        nameof(Harmonising),
        nameof(Ragging),
        nameof(Filling),
        nameof(Obbligato),
        nameof(Texturing),
        nameof(HomePositions),
        nameof(Striding),
    ];

    // What runs beside a voice only.
    private static readonly string[] BesideVoice = [nameof(Comping), nameof(Accompanying)];

    [Fact]
    public void On_random_tunes_each_stage_costs_what_is_proven_least()
    {
        // The same tunes every time: of new ones too few would have an obbligato now and then.
        var proven = new Tally();
        var source = new PCG(1, 20_261_127);
        var drawn = Gen.Select(Tunes.Any, Gen.Bool, Gen.Int[1, 6], Gen.Int[0, 2], Gen.Int[0, 4]);
        for (var n = 0; n < 60; n++)
        {
            var (tune, chords, level, span, raggedness) = drawn.Generate(source, null, out var _);
            Prove(
                Part(chords ? tune : WithoutChords(tune), 0, 3),
                BriefFor(level, span) with
                {
                    Raggedness = raggedness / 4.0,
                },
                proven
            );
        }
        proven.AssertMany(15);
    }

    [Fact]
    public void On_tunes_of_the_corpus_each_stage_costs_what_is_proven_least()
    {
        var proven = new Tally();
        var number = 0;
        foreach (var path in Corpus.Files("corpus/abc", ".abc"))
        {
            var tune = AbcReader.Read(new StringReader(File.ReadAllText(path))).Value![0];
            var part = Part(tune, number % 5, 2);
            Prove(number % 3 == 0 ? WithoutChords(part) : part, BriefFor(number % 6 + 1, number % 3), proven);
            number++;
        }
        proven.AssertMany(25);
    }

    [Fact]
    public void Runs_again_under_raised_prices_cost_what_is_proven_least_too()
    {
        // Wide leaps for small hands at full level: strain and speed are refused, and the stages run again.
        var tune = Tunes.Abc(
            "M:2/4\nL:1/16\nK:F",
            "\"F\"F2A2f2c2|\"C7\"e2B2G2g2|\"F\"f2c2A2F2|\"D7\"d2A2F2d2|\"G7\"=B2d2f2g2|\"C7\"e2g2b2B2|"
        );
        var proven = new Tally();
        var searches = Prove(tune, BriefFor(6, 0) with { BeatsPerMinute = 96, Raggedness = 1 }, proven);
        Assert.InRange(searches.Count(s => s.Stage == nameof(Ragging)), 2, 100);
        Assert.InRange(searches.Count(s => s.Stage == nameof(Texturing)), 2, 100);
        Assert.InRange(searches.Count(s => s.Stage == nameof(Striding)), 2, 100);
    }

    [Fact]
    public void On_whole_tunes_each_stage_costs_what_is_reckoned_from_the_end()
    {
        foreach (var tune in Tunes.Samples)
        {
            var searches = WitnessedSearch.Watch(() => Arranger.Arrange(tune, BriefFor(5, 1)));
            Assert.All(searches, AssertReckoned);
        }
    }

    [Fact]
    public void Beside_a_voice_each_stage_costs_what_is_proven_least()
    {
        var proven = new Tally();
        for (var i = 0; i < Tunes.Samples.Count; i++)
        {
            var brief = BriefFor(i % 6 + 1, i % 3) with { Singer = new Singer() };
            Prove(Part(Tunes.Samples[i], 0, 4), brief, proven);
        }
        proven.AssertCut(BesideVoice, 8);
    }

    private static List<WitnessedSearch> Prove(Tune tune, Brief brief, Tally proven)
    {
        var searches = WitnessedSearch.Watch(() => Arranger.Arrange(tune, brief));
        foreach (var search in searches.Where(s => s.Layers.Count > 0))
        {
            AssertReckoned(search);
            if (search.ArcCount <= MostArcs)
            {
                Assert.Equal(ProvenOptimum.Of(search), search.Result!.Value.Cost);
                proven.Whole(search);
            }
            var cut = search.Cut(16, 12);
            Assert.Equal(ProvenOptimum.Of(cut), cut.Result!.Value.Cost);
            proven.Cut(search);
        }
        return searches;
    }

    private static void AssertReckoned(WitnessedSearch search)
    {
        Assert.Contains(search.Stage, Stages.Concat(BesideVoice));
        if (search.Layers.Count > 0)
        {
            Assert.Equal(search.CheapestFromTheEnd(), search.Result!.Value.Cost);
            Assert.Equal(search.CostOfSteps(), search.Result!.Value.Cost);
        }
    }

    private static Brief BriefFor(int level, int span) =>
        new()
        {
            LeftLevel = level,
            RightLevel = level,
            Hands = new PlayerHands { SpanMm = Spans[span] },
            RightManners = (level + span) % 3 == 1 ? [RightManner.Obbligato] : [],
        };

    // Some bars out of a tune, without ties out of them.
    private static Tune Part(Tune tune, int first, int bars)
    {
        var part = tune.Bars.Skip(Math.Min(first, tune.Bars.Count - 1)).Take(bars).ToList();
        var last = part[^1].Notes;
        if (last.Count > 0)
        {
            part[^1] = part[^1] with { Notes = [.. last.Take(last.Count - 1), last[^1] with { TiedToNext = false }] };
        }
        return tune with { Bars = part.Select(b => b with { Marks = BarMarks.None }).ToValueList(), SectionOrder = [] };
    }

    private static Tune WithoutChords(Tune tune) =>
        tune with
        {
            Bars = tune.Bars.Select(b => b with { Chords = [] }).ToValueList(),
        };

    private sealed class Tally
    {
        private readonly Dictionary<string, int> _whole = [];
        private readonly Dictionary<string, int> _cut = [];

        public void Whole(WitnessedSearch search) => Add(_whole, search);

        public void Cut(WitnessedSearch search) => Add(_cut, search);

        /// <summary>Each stage was proven so often, whole and cut.</summary>
        public void AssertMany(int least)
        {
            TestContext.Current.TestOutputHelper?.WriteLine(
                string.Join(
                    "; ",
                    Stages.Select(s => $"{s} {_whole.GetValueOrDefault(s)} whole, {_cut.GetValueOrDefault(s)} cut")
                )
            );
            Assert.All(Stages, stage => Assert.InRange(_whole.GetValueOrDefault(stage), least, int.MaxValue));
            Assert.All(Stages, stage => Assert.InRange(_cut.GetValueOrDefault(stage), least, int.MaxValue));
        }

        /// <summary>Each of these stages was proven so often where it was cut.</summary>
        public void AssertCut(string[] stages, int least) =>
            Assert.All(stages, stage => Assert.InRange(_cut.GetValueOrDefault(stage), least, int.MaxValue));

        private static void Add(Dictionary<string, int> times, WitnessedSearch search) =>
            times[search.Stage] = times.GetValueOrDefault(search.Stage) + 1;
    }
}
