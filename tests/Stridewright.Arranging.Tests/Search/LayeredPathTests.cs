using CsCheck;

namespace Stridewright.Arranging.Tests.Search;

public sealed class LayeredPathTests
{
    private static readonly Gen<long[][][]> Graphs =
        from sizes in Gen.Int[1, 4].Array[2, 6]
        from costs in Gen.Long[0, 50].Array[400]
        select Arcs(sizes, costs);

    [Fact]
    public void The_path_costs_as_little_as_the_cheapest_of_all_paths() =>
        Graphs.Sample(
            arcs =>
            {
                var path = new LayeredPath();
                path.OpenLayer(arcs[0].Length);
                for (var n = 0; n < arcs[0].Length; n++)
                {
                    path.Start(n, 0, n);
                }
                for (var layer = 0; layer < arcs.Length; layer++)
                {
                    path.OpenLayer(arcs[layer][0].Length);
                    for (var from = 0; from < arcs[layer].Length; from++)
                    {
                        for (var to = 0; to < arcs[layer][from].Length; to++)
                        {
                            path.Offer(from, to, path.EarlierCosts[from] + arcs[layer][from][to], to);
                        }
                    }
                }
                var (cost, steps) = path.Best()!.Value;
                Assert.Equal(Cheapest(arcs, 0, -1), cost);
                Assert.Equal(cost, steps.Skip(1).Select((s, i) => arcs[i][steps[i].Node][s.Node]).Sum());
            },
            iter: 2000
        );

    [Fact]
    public void Where_no_arc_leads_on_there_is_no_path_and_its_end_is_told()
    {
        var path = new LayeredPath();
        path.OpenLayer(1);
        path.Start(0, 0, 0);
        path.OpenLayer(2);
        Assert.Null(path.Best());
        Assert.Equal(0, path.LastReachedLayer);
    }

    private static long Cheapest(long[][][] arcs, int layer, int node) =>
        layer == arcs.Length
            ? 0
            : Enumerable
                .Range(0, arcs[layer].Length)
                .Where(n => node < 0 || n == node)
                .SelectMany(from => arcs[layer][from].Select((cost, to) => cost + Cheapest(arcs, layer + 1, to)))
                .Min();

    private static long[][][] Arcs(int[] sizes, long[] costs)
    {
        var next = 0;
        return
        [
            .. Enumerable
                .Range(0, sizes.Length - 1)
                .Select(layer =>
                    Enumerable
                        .Range(0, sizes[layer])
                        .Select(_ =>
                            Enumerable.Range(0, sizes[layer + 1]).Select(_ => costs[next++ % costs.Length]).ToArray()
                        )
                        .ToArray()
                ),
        ];
    }
}
