using System.Numerics;
using Stridewright.Music;

namespace Stridewright.Formats;

/// <summary>
/// Keeps all times of a file on one grid of at most 2^20 parts of a whole note, so that later sums stay within
/// <see cref="ScoreTime"/>. It grows where a file needs other divisors; a time off any such grid is rounded.
/// </summary>
internal sealed class CommonGrid
{
    private const long Finest = 1 << 20;

    // 128th notes with triplets, ninths, quintuplets and septuplets to begin with.
    private long _parts = 128 * 9 * 5 * 7;

    /// <summary>The finest time of any grid.</summary>
    public static readonly ScoreTime Smallest = new(1, Finest);

    /// <summary>The nearest time on the grid.</summary>
    public ScoreTime Fit(ScoreTime time, out bool rounded)
    {
        rounded = false;
        if (_parts % time.Denominator == 0)
        {
            return time;
        }
        var joint = _parts / (long)BigInteger.GreatestCommonDivisor(_parts, time.Denominator);
        rounded = joint > Finest / time.Denominator;
        if (rounded)
        {
            return new ScoreTime(time.Round(new ScoreTime(1, _parts)), _parts);
        }
        _parts = joint * time.Denominator;
        return time;
    }
}
