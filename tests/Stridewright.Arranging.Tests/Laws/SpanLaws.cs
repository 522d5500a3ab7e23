using CsCheck;
using Stridewright.Hands;

namespace Stridewright.Arranging.Tests.Laws;

/// <summary>A wider hand can do all that a narrower one can: with the earlier stages held, no stage costs more.</summary>
public sealed class SpanLaws
{
    private static readonly double[] Spans = [175, 185, 205, 230, 245];

    [Fact]
    public void Raising_the_span_never_raises_the_cost_of_a_stage() =>
        Gen.Select(Tunes.Any, Gen.Int[4, 6])
            .Sample(
                (tune, level) =>
                {
                    if (tune.Bars.All(b => b.Notes.Count == 0))
                    {
                        return;
                    }
                    var feel = Feels.For(Feels.MainMetre(tune));
                    var brief = new Brief { LeftLevel = level, RightLevel = level };
                    var lattice = new Setting(tune, brief, feel, Feels.MainMetre(tune), Prices.Standard).Plan().Lattice;
                    var ragged = Ragging.Solve(lattice, brief, RagWeights.Standard, CancellationToken.None);
                    // The chords' places are the same for all, as for hands of one size.
                    var homes = HomePositions.Find(lattice, new Reach(brief.Hands), CancellationToken.None);
                    var line = Filling.Solve(StageOf(lattice, brief, 205), ragged, homes, CancellationToken.None);
                    var right = Texturing.Solve(
                        StageOf(lattice, brief, 205),
                        line,
                        homes,
                        1200,
                        new HashSet<int>(),
                        CancellationToken.None
                    );
                    long filling = long.MaxValue,
                        texturing = long.MaxValue,
                        striding = long.MaxValue;
                    foreach (var span in Spans)
                    {
                        var stage = StageOf(lattice, brief, span);
                        filling = Lower(filling, Filling.Solve(stage, ragged, homes, CancellationToken.None).Cost);
                        texturing = Lower(
                            texturing,
                            Texturing.Solve(stage, line, homes, 1200, new HashSet<int>(), CancellationToken.None).Cost
                        );
                        striding = Lower(
                            striding,
                            Striding.Solve(stage, right, homes, 1200, 0, CancellationToken.None).Cost
                        );
                    }
                },
                iter: 40
            );

    private static Stage StageOf(Lattice lattice, Brief brief, double span) =>
        new(lattice, brief with { Hands = new PlayerHands { SpanMm = span } }, Prices.Standard, 0.085);

    private static long Lower(long before, long now)
    {
        Assert.True(now <= before, $"{now} after {before}");
        return now;
    }
}
