using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>A hand's part, easier than written or as written, over the whole piece at its tempo.</summary>
/// <param name="Score">That hand alone.</param>
internal sealed record StepPart(StepKind Kind, Score Score);

/// <summary>A part that became a step.</summary>
/// <param name="Effort">At the tempo of its test.</param>
/// <param name="Again">Share of the strokes of the part before that stand again in it.</param>
internal sealed record HandLink(StepKind Kind, Score Score, double Effort, double Again);

/// <summary>
/// Of many easier parts of one hand those that lead to the written one: each can be played at the piece's tempo, asks less than the next at the tempo of its test, stands
/// again in it to nine tenths, and differs from it enough to be worth a step; of a kind there is one. Chosen from the written part backwards.
/// </summary>
internal sealed class HandChain(Pace pace, PlayerHands hands)
{
    /// <param name="parts">Easiest first; the last one is the hand as written.</param>
    public List<HandLink> Of(IReadOnlyList<StepPart> parts, Hand hand)
    {
        var links = new List<HandLink>();
        foreach (var part in parts.Reverse())
        {
            var measured = Judge.Check(pace.Slowed(part.Score, pace.TestOf(part.Kind)), hands).Effort;
            var effort = (hand == Hand.Right ? measured.Right : measured.Left).Value;
            var link = new HandLink(part.Kind, part.Score, effort, 1);
            if (links is not [.., var next])
            {
                links.Add(link);
            }
            else if (part.Kind != next.Kind && Judge.Check(part.Score, hands).IsPlayable)
            {
                if (Nesting.Changed(part.Score, next.Score, hand) >= LessonLimits.Different.Value)
                {
                    Lead(links.Count - 1, link);
                }
                else if (links.Count > 1)
                {
                    // Much the same as the next one: of the two the easier kind is learned.
                    Lead(links.Count - 2, link);
                }
            }
        }
        links.Reverse();
        return links;

        // Puts a part before one that is chosen, in place of what stood there, if it leads to it.
        void Lead(int to, HandLink link)
        {
            var next = links[to];
            var again = Nesting.Share(link.Score, next.Score, hand);
            if (link.Effort < next.Effort && again >= LessonLimits.Nested.Value)
            {
                links.RemoveRange(to + 1, links.Count - to - 1);
                links[to] = next with { Again = again };
                links.Add(link);
            }
        }
    }
}
