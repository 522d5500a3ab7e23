namespace Stridewright.Practice.Listening.Search;

/// <summary>When each chord of a stretch was played: where notes of it are known their median, else on the line between
/// its neighbours.</summary>
internal sealed class TimeMap
{
    private const double SlowestQuarter = 4; // seconds, before and after what was played
    private readonly ChordTable _chords;
    private readonly int _first;
    private readonly List<double>[] _onsets; // of the notes of each chord

    /// <param name="first">First chord of the map.</param>
    /// <param name="last">Last chord of the map.</param>
    /// <param name="known">Chords and the onsets of notes in them.</param>
    public TimeMap(ChordTable chords, int first, int last, IEnumerable<(int Chord, double Onset)> known)
    {
        (_chords, _first) = (chords, first);
        _onsets = new List<double>[last - first + 1];
        foreach (var (chord, onset) in known)
        {
            (_onsets[chord - first] ??= []).Add(onset);
        }
        foreach (var onsets in _onsets)
        {
            onsets?.Sort();
        }
        Quarter = QuarterOf();
    }

    /// <summary>Median length of a quarter, in seconds.</summary>
    public double Quarter { get; }

    /// <summary>When a chord was played, one onset that is known of it left out (not a number: none left out).</summary>
    public double At(int chord, double without = double.NaN)
    {
        if (Own(chord, without) is { } own)
        {
            return own;
        }
        var (before, after) = (Neighbour(chord, -1), Neighbour(chord, 1));
        return (before, after) switch
        {
            ({ } b, { } a) => Between(b, a, chord),
            ({ } b, null) => Beyond(b, chord),
            (null, { } a) => Beyond(a, chord),
            _ => 0,
        };
    }

    private double? Own(int chord, double without)
    {
        if (_onsets[chord - _first] is not { } onsets)
        {
            return null;
        }
        var skip = double.IsNaN(without) ? -1 : onsets.BinarySearch(without);
        var count = onsets.Count - (skip >= 0 ? 1 : 0);
        if (count == 0)
        {
            return null;
        }
        double Nth(int i) => onsets[skip >= 0 && i >= skip ? i + 1 : i];
        return (Nth((count - 1) / 2) + Nth(count / 2)) / 2;
    }

    private (double Beats, double Seconds)? Neighbour(int chord, int step)
    {
        for (var i = chord + step; i >= _first && i < _first + _onsets.Length; i += step)
        {
            if (Own(i, double.NaN) is { } seconds)
            {
                return (_chords.Beats[i], seconds);
            }
        }
        return null;
    }

    private double Between((double Beats, double Seconds) before, (double Beats, double Seconds) after, int chord)
    {
        var share = (_chords.Beats[chord] - before.Beats) / (after.Beats - before.Beats);
        return before.Seconds + share * (after.Seconds - before.Seconds);
    }

    private double Beyond((double Beats, double Seconds) known, int chord) =>
        known.Seconds + (_chords.Beats[chord] - known.Beats) * Quarter;

    private double QuarterOf()
    {
        var steps = new List<double>();
        (double Beats, double Seconds)? last = null;
        for (var i = _first; i < _first + _onsets.Length; i++)
        {
            if (Own(i, double.NaN) is { } seconds)
            {
                if (last is { } before && seconds > before.Seconds)
                {
                    steps.Add((seconds - before.Seconds) / (_chords.Beats[i] - before.Beats));
                }
                last = (_chords.Beats[i], seconds);
            }
        }
        steps.Sort();
        return steps.Count == 0 ? 0.5 : Math.Min(SlowestQuarter, steps[steps.Count / 2]);
    }
}
