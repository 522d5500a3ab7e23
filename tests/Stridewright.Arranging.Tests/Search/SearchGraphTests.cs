using CsCheck;

namespace Stridewright.Arranging.Tests.Search;

/// <summary>Ranked ways against an enumeration of every path that knows nothing of bounds.</summary>
public sealed class SearchGraphTests
{
    private const int MostPaths = 400_000;

    [Fact]
    public void The_ways_of_random_graphs_are_those_of_brute_force()
    {
        Gen.Select(Gen.Int[1, 4], Gen.Int[1, 4], Gen.Int[0, 1_000_000])
            .Sample(
                (layers, nodes, seed) =>
                {
                    var random = new Random(seed);
                    var graph = SearchGraph.Record(() => Walk(layers, nodes, random))[0];
                    for (var first = 0; first < layers; first++)
                    {
                        for (var last = first; last < layers; last++)
                        {
                            AssertBruteForce(graph, first, last, int.MaxValue);
                        }
                    }
                },
                iter: 300
            );
    }

    [Theory]
    [InlineData(2, "C4")]
    [InlineData(3, "E2G2")]
    [InlineData(4, "c2e2")]
    [InlineData(5, "c4")]
    public void The_ways_of_every_stage_of_short_tunes_are_those_of_brute_force(int level, string notes)
    {
        var tune = Tunes.Abc("M:2/4\nL:1/8\nK:C", $"\"C\"{notes}|]");
        var brief = new Brief { LeftLevel = level, RightLevel = level };
        ArrangeResult? result = null;
        var graphs = SearchGraph.Record(() => result = Arranger.Arrange(tune, brief));
        Assert.NotNull(result!.Arrangement);

        var enumerated = graphs.Where(g => g.Layers > 0 && Paths(g) <= MostPaths).ToList();

        Assert.True(enumerated.Count >= 3, $"{enumerated.Count} of {graphs.Count} searches are small enough");
        foreach (var graph in enumerated)
        {
            AssertBruteForce(graph, 0, graph.Layers - 1, 50);
            AssertBruteForce(graph, graph.Layers / 2, graph.Layers - 1, 50);
            AssertBruteForce(graph, 0, 0, 50);
        }
    }

    [Fact]
    public void The_cheapest_way_of_each_bar_costs_what_was_found()
    {
        var tune = Tunes.Abc("M:2/4\nL:1/8\nK:C", "\"C\"c2e2|\"F\"f2a2|\"G7\"g2f2|\"C\"e4|]");
        var graphs = SearchGraph.Record(() => Arranger.Arrange(tune, new Brief { LeftLevel = 5, RightLevel = 5 }));
        foreach (var graph in graphs.Where(g => g.Result is not null))
        {
            for (var layer = 0; layer < graph.Layers; layer++)
            {
                var ways = graph.Ways(layer, layer, 5);
                Assert.Equal(graph.Result!.Value.Cost, ways[0].Cost);
                Assert.Contains(
                    ways,
                    w => w.Choices[0] == graph.Result.Value.Steps[layer].Choice && w.Cost == ways[0].Cost
                );
            }
        }
    }

    private static void AssertBruteForce(SearchGraph graph, int first, int last, int most)
    {
        var least = new Dictionary<string, long>();
        var choices = new int[graph.Layers];
        Go(0, 0, 0);
        var ways = graph.Ways(first, last, most);
        Assert.Equal(Math.Min(most, least.Count), ways.Count);
        Assert.Equal(least.Values.Order().Take(ways.Count), ways.Select(w => w.Cost));
        Assert.All(ways, w => Assert.Equal(least[string.Join(' ', w.Choices)], w.Cost));
        Assert.Distinct(ways.Select(w => string.Join(' ', w.Choices)));

        void Go(int layer, int node, long cost)
        {
            if (layer == graph.Layers)
            {
                var key = string.Join(' ', choices[first..(last + 1)]);
                least[key] = least.TryGetValue(key, out var known) ? Math.Min(known, cost) : cost;
                return;
            }
            foreach (var step in graph.Into(layer).Where(s => s.From == node))
            {
                choices[layer] = step.Choice;
                Go(layer + 1, step.To, cost + step.Price);
            }
        }
    }

    private static double Paths(SearchGraph graph)
    {
        var to = new Dictionary<int, double> { [0] = 1 };
        for (var layer = 0; layer < graph.Layers; layer++)
        {
            to = graph
                .Into(layer)
                .GroupBy(s => s.To)
                .ToDictionary(g => g.Key, g => g.Sum(s => to.GetValueOrDefault(s.From)));
        }
        return to.Values.Sum();
    }

    // Fewer choices than nodes, so that one choice leads along several arcs.
    private static void Walk(int layers, int nodes, Random random)
    {
        var path = new LayeredPath();
        for (var layer = 0; layer < layers; layer++)
        {
            path.OpenLayer(nodes);
            for (var to = 0; to < nodes; to++)
            {
                for (var from = 0; from < nodes; from++)
                {
                    if (layer == 0)
                    {
                        path.Start(to, random.Next(20), random.Next(3));
                    }
                    else if (random.Next(5) > 0 || from == to)
                    {
                        path.Offer(from, to, path.EarlierCosts[from] + random.Next(20), random.Next(3));
                    }
                }
            }
        }
        path.Best();
    }
}
