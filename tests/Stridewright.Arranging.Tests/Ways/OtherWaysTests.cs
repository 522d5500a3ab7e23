using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Ways;

public sealed class OtherWaysTests
{
    private const int Each = 3;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static TheoryData<int, int> SamplesAndLevels
    {
        get
        {
            var data = new TheoryData<int, int>();
            for (var i = 0; i < Tunes.Samples.Count; i += 4)
            {
                data.Add(i, 2 + i / 4 % 2 * 3);
            }
            return data;
        }
    }

    // Each way is searched for again with nothing else allowed in its bar: its stage must then cost exactly what was said.
    [Theory]
    [MemberData(nameof(SamplesAndLevels))]
    public void A_way_costs_what_it_says_and_is_had_by_keeping_its_spot(int sample, int level)
    {
        var before = Arranged(sample, level);
        for (var bar = 2; bar < before.Score.Bars.Count; bar += before.Score.Bars.Count / 3)
        {
            var ways = OtherWays.Of(before, bar, Each, Cancel);
            foreach (var (way, last) in ways.Zip(ways.Prepend(null)))
            {
                Assert.True(way.Dearer >= (last?.Kind == way.Kind ? last.Dearer : 0));
                Assert.True(way.Result.Verdict.IsPlayable);
                Assert.Equal(Cost(before, way.Kind) + way.Dearer, Cost(way.Result, way.Kind));
                Assert.NotEqual(Reworking.Spot(before, bar, way.Spot.Hand), way.Spot);
                Assert.True(way.Changes.Count > 0, $"bar {bar}, {way.Kind}: {way.Spot}");

                var kept = Reworking.Rework(before, [way.Spot], Cancel).Arrangement;
                Assert.Equal(way.Result.Score, kept!.Score);
            }
        }
    }

    // What changes elsewhere has a better way now: held as it was, the whole costs more.
    [Theory]
    [MemberData(nameof(SamplesAndLevels))]
    public void No_bar_changes_whose_best_choice_did_not(int sample, int level)
    {
        var before = Arranged(sample, level);
        var changed = 0;
        for (var bar = 1; bar < before.Score.Bars.Count; bar += before.Score.Bars.Count / 4)
        {
            foreach (var way in OtherWays.Of(before, bar, Each, Cancel))
            {
                for (var other = 0; other < before.Score.Bars.Count; other++)
                {
                    foreach (var hand in new[] { Hand.Right, Hand.Left })
                    {
                        var old = Reworking.Spot(before, other, hand);
                        // How long a note sounds follows from what comes next.
                        if (other == bar || Struck(old).SequenceEqual(Struck(Reworking.Spot(way.Result, other, hand))))
                        {
                            continue;
                        }
                        changed++;
                        var asItWas = Reworking.Rework(before, [way.Spot, old], Cancel).Arrangement;
                        Assert.True(
                            asItWas is null || Costs(asItWas).CompareTo(Costs(way.Result)) > 0,
                            $"bar {bar} {way.Kind}: bar {other} {hand} changes for nothing"
                        );
                    }
                }
            }
        }
        TestContext.Current.TestOutputHelper?.WriteLine($"{changed} other bars changed");
    }

    private static IEnumerable<(ScoreTime, ValueList<Pitch>)> Struck(KeptBar bar) =>
        bar.Strokes.Select(s => (s.At, s.Pitches));

    private static Arrangement Arranged(int sample, int level) =>
        Arranger
            .Arrange(Tunes.Samples[sample], new Brief { LeftLevel = level, RightLevel = level }, Cancel)
            .Arrangement!;

    private static long Cost(Arrangement arrangement, WayKind kind)
    {
        var (rhythm, fills, texture, left) = Costs(arrangement);
        return kind switch
        {
            WayKind.Rhythm => rhythm,
            WayKind.Fills => fills,
            WayKind.Texture => texture,
            _ => left,
        };
    }

    private static (long Rhythm, long Fills, long Texture, long Left) Costs(Arrangement arrangement)
    {
        var solution = arrangement.Solution!;
        var fills = Filling.Solve(solution.Stage, solution.Ragged, solution.Homes, Cancel).Cost;
        return (solution.Ragged.Cost, fills, solution.Right.Cost, solution.Left.Cost);
    }
}
