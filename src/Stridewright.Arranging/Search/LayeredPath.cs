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

    private readonly List<(long[] Cost, int[] From, int[] Choice)> _layers = [];

    /// <summary>Gives each search of this thread that begins from now on a witness; null, as it is in ordinary work: none.
    /// For proofs that what a search finds is the cheapest of all it was offered.</summary>
    [ThreadStatic]
    public static Func<IPathWitness>? Witnesses;

    /// <summary>The witness of this search.</summary>
    public IPathWitness? Witness { get; } = Witnesses?.Invoke();

    /// <summary>Opens a layer with this many nodes, all unreached.</summary>
    public void OpenLayer(int nodes)
    {
        var cost = new long[nodes];
        Array.Fill(cost, Never);
        _layers.Add((cost, new int[nodes], new int[nodes]));
        Witness?.Layer(nodes);
    }

    /// <summary>Cost of the cheapest path to each node of the last layer.</summary>
    public ReadOnlySpan<long> Costs => _layers[^1].Cost;

    /// <summary>Cost of the cheapest path to each node of the layer before the last.</summary>
    public ReadOnlySpan<long> EarlierCosts => _layers[^2].Cost;

    /// <summary>Starts a path at a node of the first layer.</summary>
    public void Start(int node, long cost, int choice) => Offer(-1, node, cost, choice);

    /// <summary>Offers a path of total cost <paramref name="total"/> that reaches <paramref name="to"/> from a node of
    /// the layer before; <paramref name="choice"/> is handed back with the path.</summary>
    public void Offer(int from, int to, long total, int choice)
    {
        if (Witness is not null && (from < 0 || EarlierCosts[from] < Never))
        {
            Witness.Arc(from, to, total - (from < 0 ? 0 : EarlierCosts[from]));
        }
        Take(from, to, total, choice);
    }

    /// <summary>The same for who has found the cheapest of several arcs himself, and told the witness of them all.</summary>
    public void Take(int from, int to, long total, int choice)
    {
        var (cost, back, chosen) = _layers[^1];
        if (total < cost[to])
        {
            cost[to] = total;
            back[to] = from;
            chosen[to] = choice;
        }
    }

    /// <summary>The cheapest path: total cost, and per layer the node and the choice that led to it. Null when no node of
    /// the last layer was reached; <see cref="LastReachedLayer"/> then tells how far it went.</summary>
    public (long Cost, (int Node, int Choice)[] Steps)? Best()
    {
        var last = _layers[^1].Cost;
        var node = Array.IndexOf(last, last.Min());
        if (last[node] >= Never)
        {
            return null;
        }
        var total = last[node];
        var steps = new (int, int)[_layers.Count];
        for (var layer = _layers.Count - 1; layer >= 0; layer--)
        {
            var (_, from, choice) = _layers[layer];
            steps[layer] = (node, choice[node]);
            node = from[node];
        }
        Witness?.Found(total, steps);
        return (total, steps);
    }

    /// <summary>Index of the last layer that any path reaches.</summary>
    public int LastReachedLayer => _layers.FindLastIndex(l => l.Cost.Min() < Never);
}
