using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>What one hand strikes at one moment, and what it then has down.</summary>
/// <param name="End">When the longest of the struck keys is let go.</param>
/// <param name="Struck">Keys struck, lowest first, no doubles, at least one.</param>
/// <param name="Keys">Keys struck and still held, lowest first, no doubles.</param>
/// <param name="Rolled">Some of the struck keys are part of a rolled chord.</param>
internal sealed record Onset(
    Hand Hand,
    ScoreTime Start,
    ScoreTime End,
    int Bar,
    ScoreTime At,
    int[] Struck,
    int[] Keys,
    bool Rolled
)
{
    public int Low => Struck[0];

    public int High => Struck[^1];

    public bool IsOneKey => Keys.Length == 1;

    /// <summary>A single key, an octave or a tenth: what a stride bass is made of.</summary>
    public bool IsBassShape => Struck.Length == 1 || Struck.Length == 2 && High - Low is 12 or 15 or 16;

    /// <summary>
    /// The onsets of a hand in time order. The keys of a rolled chord wider than the hand are left to the pedal: they
    /// count as let go after their own onset. Keys outside 0–127 are passed over.
    /// </summary>
    public static List<Onset> Of(Passage passage, Hand hand, Reach reach)
    {
        var onsets = new List<Onset>();
        var held = new List<Sounding>();
        var mine = passage
            .Soundings.Where(s => s.Hand == hand && s.Key is >= 0 and <= 127 && s.End > s.Start)
            .ToArray();
        for (int first = 0, next; first < mine.Length; first = next)
        {
            var start = mine[first].Start;
            for (next = first + 1; next < mine.Length && mine[next].Start == start; next++) { }
            var group = mine.AsSpan(first..next);
            held.RemoveAll(s => s.End <= start);
            var struck = Sorted(group);
            var (rolled, end) = (false, start);
            foreach (var sounding in group)
            {
                rolled |= sounding.Rolled;
                end = ScoreTime.Max(end, sounding.End);
            }
            var keys = held.Count == 0 ? struck : Sorted([.. group, .. held]);
            onsets.Add(new(hand, start, end, group[0].Bar, group[0].At, struck, keys, rolled));
            if (!rolled || reach.Of(struck[0], struck[^1]) != Stretch.Out)
            {
                held.AddRange(group);
            }
        }
        return onsets;
    }

    private static int[] Sorted(ReadOnlySpan<Sounding> soundings)
    {
        var keys = new int[soundings.Length];
        for (var i = 0; i < keys.Length; i++)
        {
            keys[i] = soundings[i].Key;
        }
        Array.Sort(keys);
        var count = 1;
        for (var i = 1; i < keys.Length; i++)
        {
            if (keys[i] != keys[count - 1])
            {
                keys[count++] = keys[i];
            }
        }
        return count == keys.Length ? keys : keys[..count];
    }
}
