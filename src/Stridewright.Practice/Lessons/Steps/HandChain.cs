using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>A hand's part, easier than written or as written, over the whole piece at its tempo.</summary>
/// <param name="Score">That hand alone.</param>
internal sealed record StepPart(StepKind Kind, Score Score);

/// <summary>A part that became a step.</summary>
/// <param name="Again">Share of the strokes of the part before that stand again in it.</param>
internal sealed record HandLink(StepKind Kind, Score Score, double Effort, double Again);

/// <summary>
/// Of many easier parts of one hand those that lead to the written one: each can be played, asks no more than the next, stands
/// again in it to nine tenths, and differs from it enough to be worth a step; of a kind there is one. Chosen from the written part backwards.
/// </summary>
internal static class HandChain
{
    private const double Tolerance = 1e-9;

    /// <param name="parts">Easiest first; the last one is the hand as written.</param>
    public static List<HandLink> Of(IReadOnlyList<StepPart> parts, Hand hand, PlayerHands hands)
    {
        var links = new List<HandLink>();
        foreach (var part in parts.Reverse())
        {
            var verdict = Judge.Check(part.Score, hands);
            var effort = (hand == Hand.Right ? verdict.Effort.Right : verdict.Effort.Left).Value;
            if (links is not [.., var next])
            {
                links.Add(new(part.Kind, part.Score, effort, 1));
                continue;
            }
            var again = Nesting.Share(part.Score, next.Score, hand);
            if (
                part.Kind != next.Kind
                && verdict.IsPlayable
                && effort <= next.Effort + Tolerance
                && again >= LessonLimits.Nested.Value
                && Nesting.Changed(part.Score, next.Score, hand) >= LessonLimits.Different.Value
            )
            {
                links[^1] = next with { Again = again };
                links.Add(new(part.Kind, part.Score, effort, 1));
            }
        }
        links.Reverse();
        return links;
    }
}
