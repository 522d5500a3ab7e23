using Google.OrTools.Sat;

namespace Stridewright.Proof.Tests.Search;

/// <summary>The optimum of a search as CP-SAT (Google OR-Tools) proves it.</summary>
internal static class ProvenOptimum
{
    // Probing finds nothing in a flow and takes most of the time.
    private const string Parameters = "num_workers:1 cp_model_probing_level:0 max_time_in_seconds:120";

    /// <summary>
    /// The same choice stated as constraints, without any order of solving: one Boolean an arc, one arc into the first
    /// layer, and as many arcs into each node as out of it.
    /// </summary>
    public static long Of(WitnessedSearch search)
    {
        var model = new CpModel();
        var cost = LinearExpr.NewBuilder();
        var priced = new List<(BoolVar Arc, long Price)>();
        var (into, outOf) = (Nodes(search), Nodes(search));
        for (var layer = 0; layer < search.Layers.Count; layer++)
        {
            foreach (var ((from, to), price) in search.Arcs[layer])
            {
                var arc = model.NewBoolVar("");
                cost.AddTerm(arc, price);
                priced.Add((arc, price));
                into[layer][to].Add(arc);
                if (layer > 0)
                {
                    outOf[layer - 1][from].Add(arc);
                }
            }
        }
        model.AddExactlyOne(into[0].SelectMany(arcs => arcs));
        for (var layer = 0; layer < search.Layers.Count - 1; layer++)
        {
            for (var node = 0; node < search.Layers[layer]; node++)
            {
                model.Add(LinearExpr.Sum(into[layer][node]) == LinearExpr.Sum(outOf[layer][node]));
            }
        }
        model.Minimize(cost);
        var solver = new CpSolver { StringParameters = Parameters };
        Assert.Equal(CpSolverStatus.Optimal, solver.Solve(model));
        var least = priced.Where(p => solver.BooleanValue(p.Arc)).Sum(p => p.Price);
        Assert.Equal(least, (long)Math.Round(solver.BestObjectiveBound));
        return least;
    }

    private static List<BoolVar>[][] Nodes(WitnessedSearch search) =>
        [.. search.Layers.Select(nodes => Enumerable.Range(0, nodes).Select(_ => new List<BoolVar>()).ToArray())];
}
