using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>
/// How fast a hand must travel, as a Fitts rate: index of difficulty log2(2D/W) over the time there is, W being a white
/// key (Fitts 1954; the limit of 16 bits per second is a working limit of practised jumps, common practice).
/// </summary>
public static class Leap
{
    public const double LimitBitsPerSecond = 16;

    /// <summary>No single move may exceed the limit by more than this factor.</summary>
    public const double PeakFactor = 1.5;

    /// <summary>Share of a group's moves that may exceed the limit.</summary>
    public const double ShareOverLimit = 0.01;

    /// <summary>In 6/8, 9/8 and 12/8 the chord is left for the next bass within one eighth: printed two-steps reach
    /// 22 bits per second.</summary>
    public const double CompoundFactor = 22.0 / 16;

    /// <summary>Index of difficulty in bits of a move over a distance; 0 within half a white key.</summary>
    public static double Bits(double mm, Keyboard keyboard)
    {
        ArgumentNullException.ThrowIfNull(keyboard);
        return mm > 0 ? Math.Max(0, Math.Log2(2 * mm / keyboard.WhiteKeyMm)) : 0;
    }

    /// <summary>Bits per second of a move over a distance in a time.</summary>
    /// <param name="seconds">Time from one onset to the next, above 0.</param>
    public static double Rate(double mm, double seconds, Keyboard keyboard) => Bits(mm, keyboard) / seconds;

    /// <summary>How much more than its limit a hand may ask for in a metre.</summary>
    public static double Factor(Metre metre) => metre is { Unit: 8, Count: 6 or 9 or 12 } ? CompoundFactor : 1;

    /// <summary>Bits per second that a usual hand may ask for in a metre.</summary>
    public static double Limit(Metre metre) => LimitBitsPerSecond * Factor(metre);

    /// <summary>
    /// Least movement in millimetres of a hand that covers the keys <paramref name="fromLow"/> to
    /// <paramref name="fromHigh"/> and must then cover the others: what lies under the hand needs no leap.
    /// </summary>
    public static double Shift(Reach reach, int fromLow, int fromHigh, int toLow, int toHigh)
    {
        ArgumentNullException.ThrowIfNull(reach);
        var keys = reach.Keyboard;
        var cover = Math.Max(
            reach.SpanMm - Reach.ComfortableBelowSpanMm,
            Math.Max(keys.Distance(fromLow, fromHigh), keys.Distance(toLow, toHigh))
        );
        return Math.Max(
            0,
            Math.Max(keys.X(toHigh) - cover - keys.X(fromLow), keys.X(fromHigh) - cover - keys.X(toLow))
        );
    }
}
