namespace Stridewright.Practice.Listening.Search;

/// <summary>
/// Pairs notes of one key: those of the score, with the seconds at which they are expected, and those of the take, both in
/// time order. The pairs never cross, and the sum of their distances and of what is left over is least (dynamic
/// programming). Order among different keys does not matter: hands may be apart and chords rolled.
/// </summary>
internal static class KeyMatching
{
    /// <summary>For each expected note the index of its played note, or -1.</summary>
    /// <param name="reach">Seconds within which a played note may be the expected one.</param>
    public static int[] Pair(ReadOnlySpan<double> expected, ReadOnlySpan<double> played, double reach)
    {
        var pairs = new int[expected.Length];
        Array.Fill(pairs, -1);
        // What lies further apart than the reach is no matter to each other.
        for (int e = 0, p = 0; e < expected.Length && p < played.Length; )
        {
            if (played[p] < expected[e] - reach)
            {
                p++;
            }
            else if (expected[e] < played[p] - reach)
            {
                e++;
            }
            else
            {
                var (fromE, fromP) = (e, p);
                var end = Math.Max(expected[e++], played[p++]);
                while (true)
                {
                    if (e < expected.Length && expected[e] <= end + reach)
                    {
                        end = Math.Max(end, expected[e++]);
                    }
                    else if (p < played.Length && played[p] <= end + reach)
                    {
                        end = Math.Max(end, played[p++]);
                    }
                    else
                    {
                        break;
                    }
                    if ((e - fromE) * (long)(p - fromP) > MostCells)
                    {
                        break;
                    }
                }
                PairCluster(expected[fromE..e], played[fromP..p], reach, pairs.AsSpan(fromE..e), fromP);
            }
        }
        return pairs;
    }

    private const long MostCells = 1 << 16; // of one table; a key struck hundreds of times without a rest is cut

    private static void PairCluster(
        ReadOnlySpan<double> expected,
        ReadOnlySpan<double> played,
        double reach,
        Span<int> pairs,
        int offset
    )
    {
        var width = played.Length + 1;
        var costs = new double[(expected.Length + 1) * width];
        for (var e = 0; e <= expected.Length; e++)
        {
            for (var p = 0; p <= played.Length; p++)
            {
                costs[e * width + p] = (e, p) switch
                {
                    (0, 0) => 0,
                    (0, _) => p,
                    (_, 0) => e,
                    _ => Math.Min(
                        Math.Min(costs[(e - 1) * width + p], costs[e * width + p - 1]) + 1,
                        costs[(e - 1) * width + p - 1] + Distance(expected[e - 1], played[p - 1], reach)
                    ),
                };
            }
        }
        for (int e = expected.Length, p = played.Length; e > 0 && p > 0; )
        {
            var cost = costs[e * width + p];
            if (cost == costs[(e - 1) * width + p - 1] + Distance(expected[e - 1], played[p - 1], reach))
            {
                (e, p) = (e - 1, p - 1);
                pairs[e] = offset + p;
            }
            else if (cost == costs[(e - 1) * width + p] + 1)
            {
                e--;
            }
            else
            {
                p--;
            }
        }
    }

    // Two left over cost 2; a pair at the reach costs as much.
    private static double Distance(double expected, double played, double reach)
    {
        var apart = Math.Abs(expected - played);
        return apart > reach ? double.PositiveInfinity : 2 * apart / reach;
    }
}
