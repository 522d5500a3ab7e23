using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>
/// Turns durations in divisions into exact score time. All times of a file lie on one common grid of at most 2^20
/// parts of a whole note, so that later sums stay within <see cref="ScoreTime"/>; a time off any such grid is rounded.
/// </summary>
internal sealed class TimeGrid
{
    private const long Finest = 1 << 20;

    // 128th notes with triplets, ninths, quintuplets and septuplets; grows when a file needs other divisors.
    private long _parts = 40320;
    private ScoreTime _division = ScoreTime.Quarter;

    /// <summary>Takes a new number of divisions of a quarter note; false, and nothing changes, when it is absurd.</summary>
    public bool TrySetDivisions(string? text)
    {
        if (!TryNumber(text, MusicXmlLimits.Divisions, out var count, out var scale) || count == 0)
        {
            return false;
        }
        _division = new ScoreTime(scale, 4 * count);
        return true;
    }

    /// <summary>Reads a duration. False when it is no number, negative, or longer than a bar may be.</summary>
    public bool TryRead(string? text, out ScoreTime time, out bool rounded)
    {
        (time, rounded) = (default, false);
        if (!TryNumber(text, 1_000_000_000m, out var count, out var scale))
        {
            return false;
        }
        time = _division * count / scale;
        if (time > new ScoreTime(MusicXmlLimits.BarWholes, 1))
        {
            return false;
        }
        time = Fit(time, out rounded);
        return true;
    }

    /// <summary>The nearest time on the common grid.</summary>
    public ScoreTime Fit(ScoreTime time, out bool rounded)
    {
        var joint = _parts / (long)System.Numerics.BigInteger.GreatestCommonDivisor(_parts, time.Denominator);
        rounded = joint > Finest / time.Denominator;
        if (rounded)
        {
            return new ScoreTime(time.Round(new ScoreTime(1, _parts)), _parts);
        }
        _parts = joint * time.Denominator;
        return time;
    }

    // A decimal number from 0 to a limit as count / scale; hundredths are kept, finer parts are not.
    private static bool TryNumber(string? text, decimal most, out long count, out int scale)
    {
        (count, scale) = (0, 1);
        if (
            !decimal.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            || number < 0
            || number > most
        )
        {
            return false;
        }
        scale = number == decimal.Truncate(number) ? 1 : 100;
        count = (long)decimal.Round(number * scale);
        return true;
    }
}
