using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>What one hand does: its onsets and the moves between them, in time order.</summary>
internal sealed record HandPart(List<Onset> Onsets, List<Move> Moves)
{
    public static HandPart Of(Passage passage, Hand hand, Reach reach)
    {
        var onsets = Onset.Of(passage, hand, reach);
        return new(onsets, Move.Of(passage, onsets, reach));
    }

    /// <summary>The part cut at the bar lines; a move belongs to the bar in which it lands.</summary>
    public HandPart[] ByBar(int count)
    {
        var onsets = Onsets.ToLookup(o => o.Bar);
        var moves = Moves.ToLookup(m => m.To.Bar);
        return [.. Enumerable.Range(0, count).Select(bar => new HandPart([.. onsets[bar]], [.. moves[bar]]))];
    }
}
