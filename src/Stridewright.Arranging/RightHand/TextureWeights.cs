namespace Stridewright.Arranging;

/// <summary>
/// Prices of the right hand's textures, calibrated so that settings at level 6 show the shares and the persistence
/// measured on 34 printed rags: single 58 %, two notes 16, octave 8, octave with inner notes 8, block 9; single follows
/// itself 78 %, two notes 50, octave 53, octave with inner notes 55, block 41.
/// </summary>
internal sealed record TextureWeights
{
    /// <summary>Per texture, on top of its share at the place in the bar.</summary>
    public required long[] Offset { get; init; }

    /// <summary>Price of leaving each texture at the next onset.</summary>
    public required long[] Leave { get; init; }

    public static TextureWeights Standard { get; } =
        new() { Offset = [0, -805, -1558, -1677, -1178], Leave = [693, -32, 191, 533, 109] };
}
