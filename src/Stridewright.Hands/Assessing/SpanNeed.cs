using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>Spans, thumb to little finger in whole millimetres, that a piece needs of a hand.</summary>
/// <param name="PlayableMm">The smallest at which nothing is out of reach and strain is within its limits; null: none that
/// hands have.</param>
/// <param name="FreeMm">The smallest at which nothing is strained; null: none that hands have.</param>
public sealed record SpanNeed(int? PlayableMm, int? FreeMm)
{
    internal static SpanNeed Of(Passage passage, PlayerHands hands, Hand hand) =>
        new(
            Smallest(mm => !Faults(passage, WithSpan(hands, hand, mm), hand)),
            Smallest(mm => !Faults(passage, WithSpan(hands with { NoStrain = true }, hand, mm), hand))
        );

    private static PlayerHands WithSpan(PlayerHands hands, Hand hand, int mm) =>
        hands.With(hand, hands.Own(hand) with { SpanMm = mm });

    // What a hand can reach a larger one can too. Only a rolled chord that becomes one to hold may ask more of it then: so the
    // answer is tried, and the next larger ones.
    private static int? Smallest(Predicate<int> suffices)
    {
        var (low, high) = ((int)SpanText.LeastMm, (int)SpanText.MostMm);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = suffices(middle) ? (low, middle) : (middle + 1, high);
        }
        return suffices(low) ? low : null;
    }

    private static bool Faults(Passage passage, PlayerHands hands, Hand hand)
    {
        var (reach, faults) = (new Reach(hands, hand), new FaultList(passage));
        ReachRules.Check(Onset.Of(passage, hand, reach), hands, reach, faults);
        return faults
            .InOrder()
            .Any(f =>
                f.Kind
                    is FaultKind.Reach
                        or FaultKind.RolledTooWide
                        or FaultKind.StrainedOften
                        or FaultKind.StrainedTwice
            );
    }
}
