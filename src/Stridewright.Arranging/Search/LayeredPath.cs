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

    private readonly List<(int[] From, int[] Choice)> _layers = [];

    // Costs are kept for two layers only: a long piece has thousands.
    private long[] _costs = [];
    private long[] _earlierCosts = [];

    /// <summary>Gives each search of this thread that begins from now on a witness; null, as it is in ordinary work: none.
    /// For proofs that what a search finds is the cheapest of all it was offered.</summary>
    [ThreadStatic]
    public static Func<IPathWitness>? Witnesses;

    /// <summary>The witness of this search.</summary>
    public IPathWitness? Witness { get; } = Witnesses?.Invoke();

    /// <summary>Opens a layer with this many nodes, all unreached.</summary>
    public void OpenLayer(int nodes)
    {
        (_earlierCosts, _costs) = (_costs, new long[nodes]);
        Array.Fill(_costs, Never);
        _layers.Add((new int[nodes], new int[nodes]));
        Witness?.Layer(nodes);
    }

    /// <summary>Cost of the cheapest path to each node of the last layer.</summary>
    public ReadOnlySpan<long> Costs => _costs;

    /// <summary>Cost of the cheapest path to each node of the layer before the last.</summary>
    public ReadOnlySpan<long> EarlierCosts => _earlierCosts;

    /// <summary>Starts a path at a node of the first layer.</summary>
    public void Start(int node, long cost, int choice) => Offer(-1, node, cost, choice);

    /// <summary>Offers a path of total cost <paramref name="total"/> that reaches <paramref name="to"/> from a node of
    /// the layer before; <paramref name="choice"/> is handed back with the path.</summary>
    public void Offer(int from, int to, long total, int choice)
    {
        if (Witness is not null && (from < 0 || EarlierCosts[from] < Never))
        {
            Witness.Arc(from, to, total - (from < 0 ? 0 : EarlierCosts[from]), choice);
        }
        Take(from, to, total, choice);
    }

    /// <summary>The same for who has found the cheapest of several arcs himself, and told the witness of them all.</summary>
    public void Take(int from, int to, long total, int choice)
    {
        if (total < _costs[to])
        {
            var (back, chosen) = _layers[^1];
            _costs[to] = total;
            back[to] = from;
            chosen[to] = choice;
            LastReachedLayer = _layers.Count - 1;
        }
    }

    /// <summary>The cheapest path: total cost, and per layer the node and the choice that led to it. Null when no node of
    /// the last layer was reached; <see cref="LastReachedLayer"/> then tells how far it went.</summary>
    public (long Cost, (int Node, int Choice)[] Steps)? Best()
    {
        var node = Array.IndexOf(_costs, _costs.Min());
        if (_costs[node] >= Never)
        {
            return null;
        }
        var total = _costs[node];
        var steps = new (int, int)[_layers.Count];
        for (var layer = _layers.Count - 1; layer >= 0; layer--)
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
}
