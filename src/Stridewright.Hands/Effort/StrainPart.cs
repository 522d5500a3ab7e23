namespace Stridewright.Hands;

/// <summary>Share of the stretches that are strained or out of reach, in what is allowed of them.</summary>
internal static class StrainPart
{
    public static double Amount(EffortScope scope) => EffortNumbers.Bend(Share(scope) / Reach.StrainedShareLimit);

    public static double Share(EffortScope scope) =>
        EffortNumbers.Mean(
            [.. scope.Onsets.Where(ReachRules.IsStretch)],
            o => ReachRules.StretchOf(o, scope.Part.Reach) >= Stretch.Strained ? 1 : 0
        );
}
