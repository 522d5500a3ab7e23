using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>
/// Turns durations in divisions into exact score time on the file's <see cref="CommonGrid"/>.
/// </summary>
internal sealed class TimeGrid
{
    private readonly CommonGrid _grid = new();
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
    public ScoreTime Fit(ScoreTime time, out bool rounded) => _grid.Fit(time, out rounded);

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
