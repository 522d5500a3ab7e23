using System.Diagnostics;
using Stridewright.Arranging;

namespace Stridewright.Proof.Tests.Search;

/// <summary>One search as it ran: its layers, the cheapest arc between any two nodes, and what it found.</summary>
internal sealed class WitnessedSearch(string stage) : IPathWitness
{
    private readonly List<int> _layers = [];
    private readonly List<Dictionary<(int From, int To), long>> _arcs = [];

    /// <summary>Name of the class that searched.</summary>
    public string Stage { get; } = stage;

    /// <summary>Nodes per layer.</summary>
    public IReadOnlyList<int> Layers => _layers;

    /// <summary>Per layer the arcs into it; those into the first come from −1, or from one node that stands for the
    /// beginning. Of several between the same two nodes the dearer are left out: no cheapest path takes them.</summary>
    public IReadOnlyList<Dictionary<(int From, int To), long>> Arcs => _arcs;

    public int ArcCount => _arcs.Sum(a => a.Count);

    public (long Cost, (int Node, int Choice)[] Steps)? Result { get; private set; }

    /// <summary>Runs some work and returns all searches in it, in their order.</summary>
    public static List<WitnessedSearch> Watch(Action work)
    {
        var searches = new List<WitnessedSearch>();
        LayeredPath.Witnesses = () =>
        {
            searches.Add(new WitnessedSearch(Searcher()));
            return searches[^1];
        };
        try
        {
            work();
        }
        finally
        {
            LayeredPath.Witnesses = null;
        }
        return searches;
    }

    public void Layer(int nodes)
    {
        _layers.Add(nodes);
        _arcs.Add([]);
    }

    public void Arc(int from, int to, long price, int choice)
    {
        var arcs = _arcs[^1];
        arcs[(from, to)] = arcs.TryGetValue((from, to), out var known) ? Math.Min(known, price) : price;
    }

    public void Found(long cost, (int Node, int Choice)[] steps) => Result = (cost, steps);

    /// <summary>What the found path costs, arc by arc.</summary>
    public long CostOfSteps()
    {
        var (sum, from) = (0L, -1);
        for (var layer = 0; layer < _layers.Count; layer++)
        {
            var node = Result!.Value.Steps[layer].Node;
            sum += layer == 0 ? Into(node) : _arcs[layer][(from, node)];
            from = node;
        }
        return sum;
    }

    /// <summary>The cheapest path, reckoned from the end to the beginning over all arcs.</summary>
    public long CheapestFromTheEnd()
    {
        var rest = new long[_layers[^1]];
        for (var layer = _layers.Count - 1; layer > 0; layer--)
        {
            var before = new long[_layers[layer - 1]];
            Array.Fill(before, LayeredPath.Never);
            foreach (var ((from, to), price) in _arcs[layer])
            {
                before[from] = Math.Min(before[from], price + rest[to]);
            }
            rest = before;
        }
        return _arcs[0].Min(arc => arc.Value + rest[arc.Key.To]);
    }

    /// <summary>
    /// The same search made small: its first layers, and in each the node of the found path with others spread evenly
    /// over the layer; searched anew.
    /// </summary>
    public WitnessedSearch Cut(int layers, int nodes)
    {
        var kept = new List<int[]>();
        for (var layer = 0; layer < Math.Min(layers, _layers.Count); layer++)
        {
            var own = Result!.Value.Steps[layer].Node;
            var reached = _arcs[layer].Keys.Select(arc => arc.To).Distinct().Order().ToArray();
            var spread = Enumerable.Range(0, nodes - 1).Select(i => reached[i * reached.Length / (nodes - 1)]);
            kept.Add([.. spread.Append(own).Distinct().Order()]);
        }
        return Watch(() => Search(kept))[0];
    }

    private void Search(List<int[]> kept)
    {
        var path = new LayeredPath();
        for (var layer = 0; layer < kept.Count; layer++)
        {
            path.OpenLayer(kept[layer].Length);
            foreach (var ((from, to), price) in _arcs[layer].OrderBy(arc => arc.Key))
            {
                var (f, t) = (layer == 0 ? -1 : Array.IndexOf(kept[layer - 1], from), Array.IndexOf(kept[layer], to));
                if (t >= 0 && (layer == 0 || (f >= 0 && path.EarlierCosts[f] < LayeredPath.Never)))
                {
                    path.Offer(f, t, (layer == 0 ? 0 : path.EarlierCosts[f]) + price, t);
                }
            }
        }
        path.Best();
    }

    private long Into(int first) => _arcs[0].Where(arc => arc.Key.To == first).Min(arc => arc.Value);

    private static string Searcher() =>
        new StackTrace()
            .GetFrames()
            .Select(frame => frame.GetMethod()!.DeclaringType!)
            .SkipWhile(type => type != typeof(LayeredPath))
            .First(type => type != typeof(LayeredPath))
            .Name;
}
