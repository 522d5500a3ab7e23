using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>What one hand does: its onsets and the moves between them, in time order.</summary>
/// <param name="Measures">The hand that does it.</param>
/// <param name="Reach">What that hand can hold.</param>
internal sealed record HandPart(HandMeasures Measures, Reach Reach, List<Onset> Onsets, List<Move> Moves)
{
    public static HandPart Of(Passage passage, PlayerHands hands, Hand hand)
    {
        var (measures, reach) = (hands.Of(hand), new Reach(hands, hand));
        var onsets = Onset.Of(passage, hand, reach);
        return new(measures, reach, onsets, Move.Of(passage, onsets, measures, reach));
    }

    /// <summary>The part cut at the bar lines; a move belongs to the bar in which it lands.</summary>
    public HandPart[] ByBar(int count)
    {
        var onsets = Onsets.ToLookup(o => o.Bar);
        var moves = Moves.ToLookup(m => m.To.Bar);
        return
        [
            .. Enumerable
                .Range(0, count)
                .Select(bar => this with { Onsets = [.. onsets[bar]], Moves = [.. moves[bar]] }),
        ];
    }
}
