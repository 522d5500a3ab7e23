using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Registers, leaps and share of stride in the left hand: bass on the four strokes' first and third, chords between.</summary>
internal static class LeftHandStyle
{
    public static void Add(StyleSheet sheet, Score score, List<int> bars, IEnumerable<Sounding> left)
    {
        var byBar = left.ToLookup(s => s.Bar);
        List<int> bass = [],
            low = [],
            high = [],
            leaps = [];
        var (strict, loose) = (0, 0);
        foreach (var bar in bars)
        {
            var whole = score.Bars[bar].Metre.BarLength;
            var stroke = new ScoreTime(whole.Numerator, 4 * whole.Denominator);
            var struck = byBar[bar]
                .GroupBy(s => s.At)
                .OrderBy(g => g.Key)
                .Select(g => (At: g.Key, Keys: g.Select(s => s.Key).Distinct().Order().ToArray()))
                .ToList();
            foreach (var (at, keys) in struck.Where(s => s.At.IsMultipleOf(stroke)))
            {
                if (at.Round(stroke) % 2 == 0)
                {
                    bass.Add(keys[0]);
                }
                else if (IsChord(keys))
                {
                    low.Add(keys[0]);
                    high.Add(keys[^1]);
                }
            }
            for (var i = 1; i < struck.Count; i++)
            {
                if (IsBassStroke(struck[i - 1]) && !IsBeat(struck[i].At) && IsChord(struck[i].Keys))
                {
                    leaps.Add(struck[i].Keys[0] - struck[i - 1].Keys[0]);
                }
            }
            var strokes = struck.Where(s => s.At.IsMultipleOf(stroke)).Select(s => s.Keys).ToArray();
            if (strokes.Length == 4 && strokes[1][0] > strokes[0][0] && strokes[3][0] > strokes[2][0])
            {
                loose++;
                var plain = IsBass(strokes[0]) && IsBass(strokes[2]) && IsChord(strokes[1]) && IsChord(strokes[3]);
                strict += plain && struck.Count == 4 ? 1 : 0;
            }

            bool IsBeat(ScoreTime at) => at.IsMultipleOf(stroke) && at.Round(stroke) % 2 == 0;
            bool IsBassStroke((ScoreTime At, int[] Keys) s) => IsBeat(s.At) && (IsBass(s.Keys) || IsTenth(s.Keys));
        }
        sheet.Spread("bass", StyleMessages.Bass, StyleUnit.Key, bass);
        sheet.Spread("chord_low", StyleMessages.ChordLow, StyleUnit.Key, low);
        sheet.Spread("chord_high", StyleMessages.ChordHigh, StyleUnit.Key, high);
        sheet.Spread("leap_up", StyleMessages.LeapUp, StyleUnit.Semitones, leaps);
        sheet.Share("strict", StyleMessages.Strict, strict, bars.Count);
        sheet.Share("loose", StyleMessages.Loose, loose, bars.Count);
    }

    private static bool IsBass(int[] keys) => keys.Length == 1 || keys.Length == 2 && keys[1] - keys[0] == 12;

    private static bool IsTenth(int[] keys) => keys.Length == 2 && keys[1] - keys[0] is (15 or 16);

    private static bool IsChord(int[] keys) => keys.Length > 1 && !IsBass(keys) && !IsTenth(keys);
}
