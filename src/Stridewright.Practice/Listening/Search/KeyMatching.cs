namespace Stridewright.Practice.Listening.Search;

/// <summary>When a note of the score is expected.</summary>
/// <param name="Note">Index of the expected note.</param>
/// <param name="At">Seconds.</param>
/// <param name="After">When the chord before it was played.</param>
/// <param name="Before">When the chord after it was played.</param>
internal readonly record struct Appointment(int Note, double At, double After, double Before);

/// <summary>
/// Pairs the notes of one key: those of the score, with the seconds at which they are expected, and those of the take. The
/// pairs never cross, and what they gain is the most that can be had: the heaviest increasing chain of possible pairs, each
/// of which gains the more the nearer it is. Order among different keys does not matter: hands may be apart and chords
/// rolled.
/// </summary>
internal sealed class KeyMatching
{
    private const double Whole = 2; // gain of a pair exactly on time
    private const double LeastInOrder = 0.6; // of a pair anywhere between the chords around it

    private readonly List<(int Expected, int Played, double Gain, int Before)> _links = [];
    private readonly int[] _best; // index of the heaviest chain that ends at or before a played note, as a Fenwick tree

    private KeyMatching(int played)
    {
        _best = new int[played + 1];
        Array.Fill(_best, -1);
    }

    /// <summary>Pairs of indexes into the two lists.</summary>
    /// <param name="expected">By time.</param>
    /// <param name="onsets">Seconds, in order.</param>
    /// <param name="reach">Seconds within which a played note may be the expected one.</param>
    public static IEnumerable<(int Expected, int Played)> Pair(
        IReadOnlyList<Appointment> expected,
        IReadOnlyList<double> onsets,
        double reach
    )
    {
        var matching = new KeyMatching(onsets.Count);
        var from = 0;
        for (var e = 0; e < expected.Count; e++)
        {
            var note = expected[e];
            var (low, high) = (Math.Min(note.At - reach, note.After), Math.Max(note.At + reach, note.Before));
            while (from > 0 && onsets[from - 1] >= low)
            {
                from--;
            }
            while (from < onsets.Count && onsets[from] < low)
            {
                from++;
            }
            matching.Add(e, note, onsets, from, high, reach);
        }
        return matching.Chain();
    }

    // The last played note first, so that no chain takes two of them for one expected note.
    private void Add(int e, Appointment note, IReadOnlyList<double> onsets, int from, double high, double reach)
    {
        var to = from;
        while (to < onsets.Count && onsets[to] <= high)
        {
            to++;
        }
        for (var p = to - 1; p >= from; p--)
        {
            if (Gain(note, onsets[p], reach) is > 0 and var gain)
            {
                var before = Heaviest(p);
                _links.Add((e, p, gain + (before < 0 ? 0 : _links[before].Gain), before));
                Raise(p + 1, _links.Count - 1);
            }
        }
    }

    private static double Gain(Appointment note, double onset, double reach)
    {
        var near = Whole * (1 - Math.Abs(onset - note.At) / reach);
        return onset > note.After && onset < note.Before ? Math.Max(near, LeastInOrder) : near;
    }

    private int Heaviest(int played)
    {
        var best = -1;
        for (var i = played; i > 0; i -= i & -i)
        {
            best = Heavier(best, _best[i]);
        }
        return best;
    }

    private void Raise(int place, int link)
    {
        for (var i = place; i < _best.Length; i += i & -i)
        {
            _best[i] = Heavier(_best[i], link);
        }
    }

    private int Heavier(int a, int b) =>
        a < 0 ? b
        : b < 0 || _links[a].Gain >= _links[b].Gain ? a
        : b;

    private IEnumerable<(int Expected, int Played)> Chain()
    {
        for (var at = Heaviest(_best.Length - 1); at >= 0; at = _links[at].Before)
        {
            yield return (_links[at].Expected, _links[at].Played);
        }
    }
}
