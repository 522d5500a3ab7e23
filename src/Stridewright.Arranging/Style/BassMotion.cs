using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>How the bass goes on: from the first of a bar to the second, and from that to the next bar's first.</summary>
internal static class BassMotion
{
    public static void Add(StyleSheet sheet, Score score, List<int> bars, ILookup<int, Sounding> byBar)
    {
        var within = new Dictionary<int, int>();
        var onward = new Dictionary<string, int>();
        int? before = null;
        var last = -2;
        foreach (var bar in bars)
        {
            var half = score.Bars[bar].Metre.BarLength / 2;
            var struck = LeftStroke.Of(byBar[bar]);
            var (first, second) = (Lowest(struck, ScoreTime.Zero), Lowest(struck, half));
            if (first is { } from && second is { } to)
            {
                within[to - from] = within.GetValueOrDefault(to - from) + 1;
            }
            if (bar == last + 1 && before is { } ends && first is { } begins)
            {
                var kind = Kind(Math.Abs(begins - ends));
                onward[kind] = onward.GetValueOrDefault(kind) + 1;
            }
            (before, last) = (second, bar);
        }
        var all = within.Values.Sum();
        foreach (var (semitones, count) in within.OrderByDescending(w => w.Value).ThenBy(w => w.Key))
        {
            var key = "second_bass_" + semitones.ToString("+0;-0;0", CultureInfo.InvariantCulture);
            if (sheet.Knows(key) || 20 * count >= all)
            {
                sheet.Share(key, StyleMessages.SecondBass(semitones), count, all);
            }
        }
        foreach (var (kind, count) in onward.OrderByDescending(o => o.Value).ThenBy(o => o.Key, StringComparer.Ordinal))
        {
            sheet.Share("next_bass_" + kind, StyleMessages.NextBass(kind), count, onward.Values.Sum());
        }
    }

    private static int? Lowest(List<LeftStroke> struck, ScoreTime at) => struck.Find(s => s.At == at)?.Keys[0];

    private static string Kind(int semitones) =>
        semitones switch
        {
            0 => "same",
            1 or 2 => "step",
            5 or 7 => "fourth_fifth",
            12 => "octave",
            _ => "other",
        };
}
