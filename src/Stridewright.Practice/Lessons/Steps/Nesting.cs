using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>How much of an easier setting stands again in a harder one.</summary>
public static class Nesting
{
    private const int Octave = 12;

    /// <summary>Share of a hand's strokes that stand again: of the right hand its top keys, at their place or ahead of it by up
    /// to half a beat, as syncopation has it; of the left its chords, and the tones of its basses, at their place. 1 of
    /// nothing.</summary>
    public static double Share(Score easier, Score harder, Hand hand)
    {
        ArgumentNullException.ThrowIfNull(easier);
        ArgumentNullException.ThrowIfNull(harder);
        var (here, there) = (Strokes(easier, hand), Strokes(harder, hand));
        if (here.Count == 0)
        {
            return 1;
        }
        var again =
            hand == Hand.Left
                ? here.Count(s => there.TryGetValue(s.Key, out var keys) && IsSameLeft(s.Value, keys))
                : RightAgain(here, there, easier.Bars[0].Metre.Beat / 2);
        return (double)again / here.Count;
    }

    /// <summary>Share of the strokes of the fuller one of two settings that the other has not, with the same keys at the same
    /// place.</summary>
    internal static double Changed(Score a, Score b, Hand hand)
    {
        var (first, second) = (Strokes(a, hand), Strokes(b, hand));
        var same = first.Count(s => second.TryGetValue(s.Key, out var keys) && keys.SequenceEqual(s.Value));
        var most = Math.Max(first.Count, second.Count);
        return most == 0 ? 0 : 1 - (double)same / most;
    }

    private static int RightAgain(
        SortedDictionary<ScoreTime, int[]> here,
        SortedDictionary<ScoreTime, int[]> there,
        ScoreTime lead
    )
    {
        var harder = there.ToList();
        var (count, first) = (0, 0);
        foreach (var (time, keys) in here)
        {
            while (first < harder.Count && harder[first].Key < time - lead)
            {
                first++;
            }
            for (var i = first; i < harder.Count && harder[i].Key <= time; i++)
            {
                if (harder[i].Value[^1] == keys[^1])
                {
                    count++;
                    break;
                }
            }
        }
        return count;
    }

    private static bool IsSameLeft(int[] easier, int[] harder) =>
        IsChord(easier) ? easier.SequenceEqual(harder) : harder.Any(key => (key - easier[0]) % Octave == 0);

    private static bool IsChord(int[] keys) => keys.Length > 2 || (keys.Length == 2 && keys[1] - keys[0] < Octave);

    // By time from the start, the keys struck, lowest first.
    private static SortedDictionary<ScoreTime, int[]> Strokes(Score score, Hand hand) =>
        new(
            Timeline
                .Of(score)
                .Where(s => s.Hand == hand && s.End > s.Start)
                .GroupBy(s => s.Start)
                .ToDictionary(g => g.Key, g => g.Select(s => s.Key).Distinct().Order().ToArray())
        );
}
