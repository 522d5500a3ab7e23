using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>Puts the steps of both hands and of both together in the order in which they are learned.</summary>
internal sealed class StepMaking(Score goal, Pace pace, PlayerHands hands)
{
    private readonly Dictionary<StepHands, int> _count = [];

    /// <summary>Each step's hands come before it; the last one is the piece.</summary>
    public List<PathStep> Of(StepParts parts)
    {
        var left = parts.Left.Count > 0 ? new HandChain(pace, hands).Of(parts.Left, Hand.Left) : [];
        var right = parts.Right.Count > 0 ? new HandChain(pace, hands).Of(parts.Right, Hand.Right) : [];
        var together = left.Count > 0 && right.Count > 0 ? new TogetherChain(goal, pace, hands).Of(left, right) : [];
        var steps = new List<PathStep>();
        string NameOf(TogetherLink link) =>
            link.Kind == StepKind.TogetherEasy
                ? LessonMessages.NameOf(left[link.Left].Kind, right[link.Right].Kind)
                : LessonMessages.NameOf(link.Kind, goal, link.Bars);
        var (leftIds, rightIds) = (new List<string>(), new List<string>());
        foreach (var link in together)
        {
            Add(left, leftIds, StepHands.Left, link.Left, steps);
            Add(right, rightIds, StepHands.Right, link.Right, steps);
            var before = steps.FindLast(s => s.Hands == StepHands.Together);
            List<string> after =
            [
                leftIds[link.Left],
                rightIds[link.Right],
                .. before is null ? [] : (string[])[before.Id],
            ];
            var step = Made(StepHands.Together, link.Kind, NameOf(link), link.Score, link.Bars, link.Effort, after);
            steps.Add(step with { Again = before is null ? 1 : Again(before.Score, link) });
        }
        Add(left, leftIds, StepHands.Left, left.Count - 1, steps);
        Add(right, rightIds, StepHands.Right, right.Count - 1, steps);
        return steps;
    }

    private void Add(List<HandLink> links, List<string> ids, StepHands of, int upTo, List<PathStep> steps)
    {
        for (var i = ids.Count; i <= upTo; i++)
        {
            var link = links[i];
            var all = new BarRange(0, goal.Bars.Count - 1);
            var name = LessonMessages.NameOf(link.Kind, goal, all);
            var step = Made(of, link.Kind, name, link.Score, all, link.Effort, ids.TakeLast(1));
            steps.Add(step with { Again = link.Again });
            ids.Add(step.Id);
        }
    }

    // Of an easier level the bars that come again; strain, half and piece are the same notes.
    private static double Again(Score before, TogetherLink link) =>
        link.Kind != StepKind.TogetherEasy
            ? 1
            : Math.Min(Nesting.Share(before, link.Score, Hand.Right), Nesting.Share(before, link.Score, Hand.Left));

    private PathStep Made(
        StepHands of,
        StepKind kind,
        string name,
        Score score,
        BarRange bars,
        double effort,
        IEnumerable<string> after
    )
    {
        var number = _count[of] = _count.GetValueOrDefault(of) + 1;
        var range = pace.Range(score, hands, isFirst: number == 1);
        var test = Math.Max(range.From, pace.TestOf(kind));
        return new PathStep
        {
            Id = LessonMessages.IdOf(of, number),
            Hands = of,
            Kind = kind,
            Name = name,
            Aim = LessonMessages.AimOf(kind, goal.Bars[bars.First].Metre),
            Score = pace.Slowed(score, test) with
            {
                Subtitle = LessonMessages.StepSubtitle(name, range, test),
                Footnotes = [],
            },
            First = bars.First,
            Last = bars.Last,
            Effort = effort,
            Tempo = range with { To = test },
            Test = new((int)LessonLimits.CleanTakes.Value, test, LessonLimits.LeastRight.Value),
            After = after.ToValueList(),
        };
    }
}
