namespace Stridewright.Arranging;

/// <summary>Counts the rhythms of a row of bars, each eight bits, a bit a unit, the highest first; of several pieces when
/// filled several times.</summary>
internal sealed class RhythmTally
{
    private const int Sixteen = 16;
    private readonly Dictionary<int, int> _pairs = [];
    private readonly Dictionary<int, int> _alike = [];
    private readonly List<int> _distinct = [];

    /// <summary>Distances in bars at which rhythms are compared.</summary>
    public static int[] Lags { get; } = [1, 2, 3, 4, 8, 16];

    public int Bars { get; private set; }

    /// <summary>Per pattern of the first half bar, 0000 to 1111.</summary>
    public int[] First { get; } = new int[16];

    /// <summary>Per pattern of the second half bar.</summary>
    public int[] Second { get; } = new int[16];

    /// <summary>Per pattern of the whole bar.</summary>
    public Dictionary<int, int> Whole { get; } = [];

    /// <summary>Untied short-long-short figures.</summary>
    public int Untied { get; private set; }

    public int BarsWithUntied { get; private set; }

    public int TiedMid { get; private set; }

    public int TiedBar { get; private set; }

    public int BarsWithFigure { get; private set; }

    public int BarsWithAugmented { get; private set; }

    /// <summary>Sum of the bars' strength (LHL, consecutive).</summary>
    public int Syncopation { get; private set; }

    /// <summary>Mean number of different rhythms in sixteen bars running; null: no piece has so many.</summary>
    public double? DistinctInSixteen => _distinct.Count > 0 ? _distinct.Average() : null;

    /// <param name="patterns">One a bar in order; −1 for a bar that is not measured.</param>
    public void Add(IReadOnlyList<int> patterns)
    {
        var row = patterns.Where(p => p >= 0).ToList();
        for (var i = 0; i < patterns.Count; i++)
        {
            if (patterns[i] >= 0)
            {
                Count(patterns[i], i + 1 < patterns.Count ? patterns[i + 1] : -1);
            }
        }
        foreach (var lag in Lags)
        {
            var pairs = Math.Max(0, row.Count - lag);
            _pairs[lag] = _pairs.GetValueOrDefault(lag) + pairs;
            _alike[lag] =
                _alike.GetValueOrDefault(lag) + row.Take(pairs).Where((bits, i) => bits == row[i + lag]).Count();
        }
        for (var i = 0; i + Sixteen <= row.Count; i += Sixteen)
        {
            _distinct.Add(row.Skip(i).Take(Sixteen).Distinct().Count());
        }
    }

    /// <summary>Bars with the same rhythm at a distance, and all pairs of bars so far apart.</summary>
    public (int Alike, int Pairs) At(int lag) => (_alike.GetValueOrDefault(lag), _pairs.GetValueOrDefault(lag));

    private void Count(int bits, int next)
    {
        // Past the measured bars the next downbeat counts as struck.
        var (untied, mid, line) = Figures.In(bits, next < 0 ? 0xFF : next);
        Bars++;
        First[bits >> 4]++;
        Second[bits & 15]++;
        Whole[bits] = Whole.GetValueOrDefault(bits) + 1;
        Untied += untied;
        BarsWithUntied += untied > 0 ? 1 : 0;
        TiedMid += mid;
        TiedBar += line;
        BarsWithFigure += untied + mid + line > 0 ? 1 : 0;
        BarsWithAugmented += RhythmStyle.IsAugmented(bits, next) ? 1 : 0;
        Syncopation += RhythmStyle.Syncopation(bits, next < 0 || next >> 7 == 1);
    }
}
