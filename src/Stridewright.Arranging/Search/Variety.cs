namespace Stridewright.Arranging;

/// <summary>
/// Seeded variety. The cheapest choice everywhere cannot match the frequencies of real music, so a search adds to each
/// candidate a Gumbel-distributed term hashed from seed, musical content and candidate (the Gumbel-max trick turns a
/// minimum into a draw with the wanted probabilities). Same content, same term: like bars come out alike.
/// </summary>
internal static class Variety
{
    /// <summary>Mixes a value into a hash (splitmix64 finaliser).</summary>
    public static ulong Mix(ulong hash, long value)
    {
        unchecked
        {
            var z = hash + 0x9E3779B97F4A7C15UL + (ulong)value * 0xD1342543DE82EF95UL;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }

    /// <summary>Mixes two hashes.</summary>
    public static ulong Mix(ulong hash, ulong other) => Mix(hash, unchecked((long)other));

    /// <summary>Mixes a word into a hash.</summary>
    public static ulong Mix(ulong hash, string word)
    {
        foreach (var c in word)
        {
            hash = Mix(hash, c);
        }
        return hash;
    }

    /// <summary>A cost drawn from the hash: minus a standard Gumbel variable, in thousandths.</summary>
    public static long Cost(ulong hash) => (long)(-1000 * Gumbel(hash));

    private static double Gumbel(ulong hash)
    {
        var uniform = ((hash >> 11) + 0.5) * (1.0 / (1UL << 53));
        return -Math.Log(-Math.Log(uniform));
    }
}
