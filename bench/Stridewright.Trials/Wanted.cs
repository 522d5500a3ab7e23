using System.Globalization;
using Stridewright.Arranging;

namespace Stridewright.Trials;

/// <summary>What the prices are fitted to: the published figures of rags in 2/4, and where they are aimed lower.</summary>
internal static class Wanted
{
    /// <summary>In percent, of a pattern that was hardly seen.</summary>
    private const double Hardly = 0.1;

    private static IReadOnlyDictionary<string, double[]> Published => StyleReference.Of(inTwo: true);

    /// <summary>Percent per half-bar pattern 0000 to 1111, both halves.</summary>
    public static double[] HalfBars { get; } = Patterns("half_");

    // 1101 stands lower here than measured (11.5 and 10.1): unseen tunes come out above the calibration tunes.
    public static double[] First { get; } = Patterns("first_", short1101: 9.8);

    public static double[] Second { get; } = Patterns("second_", short1101: 8.6);

    /// <summary>Share per kind of <see cref="TextureTally"/> up to the block.</summary>
    public static double[] Textures { get; } = [.. Kinds.Select(k => Published[k][0])];

    /// <summary>How often each follows itself.</summary>
    public static double[] Persistence { get; } = [.. Kinds.Select(k => Published[k + "_stays"][0])];

    public const double UntiedPerBar = 0.18,
        TiedMidPerBar = 0.195,
        TiedBarPerBar = 0.04;

    private static IEnumerable<string> Kinds => TextureTally.Kinds.SkipLast(1);

    private static double[] Patterns(string key, double? short1101 = null) =>
        [
            .. Enumerable
                .Range(0, 16)
                .Select(bits =>
                    bits == 0b1101 && short1101 is { } aim ? aim
                    : Published.TryGetValue(key + bits.ToString("b4", CultureInfo.InvariantCulture), out var share)
                        ? 100 * share[0]
                    : Hardly
                ),
        ];
}
