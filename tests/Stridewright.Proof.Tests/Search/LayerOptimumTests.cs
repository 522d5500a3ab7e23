using CsCheck;
using Stridewright.Arranging;

namespace Stridewright.Proof.Tests.Search;

/// <summary>The searching itself on random prices, 16 layers of 12 candidates, against the optimum that CP-SAT proves.</summary>
public sealed class LayerOptimumTests
{
    private const int Layers = 16;
    private const int Candidates = 12;

    [Fact]
    public void A_path_through_random_layers_costs_what_is_proven_least() =>
        Gen.Long[-5000, 40_000]
            .Array[Layers * Candidates * Candidates]
            .Sample(
                prices =>
                {
                    var search = WitnessedSearch.Watch(() => Walk(prices))[0];
                    Assert.Equal(ProvenOptimum.Of(search), search.Result!.Value.Cost);
                    Assert.Equal(search.CostOfSteps(), search.Result!.Value.Cost);
                },
                iter: 25,
                threads: 1
            );

    [Fact]
    public void Left_hand_layers_reckoned_a_row_at_a_time_cost_what_is_proven_least() =>
        LeftHand(3, 4)
            .Sample(
                layers =>
                {
                    var search = WitnessedSearch.Watch(() => Stride(layers, 3, 4))[0];
                    Assert.Equal(Layers, search.Layers.Count);
                    Assert.Equal(ProvenOptimum.Of(search), search.Result!.Value.Cost);
                    Assert.Equal(search.CostOfSteps(), search.Result!.Value.Cost);
                },
                iter: 25,
                threads: 1
            );

    /// <summary>Numbers of shapes around those that are reckoned at once.</summary>
    [Theory]
    [InlineData(1, 1)]
    [InlineData(1, 9)]
    [InlineData(7, 1)]
    [InlineData(4, 8)]
    [InlineData(5, 3)]
    [InlineData(9, 17)]
    public void Rows_of_any_length_cost_what_is_reckoned_from_the_end(int basses, int chords) =>
        LeftHand(basses, chords)
            .Sample(
                layers =>
                {
                    var search = WitnessedSearch.Watch(() => Stride(layers, basses, chords))[0];
                    Assert.Equal(search.CheapestFromTheEnd(), search.Result!.Value.Cost);
                    Assert.Equal(search.CostOfSteps(), search.Result!.Value.Cost);
                },
                iter: 50,
                threads: 1
            );

    private static void Walk(long[] prices)
    {
        var path = new LayeredPath();
        for (var (layer, next) = (0, 0); layer < Layers; layer++)
        {
            path.OpenLayer(Candidates);
            for (var to = 0; to < Candidates; to++)
            {
                for (var from = layer == 0 ? Candidates - 1 : 0; from < Candidates; from++, next++)
                {
                    path.Offer(
                        layer == 0 ? -1 : from,
                        to,
                        prices[next] + (layer == 0 ? 0 : path.EarlierCosts[from]),
                        to
                    );
                }
            }
        }
        path.Best();
    }

    // Alternately or not, a bass or a chord is replaced; some layers price the hand's move from the kept shape.
    private static Gen<(bool IsBass, bool Moves, long[] Prices)[]> LeftHand(int basses, int chords) =>
        Gen.Select(
            Gen.Bool,
            Gen.Bool,
            Gen.Long[-5000, 40_000].Array[2 * Math.Max(basses, chords) * Math.Max(basses, chords) + basses + chords]
        ).Array[Layers];

    private static void Stride((bool IsBass, bool Moves, long[] Prices)[] layers, int basses, int chords)
    {
        var (path, arcs) = (new LayeredPath(), new StrideLayer());
        foreach (var (isBass, hasMoves, prices) in layers)
        {
            var (replaced, kept) = isBass ? (basses, chords) : (chords, basses);
            var own = prices.Take(replaced).ToArray();
            var lines = prices.Skip(replaced).Take(replaced * replaced).Select(p => (int)p).ToArray();
            var moves = prices
                .Skip(replaced + lines.Length)
                .Take(hasMoves ? kept * replaced : 0)
                .Select(p => (int)p)
                .ToArray();
            path.OpenLayer(basses * chords);
            if (path.Witness is WitnessedSearch { Layers.Count: 1 })
            {
                for (var node = 0; node < basses * chords; node++)
                {
                    path.Start(node, prices[node % prices.Length], node);
                }
                continue;
            }
            arcs.Offer(path, isBass, path.EarlierCosts, lines, moves, own, kept);
        }
        path.Best();
    }
}
