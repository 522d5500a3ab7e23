using Stridewright.Arranging;

namespace Stridewright.Trials;

/// <summary>Rhythms of settings in 2/4 or 4/4, counted as style is, and what became of their tunes.</summary>
internal sealed class RhythmCount
{
    private static readonly int[] Lags = [1, 2, 3, 4, 8];
    private readonly List<double> _figureShares = [];
    private int _tuneNotes;
    private int _displaced;
    private int _fillers;
    private int _onsets;

    public RhythmTally Tally { get; } = new();

    public void Add(Lattice lattice, Ragged ragged)
    {
        var bits = Figures.Patterns(lattice, ragged.Onsets);
        var (early, late) = Ragging.Displaced(lattice, ragged);
        _tuneNotes += lattice.Notes.Length;
        _displaced += early + late;
        _onsets += ragged.Onsets.Length;
        _fillers += ragged.Onsets.Count(o => o.IsFiller);
        _figureShares.Add(Figures.Share(bits));
        Tally.Add(bits);
    }

    /// <summary>Jensen–Shannon divergence (base 2) of the pooled half bars from the published ones.</summary>
    public double Divergence()
    {
        var pooled = Tally.First.Zip(Tally.Second, (a, b) => a + b).ToArray();
        var (sum, total) = ((double)pooled.Sum(), Wanted.HalfBars.Sum());
        var divergence = 0.0;
        for (var i = 0; i < 16; i++)
        {
            var (p, q) = (pooled[i] / sum, Wanted.HalfBars[i] / total);
            var m = (p + q) / 2;
            divergence += (p > 0 ? p * Math.Log2(p / m) : 0) / 2 + (q > 0 ? q * Math.Log2(q / m) : 0) / 2;
        }
        return divergence;
    }

    public override string ToString() =>
        FormattableString.Invariant(
            $"bars {Tally.Bars} jsd {Divergence():0.000} untied {PerBar(Tally.Untied):0.000} tied mid {PerBar(Tally.TiedMid):0.000} bar {PerBar(Tally.TiedBar):0.000} any {PerBar(Tally.BarsWithFigure):0.000} in range {_figureShares.Count(s => s is >= 0.05 and <= 0.65)}/{_figureShares.Count} displaced {(double)_displaced / _tuneNotes:0.000} fillers {(double)_fillers / _onsets:0.000} lags 1,2,3,4,8: {string.Join(" ", Lags.Select(AtLag))}"
        );

    private double PerBar(int count) => (double)count / Tally.Bars;

    private string AtLag(int lag)
    {
        var (alike, pairs) = Tally.At(lag);
        return FormattableString.Invariant($"{(double)alike / Math.Max(1, pairs):0.000}");
    }
}
