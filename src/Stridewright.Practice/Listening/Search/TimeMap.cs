namespace Stridewright.Practice.Listening.Search;

/// <summary>When each chord of a stretch was played: where notes of it are known their median, else on the line between
/// its neighbours.</summary>
internal sealed class TimeMap
{
    private const double SlowestQuarter = 4; // seconds, where nothing was played
    private const double UsualQuarter = 0.5;
    private readonly ChordTable _chords;
    private readonly int _first;
    private readonly List<double>?[] _onsets; // of the notes of each chord, in order
    private readonly int[] _before; // nearest chord before each, of which a note is known; -1: none
    private readonly int[] _after;

    /// <param name="first">First chord of the map.</param>
    /// <param name="last">Last chord of the map.</param>
    /// <param name="known">Chords and the onsets of notes in them.</param>
    public TimeMap(ChordTable chords, int first, int last, IEnumerable<(int Chord, double Onset)> known)
    {
        (_chords, _first) = (chords, first);
        _onsets = new List<double>?[last - first + 1];
        foreach (var (chord, onset) in known)
        {
            (_onsets[chord - first] ??= []).Add(onset);
        }
        (_before, _after) = (new int[_onsets.Length], new int[_onsets.Length]);
        var near = -1;
        for (var i = 0; i < _onsets.Length; i++)
        {
            _before[i] = near;
            _onsets[i]?.Sort();
            near = _onsets[i] is null ? near : i;
        }
        near = -1;
        for (var i = _onsets.Length - 1; i >= 0; i--)
        {
            _after[i] = near;
            near = _onsets[i] is null ? near : i;
        }
        Quarter = QuarterOf();
    }

    /// <summary>Median length of a quarter, in seconds.</summary>
    public double Quarter { get; }

    /// <summary>When a note of a chord is expected, one onset that is known of the chord left out (not a number: none).</summary>
    public Appointment For(int note, double without)
    {
        var i = _chords.ChordOf[note] - _first;
        var after = _before[i] < 0 ? double.NegativeInfinity : Middle(_before[i]);
        var before = _after[i] < 0 ? double.PositiveInfinity : Middle(_after[i]);
        return new Appointment(note, Expected(i, without), after, before);
    }

    private double Expected(int i, double without) =>
        _onsets[i] is { } own && Median(own, without) is { } known ? known
        : _before[i] >= 0 && _after[i] >= 0 ? Middle(_before[i]) + Share(i) * (Middle(_after[i]) - Middle(_before[i]))
        : _before[i] >= 0 ? Middle(_before[i]) + (Beats(i) - Beats(_before[i])) * Quarter
        : _after[i] >= 0 ? Middle(_after[i]) - (Beats(_after[i]) - Beats(i)) * Quarter
        : Middle(i);

    /// <summary>When a chord was played, in seconds.</summary>
    public double At(int chord) => Expected(chord - _first, double.NaN);

    /// <summary>Whether enough is known of and around a note's chord to say when it is expected, one onset of the chord
    /// left out.</summary>
    /// <param name="beats">How far its neighbours may lie, in quarters.</param>
    public bool Knows(int note, double without, double beats)
    {
        var i = _chords.ChordOf[note] - _first;
        return (_onsets[i] is { } own && Median(own, without) is not null)
            || (
                _before[i] >= 0
                && _after[i] >= 0
                && Beats(i) - Beats(_before[i]) <= beats
                && Beats(_after[i]) - Beats(i) <= beats
            );
    }

    private double Share(int i) => (Beats(i) - Beats(_before[i])) / (Beats(_after[i]) - Beats(_before[i]));

    private double Beats(int i) => _chords.Beats[_first + i];

    private double Middle(int i) => Median(_onsets[i]!, double.NaN)!.Value;

    private static double? Median(List<double> onsets, double without)
    {
        var skip = double.IsNaN(without) ? -1 : onsets.BinarySearch(without);
        var count = onsets.Count - (skip >= 0 ? 1 : 0);
        double Nth(int i) => onsets[skip >= 0 && i >= skip ? i + 1 : i];
        return count == 0 ? null : (Nth((count - 1) / 2) + Nth(count / 2)) / 2;
    }

    private double QuarterOf()
    {
        var steps = new List<double>();
        for (var i = 0; i < _onsets.Length; i++)
        {
            if (_onsets[i] is not null && _before[i] >= 0 && Middle(i) > Middle(_before[i]))
            {
                steps.Add((Middle(i) - Middle(_before[i])) / (Beats(i) - Beats(_before[i])));
            }
        }
        steps.Sort();
        return steps.Count == 0 ? UsualQuarter : Math.Min(SlowestQuarter, steps[steps.Count / 2]);
    }
}
