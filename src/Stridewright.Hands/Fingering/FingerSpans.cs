namespace Stridewright.Hands;

/// <summary>
/// What a pair of fingers spans, from the lower-numbered to the higher-numbered finger, positive towards the little finger's
/// side: practical, comfortable and relaxed limits, in semitones of the keyboard's mean width.
/// </summary>
internal readonly record struct SpanLimits(
    double MinPractical,
    double MinComfortable,
    double MinRelaxed,
    double MaxRelaxed,
    double MaxComfortable,
    double MaxPractical
)
{
    /// <summary>The same pair counted from the higher-numbered finger.</summary>
    public SpanLimits Reversed =>
        new(-MaxPractical, -MaxComfortable, -MaxRelaxed, -MinRelaxed, -MinComfortable, -MinPractical);
}

/// <summary>
/// The span table of Parncutt et al. 1997 (Music Perception 14(4)), as printed or fitted to a hand. Fitted, a pair reaches as
/// far as the hand's measures say, with the thumb less the few millimetres that <see cref="Reach"/> takes off; comfortable and
/// relaxed upper limits grow with the hand, those of pairs with the thumb as the reach of 1-5, the others as the span of index
/// and little finger. Lower limits say how close fingers can come, and stay.
/// </summary>
internal sealed class FingerSpans
{
    /// <summary>Practical reach of 1-5 in the table, in semitones; the hand that has it on a keyboard of 165.1 mm is the
    /// table's.</summary>
    private const double TableReach = 15;

    private const double TableReachMm = TableReach * 165.1 / 12;

    private const double TableIndexSpanMm = (TableReachMm + Reach.OutBelowSpanMm) * HandMeasures.IndexShare;

    private static readonly SpanLimits[] Table =
    [
        new(-5, -3, 1, 5, 8, 10), // 1-2
        new(-4, -2, 3, 7, 10, 12), // 1-3
        new(-3, -1, 5, 9, 12, 14), // 1-4
        new(-1, 1, 7, 10, 13, 15), // 1-5
        new(1, 1, 1, 2, 3, 5), // 2-3
        new(1, 1, 3, 4, 5, 7), // 2-4
        new(2, 2, 5, 6, 8, 10), // 2-5
        new(1, 1, 1, 2, 2, 4), // 3-4
        new(1, 1, 3, 4, 5, 7), // 3-5
        new(1, 1, 1, 2, 3, 5), // 4-5
    ];

    private readonly SpanLimits[] _limits = new SpanLimits[36];

    private FingerSpans(Func<int, int, SpanLimits, SpanLimits> fitted)
    {
        var row = 0;
        for (var low = 1; low <= 4; low++)
        {
            for (var high = low + 1; high <= 5; high++)
            {
                var limits = fitted(low, high, Table[row++]);
                _limits[low * 6 + high] = limits;
                _limits[high * 6 + low] = limits.Reversed;
            }
        }
    }

    /// <summary>The table as printed.</summary>
    public static FingerSpans Printed { get; } = new((_, _, limits) => limits);

    public static FingerSpans For(FingerHand hand)
    {
        var measures = hand.Measures;
        var semitonesPerTable = 165.1 / hand.OctaveMm;
        var thumb = (measures.SpanMm - Reach.OutBelowSpanMm) / TableReachMm * semitonesPerTable;
        var others = measures.IndexSpanMm / TableIndexSpanMm * semitonesPerTable;
        return new(
            (low, high, limits) =>
                limits with
                {
                    MaxRelaxed = limits.MaxRelaxed * (low == 1 ? thumb : others),
                    MaxComfortable = limits.MaxComfortable * (low == 1 ? thumb : others),
                    MaxPractical =
                        (measures.SpanBetween(low, high) - (low == 1 ? Reach.OutBelowSpanMm : 0)) / hand.SemitoneMm,
                }
        );
    }

    /// <summary>Limits of two different fingers, in the order given.</summary>
    public SpanLimits Of(int from, int to) => _limits[from * 6 + to];
}
