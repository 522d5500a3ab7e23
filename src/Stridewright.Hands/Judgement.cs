using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>A verdict with what it was read off.</summary>
internal sealed record Judgement(Passage Passage, HandPart Right, HandPart Left, Verdict Verdict)
{
    /// <param name="speed">Every tempo times this, above 0.</param>
    public static Judgement Of(Score score, PlayerHands hands, double? quartersPerMinute, double speed = 1)
    {
        var passage = new Passage(score, quartersPerMinute, speed);
        var faults = new FaultList(passage);
        var right = HandPart.Of(passage, hands, Hand.Right);
        var left = HandPart.Of(passage, hands, Hand.Left);
        foreach (var part in (HandPart[])[right, left])
        {
            ReachRules.Check(part.Onsets, hands, part.Reach, faults);
            LeapRules.Check(part.Moves, part.Measures, faults);
        }
        TogetherRules.Check(passage, faults);
        var verdict = new Verdict(faults.InOrder(), EffortMeasure.Of(passage, right, left))
        {
            Remarks = TogetherRules.Crossings(passage, right.Onsets, left.Onsets),
        };
        return new(passage, right, left, verdict);
    }

    public IEnumerable<HandPart> Hands => [Right, Left];

    public HandPart Part(Hand hand) => hand == Hand.Right ? Right : Left;
}
