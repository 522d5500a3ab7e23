namespace Stridewright.Hands;

/// <summary>How fast the hand must travel: half its median leap, half its fast ones, in what is already demanding.</summary>
internal static class LeapPart
{
    /// <summary>Naive pointing, 11 bits per second (Fitts 1954), as a share of the limit of practised leaps: faster ones
    /// must be learned. For a hand that was measured the same share of its own limit.</summary>
    public const double DemandingShare = 11 / Leap.LimitBitsPerSecond;

    public static double Amount(EffortScope scope)
    {
        var (fast, median) = Rates(scope);
        return EffortNumbers.Bend((fast + median) / 2 / Demanding(scope.Part.Measures));
    }

    /// <summary>Bits per second from which leaps are demanding for a hand.</summary>
    public static double Demanding(HandMeasures hand) => DemandingShare * hand.LeapBitsPerSecond;

    /// <summary>95th and 50th percentile of the leap rates, bits per second.</summary>
    public static (double Fast, double Median) Rates(EffortScope scope)
    {
        var rates = scope.Part.Moves.Select(m => m.Rate).Order().ToList();
        return (EffortNumbers.Percentile(rates, 0.95), EffortNumbers.Percentile(rates, 0.5));
    }
}
