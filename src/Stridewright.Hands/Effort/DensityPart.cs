namespace Stridewright.Hands;

/// <summary>How many strokes a second, and how many keys in each. A crushed note and each further key of a rolled chord are
/// strokes of their own.</summary>
internal static class DensityPart
{
    /// <summary>Keys beyond the first: a chord of three, for five fingers.</summary>
    private const double DemandingKeys = 2;

    // Pace and keys carry what they carried beside each other: 0.25 to 0.1.
    private const double PaceShare = 0.7;

    public static double Amount(EffortScope scope)
    {
        var hand = scope.Part.Measures;
        var keys = DemandingKeys * hand.Fingers / HandMeasures.AllFingers;
        // A wrist's sustained octaves are demanding (common practice).
        return PaceShare * EffortNumbers.Bend(Pace(scope) / hand.OctaveStrokesPerSecond)
            + (1 - PaceShare) * EffortNumbers.Bend((KeysPerStroke(scope) - 1) / keys);
    }

    private static double Pace(EffortScope scope)
    {
        var strokes = scope.Onsets.Count + scope.Print.Crushed;
        strokes += scope.Onsets.Sum(o => o.Rolled ? o.Struck.Length - 1 : 0);
        return scope.Seconds > 0 ? strokes / scope.Seconds : 0;
    }

    public static double KeysPerStroke(EffortScope scope) => EffortNumbers.Mean(scope.Onsets, o => o.Struck.Length);
}
