using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>
/// How hard a hand's part is, from 1 to 100. Six parts are each measured in what is already demanding, bent so that
/// more of the same adds ever less (1 − e^−x), and added with their weights; so effort rises with every part and
/// never passes 100. It orders settings of like music; it claims no scale beyond that.
/// </summary>
internal static class EffortMeasure
{
    /// <summary>Effort of silence, and the most there is.</summary>
    public const double Least = 1,
        Most = 100;

    /// <summary>Strokes per second that are demanding: a wrist's sustained octaves (common practice).</summary>
    private const double DemandingStrokes = LeapRules.OctaveStrokesPerSecond;

    /// <summary>Bits per second of naive pointing (Fitts 1954): faster leaps must be learned.</summary>
    private const double DemandingLeap = 11;

    /// <summary>Mean stretch, in spans, of a hand that is open all the time: an octave on the median hand is 0.8.</summary>
    private const double DemandingStretch = 0.8;

    /// <summary>Keys beyond the first: a chord of three.</summary>
    private const double DemandingKeys = 2;

    /// <summary>Share of syncopated strokes: a bar of printed rags has one to two in eight (Volk and de Haas 2013).</summary>
    private const double DemandingSyncopation = 0.25;

    // Leap, reach and density carry the effort of this style; syncopation is learned before octaves; strain is limited
    // elsewhere and only tips the scale. They add up to 1.
    private const double PaceWeight = 0.25,
        LeapWeight = 0.25,
        StretchWeight = 0.2,
        KeysWeight = 0.1,
        SyncopationWeight = 0.15,
        StrainWeight = 0.05;

    public static Effort Of(Passage passage, HandPart right, HandPart left)
    {
        var (rightEffort, leftEffort) = (
            Of(right, passage.TotalSeconds, passage),
            Of(left, passage.TotalSeconds, passage)
        );
        var rightBars = right.ByBar(passage.Bars.Count);
        var leftBars = left.ByBar(passage.Bars.Count);
        var bars = passage.Bars.Select(
            (bar, i) =>
            {
                var seconds = passage.BarSeconds(i);
                var value = Together(Of(rightBars[i], seconds, passage).Value, Of(leftBars[i], seconds, passage).Value);
                return new BarEffort(i, bar.Number, value);
            }
        );
        return new()
        {
            Overall = Together(rightEffort.Value, leftEffort.Value),
            Right = rightEffort,
            Left = leftEffort,
            Bars = bars.ToValueList(),
        };
    }

    private static double Together(double a, double b) => (2 * Math.Max(a, b) + Math.Min(a, b)) / 3;

    private static HandEffort Of(HandPart part, double seconds, Passage passage)
    {
        var reach = part.Reach;
        var count = part.Onsets.Count;
        var wide = part.Onsets.Where(o => !o.IsOneKey).ToList();
        var stretches = wide.Where(ReachRules.IsStretch).ToList();
        var rates = part.Moves.Select(m => m.Rate).Order().ToList();
        var effort = new HandEffort
        {
            Value = Least,
            StrokesPerSecond = seconds > 0 ? count / seconds : 0,
            KeysPerStroke = Mean(part.Onsets, o => o.Struck.Length),
            LeapBitsPerSecond = Percentile(rates, 0.95),
            MedianLeapBitsPerSecond = Percentile(rates, 0.5),
            StrainedShare = Mean(stretches, o => ReachRules.StretchOf(o, reach) >= Stretch.Strained ? 1 : 0),
            MeanStretch = Mean(wide, o => ReachRules.Width(o, reach) / reach.SpanMm),
            StretchedShare = count == 0 ? 0 : (double)wide.Count / count,
            SyncopatedShare = Mean(part.Onsets, o => passage.IsSyncopated(o) ? 1 : 0),
        };
        return count == 0 ? effort : effort with { Value = Value(effort) };
    }

    private static double Value(HandEffort effort)
    {
        var leap = (effort.LeapBitsPerSecond + effort.MedianLeapBitsPerSecond) / 2;
        var load =
            PaceWeight * Bend(effort.StrokesPerSecond / DemandingStrokes)
            + LeapWeight * Bend(leap / DemandingLeap)
            + StretchWeight * Bend(effort.MeanStretch * effort.StretchedShare / DemandingStretch)
            + KeysWeight * Bend((effort.KeysPerStroke - 1) / DemandingKeys)
            + SyncopationWeight * Bend(effort.SyncopatedShare / DemandingSyncopation)
            + StrainWeight * Bend(effort.StrainedShare / Reach.StrainedShareLimit);
        return Least + (Most - Least) * load;
    }

    private static double Bend(double part) => 1 - Math.Exp(-part);

    private static double Mean(List<Onset> onsets, Func<Onset, double> value) =>
        onsets.Count == 0 ? 0 : onsets.Average(value);

    /// <summary>Linear between neighbours; 0 of nothing.</summary>
    private static double Percentile(List<double> sorted, double share)
    {
        if (sorted.Count == 0)
        {
            return 0;
        }
        var place = (sorted.Count - 1) * share;
        var below = (int)place;
        var above = Math.Min(below + 1, sorted.Count - 1);
        return sorted[below] + (sorted[above] - sorted[below]) * (place - below);
    }
}
