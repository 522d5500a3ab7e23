namespace Stridewright.Arranging;

/// <summary>A stage's search that can be run again and looked into.</summary>
/// <param name="Run">Runs it.</param>
/// <param name="Choices">What the choices of a layer mean.</param>
internal sealed record OpenSearch<T>(Action<CancellationToken> Run, Func<int, IReadOnlyList<T>> Choices)
{
    /// <summary>The graph of the whole search.</summary>
    public SearchGraph Graph(CancellationToken cancellation) => SearchGraph.Record(() => Run(cancellation))[^1];
}
