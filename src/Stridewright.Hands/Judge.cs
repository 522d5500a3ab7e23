using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>The only judge of playability.</summary>
public static class Judge
{
    /// <summary>
    /// Judges what each hand must reach, how fast it must leap and repeat, and both hands together. Repeats are not
    /// followed. Time is linear in the number of notes but for sorting.
    /// </summary>
    /// <param name="quartersPerMinute">Tempo to judge at, above 0; null: as printed, else a usual one for the metre.</param>
    public static Verdict Check(Score score, PlayerHands hands, double? quartersPerMinute = null)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(hands);
        if (quartersPerMinute is { } tempo)
        {
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(tempo, nameof(quartersPerMinute));
        }
        var reach = new Reach(hands);
        var passage = new Passage(score, quartersPerMinute);
        var faults = new FaultList(passage);
        var right = HandPart.Of(passage, Hand.Right, reach);
        var left = HandPart.Of(passage, Hand.Left, reach);
        foreach (var part in (HandPart[])[right, left])
        {
            ReachRules.Check(part.Onsets, hands, reach, faults);
            LeapRules.Check(part.Moves, faults);
        }
        TogetherRules.Check(passage, faults);
        return new(faults.InOrder(), EffortMeasure.Of(passage, reach, right, left))
        {
            Remarks = TogetherRules.Crossings(passage, right.Onsets, left.Onsets),
        };
    }
}
