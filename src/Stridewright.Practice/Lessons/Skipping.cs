using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>Leaves out the steps that a player does not need, by takes and by what was measured of the hands.</summary>
internal sealed class Skipping(Standing standing, PlayerHands hands)
{
    /// <summary>Naive pointing against practised leaps, 11 of 16 bits per second (Fitts 1954): slower ones need no
    /// learning.</summary>
    private const double EasyShare = 11.0 / 16;

    public (List<PathStep> Needed, List<SkippedStep> Skipped) Of(IReadOnlyList<PathStep> steps)
    {
        var why = new Dictionary<string, string>();
        foreach (var step in steps)
        {
            if (step != steps[^1] && standing.IsDone(step))
            {
                why.TryAdd(step.Id, LessonMessages.SkippedDone(step.Test));
            }
            if (standing.Shows(step) is { } take)
            {
                foreach (var id in Before(step, steps))
                {
                    why.TryAdd(id, LessonMessages.SkippedByTake(take, step.Name));
                }
            }
        }
        if (
            hands.Of(Hand.Left).LeapBitsPerSecond is var limit
            && (hands.LeapBitsPerSecond ?? hands.Left.LeapBitsPerSecond) is not null
            && steps.FirstOrDefault(s => s.Kind == StepKind.LeftInPlace) is { } first
            && steps.FirstOrDefault(s => s.Hands == StepHands.Left && s.Id != first.Id) is { } next
        )
        {
            var rate = Judge.Check(next.Score, hands).Effort.Left.LeapBitsPerSecond / next.Test.BeatsPerMinute;
            var atTempo = rate * steps[^1].Test.BeatsPerMinute;
            if (atTempo <= EasyShare * limit)
            {
                why.TryAdd(first.Id, LessonMessages.SkippedByLeaps(atTempo, limit));
            }
        }
        return (
            [.. steps.Where(s => !why.ContainsKey(s.Id)).Select(s => s with { After = Needed(s.After, why, steps) })],
            [.. steps.Where(s => why.ContainsKey(s.Id)).Select(s => new SkippedStep(s, why[s.Id]))]
        );
    }

    // All steps that a step leads on from, near and far.
    private static HashSet<string> Before(PathStep step, IReadOnlyList<PathStep> steps)
    {
        var found = new HashSet<string>();
        var open = new Stack<string>(step.After);
        while (open.TryPop(out var id))
        {
            if (found.Add(id))
            {
                foreach (var before in steps.First(s => s.Id == id).After)
                {
                    open.Push(before);
                }
            }
        }
        return found;
    }

    // In place of what is skipped what that would have come after.
    private static ValueList<string> Needed(
        IEnumerable<string> after,
        Dictionary<string, string> why,
        IReadOnlyList<PathStep> steps
    ) =>
        after
            .SelectMany(id =>
                why.ContainsKey(id) ? Needed(steps.First(s => s.Id == id).After, why, steps) : (IEnumerable<string>)[id]
            )
            .Distinct()
            .ToValueList();
}
