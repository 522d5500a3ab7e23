namespace Stridewright.Hands;

/// <summary>How fast the hand must travel: the root mean square of its rates, so that fast leaps count most and each counts, in
/// what is already demanding.</summary>
internal static class LeapPart
{
    /// <summary>Naive pointing, 11 bits per second (Fitts 1954), as a share of the limit of practised leaps: faster ones
    /// must be learned. For a hand that was measured the same share of its own limit.</summary>
    public const double DemandingShare = 11 / Leap.LimitBitsPerSecond;

    public static double Amount(EffortScope scope)
    {
        var moves = scope.Part.Moves;
        var square = moves.Count == 0 ? 0 : moves.Average(m => m.Rate * m.Rate);
        return EffortNumbers.Bend(Math.Sqrt(square) / Demanding(scope.Part.Measures));
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
