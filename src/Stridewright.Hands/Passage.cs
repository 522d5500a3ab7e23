using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>A score as the judge reads it: key presses in written order, bars in time, and the tempo at any place.</summary>
internal sealed class Passage
{
    /// <summary>Printed tempi outside this range, in quarters per minute, are taken for slips and passed over.</summary>
    private const double SlowestTempo = 1,
        FastestTempo = 10_000;

    private readonly ScoreTime[] _starts;
    private readonly List<(ScoreTime At, double QuartersPerMinute)> _tempi;

    /// <param name="quartersPerMinute">Tempo throughout; null: as printed, before the first print the metre's usual.</param>
    /// <param name="speed">Every tempo times this, above 0.</param>
    public Passage(Score score, double? quartersPerMinute, double speed = 1)
    {
        Bars = score.Bars;
        _starts = new ScoreTime[Bars.Count + 1];
        for (var bar = 0; bar < Bars.Count; bar++)
        {
            _starts[bar + 1] = _starts[bar] + Bars[bar].Length;
        }
        _tempi = quartersPerMinute is { } fixedTempo ? [(ScoreTime.Zero, fixedTempo)] : ReadTempi();
        if (speed != 1)
        {
            _tempi = _tempi.ConvertAll(t => (t.At, t.QuartersPerMinute * speed));
        }
        Soundings = Timeline.Of(score);
    }

    public ValueList<ScoreBar> Bars { get; }

    /// <summary>Ordered by time, hand and key. Keys may lie off the keyboard.</summary>
    public ValueList<Sounding> Soundings { get; }

    /// <summary>When a bar begins, from the start of the first.</summary>
    public ScoreTime StartOf(int bar) => _starts[bar];

    public double TotalSeconds => Seconds(_starts[0], _starts[^1]);

    public double BarSeconds(int bar) => Seconds(_starts[bar], _starts[bar + 1]);

    /// <summary>Words such as <c>bar 12 beat 2.5</c>; beats are the metre's, in 6/8 dotted quarters.</summary>
    public string Place(int bar, ScoreTime at)
    {
        var beat = Math.Round(1 + at.ToQuarters() / Bars[bar].Metre.Beat.ToQuarters(), 3);
        return string.Create(CultureInfo.InvariantCulture, $"bar {Bars[bar].Number} beat {beat}");
    }

    /// <summary>Quarters per minute in force at a time.</summary>
    public double TempoAt(ScoreTime time) => _tempi[SegmentAt(time)].QuartersPerMinute;

    /// <summary>Seconds between two times, every change of tempo on the way counted.</summary>
    public double Seconds(ScoreTime from, ScoreTime to)
    {
        var seconds = 0.0;
        for (var i = _tempi.Count == 0 ? 0 : SegmentAt(from); i < _tempi.Count && from < to; i++)
        {
            var end = i + 1 < _tempi.Count ? ScoreTime.Min(to, _tempi[i + 1].At) : to;
            if (end > from)
            {
                seconds += (end - from).ToQuarters() * 60 / _tempi[i].QuartersPerMinute;
                from = end;
            }
        }
        return seconds;
    }

    /// <summary>
    /// True for a stroke on a weak place that sounds through the next stronger one: an off-beat held over a beat, a
    /// sixteenth held over the next eighth (the idea of Longuet-Higgins and Lee 1984, strokes in place of rests).
    /// </summary>
    public bool IsSyncopated(Onset onset)
    {
        var bar = Bars[onset.Bar];
        var lead =
            onset.Bar == 0 && bar.Length < bar.Metre.BarLength ? bar.Metre.BarLength - bar.Length : ScoreTime.Zero;
        var at = lead + onset.At;
        var end = at + (onset.End - onset.Start);
        var beat = bar.Metre.Beat;
        if (at.IsMultipleOf(beat))
        {
            return false;
        }
        var stronger = beat;
        for (var part = beat / (bar.Metre.IsCompound ? 3 : 2); part >= new ScoreTime(1, 64); part /= 2)
        {
            if (at.IsMultipleOf(part))
            {
                return end > Next(at, stronger);
            }
            stronger = part;
        }
        return end > Next(at, beat); // no binary place: a tuplet
    }

    private static ScoreTime Next(ScoreTime at, ScoreTime unit)
    {
        var count = at.Per(unit);
        return unit * (count.Numerator / count.Denominator + 1);
    }

    private List<(ScoreTime, double)> ReadTempi()
    {
        var printed = Bars.SelectMany(
                (bar, i) => bar.Directions.Select(d => (At: _starts[i] + d.At, d.QuartersPerMinute))
            )
            .Where(t => t.QuartersPerMinute is >= SlowestTempo and <= FastestTempo)
            .Select(t => (At: ScoreTime.Max(t.At, ScoreTime.Zero), QuartersPerMinute: t.QuartersPerMinute!.Value))
            .OrderBy(t => t.At)
            .ThenBy(t => t.QuartersPerMinute)
            .ToList();
        var usual = Bars.Select(
                (bar, i) => (At: _starts[i], QuartersPerMinute: UsualTempo.QuartersPerMinute(bar.Metre))
            )
            .TakeWhile(t => printed.Count == 0 || t.At < printed[0].At);
        return [.. usual, .. printed];
    }

    /// <summary>Index of the last change of tempo not after a time.</summary>
    private int SegmentAt(ScoreTime time)
    {
        var (low, high) = (0, _tempi.Count - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            (low, high) = _tempi[middle].At <= time ? (middle, high) : (low, middle - 1);
        }
        return low;
    }
}
