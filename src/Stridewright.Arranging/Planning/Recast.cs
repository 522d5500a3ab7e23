using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// How many grid units a quarter of the tune takes in the setting. In 2/4 and 4/4 settings it is chosen by the tune's
/// own motion, so that the tune goes in eighths and longer of a 2/4 bar and the sixteenths are free for ragging.
/// </summary>
internal static class Recast
{
    /// <summary>Tune notes wanted per bar of eight units: from trial on 29 tunes.</summary>
    private const double WantedDensity = 4.2;

    /// <summary>Share of gaps under one unit that a scale may have before a wider one is taken.</summary>
    private const double QuickShare = 0.03;

    /// <summary>Units to a quarter of the tune. Chords without notes keep their bars.</summary>
    public static int UnitsPerQuarter(Tune tune, Feel feel)
    {
        if (feel is not (Feel.Classic or Feel.Stride))
        {
            return 2;
        }
        var gaps = Gaps(tune);
        var quarters = tune.Bars.Sum(b => b.Length.ToQuarters());
        var full = tune.Bars.Max(b => b.Metre.BarLength.ToQuarters());
        int[] options = full <= 2 ? [4, 8] : [2, 4, 8];
        bool Fits(int units) => gaps.Count(g => g * units < 0.99) <= QuickShare * gaps.Count;
        if (!tune.Bars.Any(b => b.Notes.Count > 0))
        {
            return options[0];
        }
        var fitting = options.Where(Fits).ToArray();
        if (fitting.Length == 0)
        {
            return options[^1];
        }
        return fitting.MinBy(units =>
            Math.Abs(Math.Log(Math.Max(1, gaps.Count) / (quarters * units / 8) / WantedDensity))
        );
    }

    /// <summary>Units to a quarter that leave the note values as they are; in <c>stride</c> a tune in 2/4 is doubled.</summary>
    public static int UnitsAsPrinted(Tune tune, Feel feel) =>
        feel == Feel.Classic || (feel == Feel.Stride && tune.Bars.Max(b => b.Metre.BarLength) <= ScoreTime.Half)
            ? 4
            : 2;

    private static List<double> Gaps(Tune tune)
    {
        var gaps = new List<double>();
        double start = 0,
            last = double.NaN;
        foreach (var bar in tune.Bars)
        {
            foreach (var note in bar.Notes)
            {
                var at = start + note.At.ToQuarters();
                if (!double.IsNaN(last))
                {
                    gaps.Add(at - last);
                }
                last = at;
            }
            start += bar.Length.ToQuarters();
        }
        return gaps;
    }
}
