using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>Ties of a score from which notes were taken.</summary>
internal static class Ties
{
    /// <summary>The score without ties that lead to no note of the same pitch in the same voice, or come from none.</summary>
    public static Score Mended(Score score)
    {
        var bars = score.Bars.ToArray();
        foreach (var voice in score.Bars.SelectMany(b => b.Voices).Select(v => (v.Hand, v.Number)).Distinct())
        {
            Mend(bars, voice.Hand, voice.Number);
        }
        return score with { Bars = bars.ToValueList() };
    }

    private static void Mend(ScoreBar[] bars, Hand hand, int number)
    {
        var line = new List<(int Bar, int Voice, int Event, ScoreEvent Source)>();
        for (var bar = 0; bar < bars.Length; bar++)
        {
            for (var v = 0; v < bars[bar].Voices.Count; v++)
            {
                var voice = bars[bar].Voices[v];
                if (voice.Hand == hand && voice.Number == number)
                {
                    line.AddRange(voice.Events.Select((e, i) => (bar, v, i, e)));
                }
            }
        }
        var mended = line.Select(x => x.Source).ToArray();
        for (var i = 0; i < line.Count; i++)
        {
            var (before, after) = (Neighbour(line, i, -1, bars), Neighbour(line, i, 1, bars));
            mended[i] = mended[i] with
            {
                Notes = mended[i]
                    .Notes.Select(n =>
                        n with
                        {
                            TieStart = n.TieStart && Has(after, n.Pitch),
                            TieStop = n.TieStop && Has(before, n.Pitch),
                        }
                    )
                    .ToValueList(),
            };
        }
        foreach (var group in line.Index().GroupBy(x => (x.Item.Bar, x.Item.Voice)))
        {
            var (bar, v) = group.Key;
            var voices = bars[bar].Voices.ToArray();
            voices[v] = voices[v] with { Events = group.Select(x => mended[x.Index]).ToValueList() };
            bars[bar] = bars[bar] with { Voices = voices.ToValueList() };
        }
    }

    private static bool Has(ScoreEvent? e, Pitch pitch) => e?.Notes.Any(n => n.Pitch == pitch) ?? false;

    // The event right before or after in the same voice, in the same bar or the next one to it.
    private static ScoreEvent? Neighbour(
        List<(int Bar, int Voice, int Event, ScoreEvent Source)> line,
        int index,
        int way,
        ScoreBar[] bars
    )
    {
        var at = index + way;
        if (at < 0 || at >= line.Count || Math.Abs(line[at].Bar - line[index].Bar) > 1)
        {
            return null;
        }
        var (first, second) = way > 0 ? (line[index], line[at]) : (line[at], line[index]);
        var end = first.Source.At + first.Source.Length;
        return first.Bar == second.Bar
            ? (end == second.Source.At ? line[at].Source : null)
            : (end == bars[first.Bar].Length && second.Source.At.IsZero ? line[at].Source : null);
    }
}
