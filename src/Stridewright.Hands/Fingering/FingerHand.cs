using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>One hand and the keyboard under it, as fingering needs them.</summary>
/// <param name="OctaveMm">Width of an octave.</param>
internal sealed record FingerHand(HandMeasures Measures, double OctaveMm)
{
    public Hand Side => Measures.Hand;

    /// <summary>Fingers that can be used, 1 to 5, rising.</summary>
    public ValueList<int> Fingers { get; } =
        Enumerable.Range(1, HandMeasures.AllFingers).Except(Measures.Without).ToValueList();

    /// <summary>Mean width of a semitone.</summary>
    public double SemitoneMm => OctaveMm / 12;

    public static FingerHand Of(PlayerHands hands, Hand side) => new(hands.Of(side), hands.OctaveMm);
}
