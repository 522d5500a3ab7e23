namespace Stridewright.Arranging;

/// <summary>
/// The whole graph of one search, kept by a witness, and with it what the cheapest path alone does not tell: the other
/// ways through a stretch of layers, each with the true cost of the cheapest whole path that takes it. Costs forward to
/// every node and onward from it are exact, so that the ways come out in order of cost and none is looked at in vain.
/// </summary>
internal sealed class SearchGraph : IPathWitness
{
    private readonly List<int> _nodes = [];

    // Arcs into each layer.
    private readonly List<List<GraphArc>> _arcs = [];
    private ILookup<int, GraphArc>?[] _byFrom = [];
    private long[][] _forward = [];
    private long[][] _onward = [];

    /// <summary>How many layers were opened.</summary>
    public int Layers => _nodes.Count;

    /// <summary>Arcs into a layer, in the order offered; those into the first come from node 0, the beginning.</summary>
    public IReadOnlyList<GraphArc> Into(int layer) => _arcs[layer];

    /// <summary>The path found, a step per layer; null: none.</summary>
    public (long Cost, (int Node, int Choice)[] Steps)? Result { get; private set; }

    public void Layer(int nodes)
    {
        _nodes.Add(nodes);
        _arcs.Add([]);
    }

    public void Arc(int from, int to, long price, int choice)
    {
        if (price < LayeredPath.Never)
        {
            _arcs[^1].Add(new GraphArc(_nodes.Count == 1 ? 0 : from, to, price, choice));
        }
    }

    public void Found(long cost, (int Node, int Choice)[] steps) => Result = (cost, steps);

    /// <summary>Runs some work on this thread and returns the graphs of all its searches, in their order.</summary>
    public static List<SearchGraph> Record(Action work)
    {
        var (graphs, before) = (new List<SearchGraph>(), LayeredPath.Witnesses);
        LayeredPath.Witnesses = () =>
        {
            graphs.Add(new SearchGraph());
            return graphs[^1];
        };
        try
        {
            work();
        }
        finally
        {
            LayeredPath.Witnesses = before;
        }
        return graphs;
    }

    /// <summary>
    /// The cheapest <paramref name="most"/> different ways through layers <paramref name="first"/> to
    /// <paramref name="last"/>, cheapest first; ways that cost the same in order of their choices. A way is its choices,
    /// one per layer: whatever nodes they pass, it counts once, at the least a whole path with these choices costs.
    /// </summary>
    public IReadOnlyList<Way> Ways(int first, int last, int most)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(first);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(last, Layers);
        ArgumentOutOfRangeException.ThrowIfLessThan(last, first);
        Reckon();
        var found = new List<Way>();
        var open = new PriorityQueue<Prefix, Prefix>(Prefix.Order);
        Add([], Reached(first - 1), first - 1);
        while (found.Count < most && open.TryDequeue(out var prefix, out _))
        {
            var layer = first + prefix.Choices.Length;
            if (layer > last)
            {
                found.Add(new Way(prefix.Cost, prefix.Choices));
                continue;
            }
            var next = new SortedDictionary<int, Dictionary<int, long>>();
            foreach (var (node, cost) in prefix.Costs)
            {
                foreach (var step in From(layer, node))
                {
                    if (!next.TryGetValue(step.Choice, out var costs))
                    {
                        next[step.Choice] = costs = [];
                    }
                    var total = cost + step.Price;
                    costs[step.To] = costs.TryGetValue(step.To, out var known) ? Math.Min(known, total) : total;
                }
            }
            foreach (var (choice, costs) in next)
            {
                Add([.. prefix.Choices, choice], costs, layer);
            }
        }
        return found;

        // What is begun costs what its cheapest completion does.
        void Add(int[] choices, Dictionary<int, long> costs, int layer)
        {
            var cheapest = costs.Select(c => c.Value + Onward(layer, c.Key)).DefaultIfEmpty(LayeredPath.Never).Min();
            if (cheapest < LayeredPath.Never)
            {
                var prefix = new Prefix(cheapest, choices, costs);
                open.Enqueue(prefix, prefix);
            }
        }
    }

    private Dictionary<int, long> Reached(int layer) =>
        layer < 0
            ? new() { [0] = 0 }
            : Enumerable
                .Range(0, _nodes[layer])
                .Where(n => _forward[layer][n] < LayeredPath.Never)
                .ToDictionary(n => n, n => _forward[layer][n]);

    private long Onward(int layer, int node) => layer < 0 ? FromStart() : _onward[layer][node];

    private long FromStart() =>
        _arcs[0].Select(a => a.Price + _onward[0][a.To]).DefaultIfEmpty(LayeredPath.Never).Min();

    private IEnumerable<GraphArc> From(int layer, int node) =>
        (_byFrom[layer] ??= _arcs[layer].ToLookup(a => a.From))[node];

    private void Reckon()
    {
        if (_forward.Length == Layers)
        {
            return;
        }
        _byFrom = new ILookup<int, GraphArc>?[Layers];
        _forward = [.. _nodes.Select(Unreached)];
        _onward = [.. _nodes.Select(Unreached)];
        for (var layer = 0; layer < Layers; layer++)
        {
            foreach (var (from, to, price, _) in _arcs[layer])
            {
                var sofar = layer == 0 ? 0 : _forward[layer - 1][from];
                _forward[layer][to] = Math.Min(_forward[layer][to], sofar + price);
            }
        }
        Array.Fill(_onward[^1], 0);
        for (var layer = Layers - 1; layer > 0; layer--)
        {
            foreach (var (from, to, price, _) in _arcs[layer])
            {
                _onward[layer - 1][from] = Math.Min(_onward[layer - 1][from], price + _onward[layer][to]);
            }
        }
    }

    private static long[] Unreached(int nodes)
    {
        var costs = new long[nodes];
        Array.Fill(costs, LayeredPath.Never);
        return costs;
    }

    // Ways begun alike: their choices, and the least cost to each node these lead to.
    private sealed record Prefix(long Cost, int[] Choices, Dictionary<int, long> Costs)
    {
        public static IComparer<Prefix> Order { get; } =
            Comparer<Prefix>.Create(
                (a, b) => a.Cost != b.Cost ? a.Cost.CompareTo(b.Cost) : a.Choices.AsSpan().SequenceCompareTo(b.Choices)
            );
    }
}

/// <summary>An arc of a search.</summary>
internal readonly record struct GraphArc(int From, int To, long Price, int Choice);

/// <summary>One way through a stretch of layers.</summary>
/// <param name="Cost">Of the cheapest whole path that takes it.</param>
/// <param name="Choices">One per layer of the stretch.</param>
internal sealed record Way(long Cost, int[] Choices);
