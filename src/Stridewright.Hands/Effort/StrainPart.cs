namespace Stridewright.Hands;

/// <summary>Share of the stretches that are strained or out of reach, in what is allowed of them. A rolled chord that the hand
/// cannot hold opens it to its full width on the way, and counts for half a strained one (a working value).</summary>
internal static class StrainPart
{
    private const double RolledWeight = 0.5;

    public static double Amount(EffortScope scope) =>
        EffortNumbers.Bend((Share(scope) + RolledWeight * RolledShare(scope)) / Reach.StrainedShareLimit);

    private static double RolledShare(EffortScope scope) =>
        EffortNumbers.Mean(
            scope.Onsets,
            o => ReachRules.IsRolled(o) && ReachRules.StretchOf(o, scope.Part.Reach) >= Stretch.Strained ? 1 : 0
        );

    public static double Share(EffortScope scope) =>
        EffortNumbers.Mean(
            [.. scope.Onsets.Where(ReachRules.IsStretch)],
            o => ReachRules.StretchOf(o, scope.Part.Reach) >= Stretch.Strained ? 1 : 0
        );
}
