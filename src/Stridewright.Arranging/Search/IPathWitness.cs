namespace Stridewright.Arranging;

/// <summary>Sees what a <see cref="LayeredPath"/> is offered and what it finds.</summary>
internal interface IPathWitness
{
    /// <summary>A layer was opened.</summary>
    void Layer(int nodes);

    /// <summary>An arc into the last layer was offered; from -1: a path starts there. <paramref name="choice"/> is what the
    /// stage does on it: several arcs may do the same.</summary>
    void Arc(int from, int to, long price, int choice);

    /// <summary>The cheapest path, a step per layer.</summary>
    void Found(long cost, (int Node, int Choice)[] steps);
}
