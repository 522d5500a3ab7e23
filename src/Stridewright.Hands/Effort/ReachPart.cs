namespace Stridewright.Hands;

/// <summary>How wide the hand is opened, and how often: stretch in spans times the share of strokes that have one.</summary>
internal static class ReachPart
{
    /// <summary>Mean stretch, in spans, of a hand that is open all the time: an octave on the median hand is 0.8.</summary>
    private const double DemandingStretch = 0.8;

    public static double Amount(EffortScope scope) =>
        EffortNumbers.Bend(MeanStretch(scope) * StretchedShare(scope) / DemandingStretch);

    public static double MeanStretch(EffortScope scope) =>
        EffortNumbers.Mean(
            [.. scope.Onsets.Where(o => !o.IsOneKey)],
            o => ReachRules.Width(o, scope.Part.Reach) / scope.Part.Reach.SpanMm
        );

    public static double StretchedShare(EffortScope scope) => EffortNumbers.Mean(scope.Onsets, o => o.IsOneKey ? 0 : 1);
}
