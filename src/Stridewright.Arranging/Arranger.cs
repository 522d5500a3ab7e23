using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Sets a tune for the hands of a brief.</summary>
public static class Arranger
{
    /// <summary>Deterministic: the same tune and brief give the same arrangement.</summary>
    public static ArrangeResult Arrange(Tune tune, Brief brief, CancellationToken cancellation = default) =>
        throw new NotSupportedException(tune.Title + brief + cancellation);
}
