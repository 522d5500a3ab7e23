using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Syncopation, onset patterns and returning motifs of the right hand, on the bar of eight units.</summary>
internal static class RhythmStyle
{
    private static readonly int[] Weights = [0, -3, -2, -3, -1, -3, -2, -3];

    public static void Add(StyleSheet sheet, Score score, List<int> bars, Sounding[] right)
    {
        var byBar = right.ToLookup(s => s.Bar);
        var patterns = bars.ToDictionary(b => b, b => Pattern(byBar[b], Unit(b)));
        int untied = 0,
            mid = 0,
            line = 0,
            any = 0,
            augmented = 0,
            held = 0,
            syncopation = 0;
        foreach (var bar in bars)
        {
            var (bits, next) = (patterns[bar], patterns.TryGetValue(bar + 1, out var n) ? n : -1);
            // Past the measured bars the next downbeat counts as struck.
            var found = Figures.In(bits, next < 0 ? 0xFF : next);
            untied += found.Untied > 0 ? 1 : 0;
            mid += found.TiedMid;
            line += found.TiedBar;
            any += found.Untied + found.TiedMid + found.TiedBar > 0 ? 1 : 0;
            augmented += IsAugmented(bits, next) ? 1 : 0;
            held += HoldsWeakUnit(byBar[bar], Unit(bar), bits, next) ? 1 : 0;
            syncopation += Syncopation(bits, next < 0 || next >> 7 == 1);
        }
        sheet.Share("untied_bars", StyleMessages.Untied, untied, bars.Count);
        sheet.Share("tied_mid_bars", StyleMessages.TiedMid, mid, bars.Count);
        sheet.Share("tied_bar_bars", StyleMessages.TiedBar, line, bars.Count);
        sheet.Share("any121_bars", StyleMessages.AnyFigure, any, bars.Count);
        sheet.Share("augmented_bars", StyleMessages.Augmented, augmented, bars.Count);
        sheet.Share("held_bars", StyleMessages.Held, held, bars.Count);
        if (bars.Count > 0)
        {
            sheet.Add("lhl_per_bar", StyleMessages.Syncopation, StyleUnit.PerBar, [(double)syncopation / bars.Count]);
        }
        var row = bars.Select(b => patterns[b]).ToArray();
        AddPatterns(sheet, row);
        AddReturn(sheet, row);

        ScoreTime Unit(int bar) =>
            new(score.Bars[bar].Metre.BarLength.Numerator, 8 * score.Bars[bar].Metre.BarLength.Denominator);
    }

    /// <summary>Short-long-short in doubled values, in the bar or over the bar line (Kirlin, ISMIR 2020).</summary>
    /// <param name="next">The next bar's eight bits; −1 for none.</param>
    public static bool IsAugmented(int bits, int next) =>
        bits == 0b10100010 || (bits & 15) == 0b1010 && next >= 0 && next >> 4 == 0b0010;

    /// <summary>
    /// LHL-consecutive (Longuet-Higgins and Lee 1984 as counted by Kirlin, ISMIR 2020): the grid halved while all odd
    /// places are empty; each onset before a heavier empty place adds the difference of their weights.
    /// </summary>
    public static int Syncopation(int bits, bool nextStruck)
    {
        var step = 1;
        while (step < 8 && !Enumerable.Range(0, 8 / step).Any(i => i % 2 == 1 && IsStruck(bits, i * step)))
        {
            step *= 2;
        }
        var sum = 0;
        for (var at = 0; at < 8; at += step)
        {
            var next = at + step;
            var isNextStruck = next < 8 ? IsStruck(bits, next) : nextStruck;
            var rise = (next < 8 ? Weights[next] : 0) - Weights[at];
            sum += IsStruck(bits, at) && !isNextStruck ? Math.Max(0, rise) : 0;
        }
        return sum;
    }

    private static bool IsStruck(int bits, int unit) => (bits >> (7 - unit) & 1) == 1;

    private static int Pattern(IEnumerable<Sounding> soundings, ScoreTime unit) =>
        soundings
            .Where(s => s.At.IsMultipleOf(unit))
            .Aggregate(0, (bits, s) => bits | 1 << (7 - (int)s.At.Round(unit)));

    private static bool HoldsWeakUnit(IEnumerable<Sounding> struck, ScoreTime unit, int bits, int next) =>
        struck.Any(s =>
            s.At.IsMultipleOf(unit)
            && s.At.Round(unit) is var at
            && at % 2 == 1
            && !(at < 7 ? IsStruck(bits, (int)at + 1) : next >= 0 && IsStruck(next, 0))
            && s.End > s.Start + unit
        );

    private static void AddPatterns(StyleSheet sheet, int[] row)
    {
        var halves = row.SelectMany(bits => new[] { bits >> 4, bits & 15 }).ToList();
        foreach (var half in halves.CountBy(h => h).OrderByDescending(h => h.Value).ThenByDescending(h => h.Key))
        {
            var name = half.Key.ToString("b4", CultureInfo.InvariantCulture);
            sheet.Share("half_" + name, StyleMessages.HalfBar(name), half.Value, halves.Count);
        }
    }

    private static void AddReturn(StyleSheet sheet, int[] row)
    {
        foreach (var lag in (ReadOnlySpan<int>)[1, 2, 3, 4, 8, 16])
        {
            var pairs = Math.Max(0, row.Length - lag);
            var same = row.Take(pairs).Where((bits, i) => bits == row[i + lag]).Count();
            sheet.Share(FormattableString.Invariant($"lag_{lag}"), StyleMessages.Again(lag), same, pairs);
        }
        if (row.Length > 1)
        {
            var chance = row.CountBy(b => b).Sum(b => Math.Pow((double)b.Value / row.Length, 2));
            sheet.Add("chance", StyleMessages.Chance, StyleUnit.Share, [chance]);
        }
    }
}
