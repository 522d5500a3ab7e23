namespace Stridewright.Arranging;

/// <summary>Every price of the searches, in thousandths of a natural logarithm.</summary>
internal sealed record Prices
{
    public static Prices Standard { get; } = new();

    public RagWeights Ragging { get; init; } = RagWeights.Standard;

    public TextureWeights Texture { get; init; } = TextureWeights.Standard;
}
