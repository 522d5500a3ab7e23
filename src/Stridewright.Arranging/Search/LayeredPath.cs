namespace Stridewright.Arranging;

/// <summary>
/// Cheapest path through layers of nodes (Viterbi's algorithm: exact, linear in the number of arcs). A stage opens a
/// layer, offers arcs into it, and at the end reads the path back. Costs are integers; among equal costs the first arc
/// offered wins, so a search is deterministic.
/// </summary>
internal sealed class LayeredPath
{
    /// <summary>A cost that no sensible path reaches; an arc at or above it is never taken.</summary>
    public const long Never = long.MaxValue / 4;

    // Room that was made for a layer serves again in the next search.
    private readonly List<(int[] From, int[] Choice)> _layers = [];
    private int _opened;
    private int[] _from = [];
    private int[] _choice = [];

    // Costs are kept for two layers only: a long piece has thousands.
    private long[] _costs = [];
    private long[] _earlierCosts = [];
    private int _nodes;
    private int _earlierNodes;

    /// <summary>Gives each search of this thread that begins from now on a witness; null, as it is in ordinary work: none.
    /// For proofs that what a search finds is the cheapest of all it was offered.</summary>
    [ThreadStatic]
    public static Func<IPathWitness>? Witnesses;

    /// <summary>The witness of this search.</summary>
    public IPathWitness? Witness { get; private set; } = Witnesses?.Invoke();

    /// <summary>Forgets the search made and begins another, in the same room.</summary>
    public void Restart()
    {
        (_opened, _nodes, _earlierNodes, LastReachedLayer) = (0, 0, 0, -1);
        Witness = Witnesses?.Invoke();
    }

    /// <summary>Opens a layer with this many nodes, all unreached.</summary>
    public void OpenLayer(int nodes)
    {
        (_earlierCosts, _costs) = (_costs, _earlierCosts);
        (_earlierNodes, _nodes) = (_nodes, nodes);
        if (_costs.Length < nodes)
        {
            _costs = new long[nodes];
        }
        _costs.AsSpan(0, nodes).Fill(Never);
        if (_opened == _layers.Count)
        {
            _layers.Add(default);
        }
        if (_layers[_opened].From is not { } from || from.Length < nodes)
        {
            _layers[_opened] = (new int[nodes], new int[nodes]);
        }
        (_from, _choice) = _layers[_opened];
        _opened++;
        Witness?.Layer(nodes);
    }

    /// <summary>Cost of the cheapest path to each node of the last layer.</summary>
    public ReadOnlySpan<long> Costs => _costs.AsSpan(0, _nodes);

    /// <summary>Cost of the cheapest path to each node of the layer before the last.</summary>
    public ReadOnlySpan<long> EarlierCosts => _earlierCosts.AsSpan(0, _earlierNodes);

    /// <summary>Starts a path at a node of the first layer.</summary>
    public void Start(int node, long cost, int choice) => Offer(-1, node, cost, choice);

    /// <summary>Offers a path of total cost <paramref name="total"/> that reaches <paramref name="to"/> from a node of
    /// the layer before; <paramref name="choice"/> is handed back with the path.</summary>
    public void Offer(int from, int to, long total, int choice)
    {
        if (Witness is not null && (from < 0 || _earlierCosts[from] < Never))
        {
            Witness.Arc(from, to, total - (from < 0 ? 0 : _earlierCosts[from]), choice);
        }
        Take(from, to, total, choice);
    }

    /// <summary>Room for the best arcs into nodes that nothing else was offered to: for who has found the cheapest of many
    /// himself, and told the witness of them all.</summary>
    public Reached Reach(int first, int count)
    {
        LastReachedLayer = _opened - 1;
        return new(_costs.AsSpan(first, count), _from.AsSpan(first, count), _choice.AsSpan(first, count));
    }

    private void Take(int from, int to, long total, int choice)
    {
        if (total < _costs[to])
        {
            _costs[to] = total;
            _from[to] = from;
            _choice[to] = choice;
            LastReachedLayer = _opened - 1;
        }
    }

    /// <summary>The cheapest path: total cost, and per layer the node and the choice that led to it. Null when no node of
    /// the last layer was reached; <see cref="LastReachedLayer"/> then tells how far it went.</summary>
    public (long Cost, (int Node, int Choice)[] Steps)? Best()
    {
        var node = 0;
        for (var other = 1; other < _nodes; other++)
        {
            node = _costs[other] < _costs[node] ? other : node;
        }
        if (_costs[node] >= Never)
        {
            return null;
        }
        var total = _costs[node];
        var steps = new (int, int)[_opened];
        for (var layer = _opened - 1; layer >= 0; layer--)
        {
            var (from, choice) = _layers[layer];
            steps[layer] = (node, choice[node]);
            node = from[node];
        }
        Witness?.Found(total, steps);
        return (total, steps);
    }

    /// <summary>Index of the last layer that any path reaches; −1: none.</summary>
    public int LastReachedLayer { get; private set; } = -1;

    /// <summary>Per node: the cost of the cheapest path, the node before and the choice.</summary>
    public readonly ref struct Reached(Span<long> costs, Span<int> from, Span<int> choice)
    {
        public Span<long> Costs { get; } = costs;

        public Span<int> From { get; } = from;

        public Span<int> Choice { get; } = choice;
    }
}
