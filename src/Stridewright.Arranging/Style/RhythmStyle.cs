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
        var measured = bars.ToHashSet();
        var patterns = score
            .Bars.Select((_, bar) => measured.Contains(bar) ? Pattern(byBar[bar], Unit(score, bar)) : -1)
            .ToArray();
        var tally = new RhythmTally();
        tally.Add(patterns);
        var held = bars.Count(b =>
            HoldsWeakUnit(byBar[b], Unit(score, b), patterns[b], b + 1 < patterns.Length ? patterns[b + 1] : -1)
        );
        AddSyncopation(sheet, tally, held);
        AddPatterns(sheet, tally);
        AddReturn(sheet, tally);
    }

    /// <summary>An eighth of a full bar.</summary>
    public static ScoreTime Unit(Score score, int bar) => score.Bars[bar].Metre.BarLength / 8;

    /// <summary>Units of its bar that are struck, the highest bit first.</summary>
    public static int Pattern(IEnumerable<Sounding> soundings, ScoreTime unit) =>
        soundings
            .Where(s => s.At.IsMultipleOf(unit))
            .Aggregate(0, (bits, s) => bits | 1 << (7 - (int)s.At.Round(unit)));

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

    private static bool HoldsWeakUnit(IEnumerable<Sounding> struck, ScoreTime unit, int bits, int next) =>
        struck.Any(s =>
            s.At.IsMultipleOf(unit)
            && s.At.Round(unit) is var at
            && at % 2 == 1
            && !(at < 7 ? IsStruck(bits, (int)at + 1) : next >= 0 && IsStruck(next, 0))
            && s.End > s.Start + unit
        );

    private static void AddSyncopation(StyleSheet sheet, RhythmTally tally, int held)
    {
        sheet.Open(StyleMessages.SyncopationSection);
        sheet.Share("untied_bars", StyleMessages.Untied, tally.BarsWithUntied, tally.Bars);
        sheet.Share("tied_mid_bars", StyleMessages.TiedMid, tally.TiedMid, tally.Bars);
        sheet.Share("tied_bar_bars", StyleMessages.TiedBar, tally.TiedBar, tally.Bars);
        sheet.Share("any121_bars", StyleMessages.AnyFigure, tally.BarsWithFigure, tally.Bars);
        sheet.Share("augmented_bars", StyleMessages.Augmented, tally.BarsWithAugmented, tally.Bars);
        sheet.Share("held_bars", StyleMessages.Held, held, tally.Bars);
        if (tally.Bars > 0)
        {
            var mean = (double)tally.Syncopation / tally.Bars;
            sheet.Add("lhl_per_bar", StyleMessages.Syncopation, StyleUnit.PerBar, [mean]);
        }
    }

    private static void AddPatterns(StyleSheet sheet, RhythmTally tally)
    {
        sheet.Open(StyleMessages.PatternSection);
        var both = tally.First.Zip(tally.Second, (a, b) => a + b).ToArray();
        Halves("half_", both, 2 * tally.Bars, StyleMessages.HalfBar);
        Halves("first_", tally.First, tally.Bars, StyleMessages.FirstHalf);
        Halves("second_", tally.Second, tally.Bars, StyleMessages.SecondHalf);
        // The commonest here, and what is common in print.
        var shown = tally
            .Whole.OrderByDescending(b => b.Value)
            .ThenByDescending(b => b.Key)
            .Where((b, i) => i < StyleReference.BarsShown || sheet.Knows("bar_" + Name(b.Key, 8)));
        foreach (var (bits, count) in shown)
        {
            sheet.Share("bar_" + Name(bits, 8), StyleMessages.WholeBar(Name(bits, 8)), count, tally.Bars);
        }

        void Halves(string key, int[] counts, int whole, Func<string, string> words)
        {
            foreach (var bits in Enumerable.Range(0, 16).OrderByDescending(b => counts[b]).ThenByDescending(b => b))
            {
                if (counts[bits] > 0)
                {
                    sheet.Share(key + Name(bits, 4), words(Name(bits, 4)), counts[bits], whole);
                }
            }
        }
    }

    private static void AddReturn(StyleSheet sheet, RhythmTally tally)
    {
        sheet.Open(StyleMessages.ReturnSection);
        foreach (var lag in RhythmTally.Lags)
        {
            var (alike, pairs) = tally.At(lag);
            sheet.Share(FormattableString.Invariant($"lag_{lag}"), StyleMessages.Again(lag), alike, pairs);
        }
        if (tally.Bars > 1)
        {
            var chance = tally.Whole.Values.Sum(n => Math.Pow((double)n / tally.Bars, 2));
            sheet.Add("chance", StyleMessages.Chance, StyleUnit.Share, [chance]);
        }
        if (tally.DistinctInSixteen is { } distinct)
        {
            sheet.Add("distinct_per_16_bars", StyleMessages.Distinct, StyleUnit.Number, [distinct]);
        }
    }

    private static string Name(int bits, int digits) =>
        bits.ToString(digits == 4 ? "b4" : "b8", CultureInfo.InvariantCulture);
}
