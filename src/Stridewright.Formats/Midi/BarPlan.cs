using Stridewright.Music;

namespace Stridewright.Formats.Midi;

/// <summary>Bars on the time line of a file, from its start: where each begins, how long it is, and its metre.</summary>
internal sealed class BarPlan
{
    private readonly List<(ScoreTime At, Metre Metre, ScoreTime Until)> _stretches = [];

    /// <param name="metres">By tick; 4/4 before the first and where there is none.</param>
    public BarPlan(IEnumerable<MetreChange> metres, int ticksPerQuarter)
    {
        var changes = new List<(ScoreTime At, Metre Metre)> { (ScoreTime.Zero, Metre.FourFour) };
        foreach (var (tick, metre) in metres.OrderBy(m => m.Tick))
        {
            var at = ScoreTime.Sixteenth * new ScoreTime(tick, 4L * ticksPerQuarter).Round(ScoreTime.Sixteenth);
            if (at == changes[^1].At)
            {
                changes[^1] = (at, metre);
            }
            else if (metre != changes[^1].Metre)
            {
                changes.Add((at, metre));
            }
        }
        for (var i = 0; i < changes.Count; i++)
        {
            var until = i + 1 < changes.Count ? changes[i + 1].At : new ScoreTime(long.MaxValue >> 20, 1);
            _stretches.Add((changes[i].At, changes[i].Metre, until));
        }
    }

    /// <summary>The bar that a time lies in. A bar in which the metre changes ends there.</summary>
    public PlannedBar At(ScoreTime time)
    {
        var (low, high) = (0, _stretches.Count - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            (low, high) = _stretches[middle].At <= time ? (middle, high) : (low, middle - 1);
        }
        var (at, metre, until) = _stretches[low];
        var bars = (time - at).Per(metre.BarLength);
        var start = at + metre.BarLength * (bars.Numerator / bars.Denominator);
        return new(start, ScoreTime.Min(start + metre.BarLength, until), metre);
    }
}

/// <summary>One bar: where it begins and ends.</summary>
internal readonly record struct PlannedBar(ScoreTime Start, ScoreTime End, Metre Metre);
