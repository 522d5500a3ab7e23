using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>What fingering must know of one hand and the keyboard under it.</summary>
/// <param name="SpanMm">Thumb to little finger, flat hand.</param>
/// <param name="IndexSpanMm">Index to little finger, flat hand.</param>
/// <param name="OctaveMm">Width of an octave.</param>
internal sealed record FingerHand(Hand Side, double SpanMm, double IndexSpanMm, double OctaveMm)
{
    /// <summary>Fingers that may play, 1 to 5 in order; at least one.</summary>
    public ValueList<int> Fingers { get; init; } = [1, 2, 3, 4, 5];

    /// <summary>The one place in which a player's hands become the hand of a fingering.</summary>
    public static FingerHand Of(PlayerHands hands, Hand side)
    {
        ArgumentNullException.ThrowIfNull(hands);
        var own = hands.Of(side);
        return new(side, own.SpanMm, own.IndexSpanMm, hands.OctaveMm)
        {
            Fingers = Enumerable.Range(1, HandMeasures.AllFingers).Except(own.Without).ToValueList(),
        };
    }
}
