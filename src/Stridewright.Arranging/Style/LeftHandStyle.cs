using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Registers, leaps, kinds and share of stride in the left hand: bass on the four strokes' first and third, chords
/// between.</summary>
internal static class LeftHandStyle
{
    private static readonly string[] Kinds =
    [
        "octave",
        "single",
        "two_note",
        "three_note",
        "four_note",
        "tenth",
        "none",
    ];

    public static void Add(StyleSheet sheet, Score score, List<int> bars, IEnumerable<Sounding> left)
    {
        var byBar = left.ToLookup(s => s.Bar);
        List<int> bass = [],
            low = [],
            high = [],
            span = [],
            spread = [],
            leaps = [];
        List<string> beats = [],
            offBeats = [];
        var patterns = new Dictionary<string, int>();
        var (strict, loose, alike, pairs) = (0, 0, 0, 0);
        foreach (var bar in bars)
        {
            var stroke = score.Bars[bar].Metre.BarLength / 4;
            var struck = LeftStroke.Of(byBar[bar]);
            var strokes = Enumerable
                .Range(0, 4)
                .Select(i => struck.Find(s => s.At == stroke * i)?.Keys ?? [])
                .ToArray();
            spread.AddRange(struck.Select(s => s.Keys[^1] - s.Keys[0]));
            for (var i = 0; i < strokes.Length; i++)
            {
                var (keys, isBeat) = (strokes[i], i % 2 == 0);
                (isBeat ? beats : offBeats).Add(Kind(keys));
                if (isBeat && keys.Length > 0)
                {
                    bass.Add(keys[0]);
                }
                else if (!isBeat && LeftStroke.IsChord(keys))
                {
                    low.Add(keys[0]);
                    high.Add(keys[^1]);
                    span.Add(keys[^1] - keys[0]);
                }
            }
            leaps.AddRange(Leaps(struck, stroke));
            var pattern = string.Concat(
                Enumerable.Range(0, 8).Select(i => struck.Exists(s => s.At == stroke / 2 * i) ? '1' : '0')
            );
            patterns[pattern] = patterns.GetValueOrDefault(pattern) + 1;
            if (LeftStroke.IsChord(strokes[1]) && LeftStroke.IsChord(strokes[3]))
            {
                pairs++;
                alike += strokes[1].SequenceEqual(strokes[3]) ? 1 : 0;
            }
            if (strokes.All(s => s.Length > 0) && strokes[1][0] > strokes[0][0] && strokes[3][0] > strokes[2][0])
            {
                loose++;
                strict += struck.Count == 4 && IsPlain(strokes) ? 1 : 0;
            }
        }
        sheet.Open(StyleMessages.StrideSection);
        sheet.Share("strict", StyleMessages.Strict, strict, bars.Count);
        sheet.Share("loose", StyleMessages.Loose, loose, bars.Count);
        foreach (
            var (name, count) in patterns.OrderByDescending(p => p.Value).ThenBy(p => p.Key, StringComparer.Ordinal)
        )
        {
            if (sheet.Knows("left_" + name) || 20 * count >= bars.Count)
            {
                sheet.Share("left_" + name, StyleMessages.LeftBar(name), count, bars.Count);
            }
        }
        AddKinds(sheet, "beat_", StyleMessages.OnBeat, beats);
        AddKinds(sheet, "off_", StyleMessages.OffBeat, offBeats);
        sheet.Share("chords_alike", StyleMessages.ChordsAlike, alike, pairs);
        BassMotion.Add(sheet, score, bars, byBar);
        sheet.Open(StyleMessages.LeftRegisterSection);
        sheet.Spread("bass", StyleMessages.Bass, StyleUnit.Key, bass);
        sheet.Spread("chord_low", StyleMessages.ChordLow, StyleUnit.Key, low);
        sheet.Spread("chord_high", StyleMessages.ChordHigh, StyleUnit.Key, high);
        sheet.Spread("chord_span", StyleMessages.ChordSpan, StyleUnit.Semitones, span);
        sheet.Spread("leap_up", StyleMessages.LeapUp, StyleUnit.Semitones, leaps);
        sheet.Share("left_over_octave", StyleMessages.LeftOverOctave, spread.Count(s => s > 12), spread.Count);
    }

    private static IEnumerable<int> Leaps(List<LeftStroke> struck, ScoreTime stroke)
    {
        for (var i = 1; i < struck.Count; i++)
        {
            var (from, to) = (struck[i - 1], struck[i]);
            if (IsBeat(from.At) && LeftStroke.IsBass(from.Keys) && !IsBeat(to.At) && LeftStroke.IsChord(to.Keys))
            {
                yield return to.Keys[0] - from.Keys[0];
            }
        }

        bool IsBeat(ScoreTime at) => at.IsMultipleOf(stroke * 2);
    }

    private static bool IsPlain(int[][] strokes) =>
        Kind(strokes[0]) is "single" or "octave"
        && Kind(strokes[2]) is "single" or "octave"
        && LeftStroke.IsChord(strokes[1])
        && LeftStroke.IsChord(strokes[3]);

    private static void AddKinds(StyleSheet sheet, string key, Func<string, string> words, List<string> found)
    {
        foreach (var kind in Kinds.OrderByDescending(k => found.Count(f => f == k)))
        {
            var count = found.Count(f => f == kind);
            if (count > 0 || sheet.Knows(key + kind))
            {
                sheet.Share(key + kind, words(kind), count, found.Count);
            }
        }
    }

    private static string Kind(int[] keys) =>
        keys.Length switch
        {
            0 => "none",
            1 => "single",
            2 when LeftStroke.IsOctave(keys) => "octave",
            2 when LeftStroke.IsTenth(keys) => "tenth",
            2 => "two_note",
            3 => "three_note",
            _ => "four_note",
        };
}
