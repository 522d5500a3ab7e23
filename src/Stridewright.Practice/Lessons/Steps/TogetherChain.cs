using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>Both hands over some bars.</summary>
/// <param name="Score">Of these bars.</param>
/// <param name="Effort">Of the hardest strain in it, at the tempo of the link's test.</param>
/// <param name="Left">Index of the left hand's link that it needs.</param>
/// <param name="Right">Likewise of the right hand's.</param>
internal sealed record TogetherLink(StepKind Kind, Score Score, BarRange Bars, double Effort, int Left, int Right);

/// <summary>
/// Hands together at growing level: first easier than written, over the whole piece, then as written the hardest strain, the
/// half around it, and the whole. Effort is that of the hardest strain within, so it rises from level to level, and with the
/// tempo while the strain grows into the piece.
/// </summary>
internal sealed class TogetherChain(Score goal, Pace pace, PlayerHands hands)
{
    private readonly List<BarRange> _strains = Strains.Of(goal);

    public List<TogetherLink> Of(List<HandLink> left, List<HandLink> right)
    {
        var (hardest, most) = Hardest(goal, StepKind.TogetherStrain);
        var links = new List<TogetherLink>();
        foreach (var pairs in Easier(left, right))
        {
            var easier = links is [.., var before] ? before.Effort : 0;
            links.AddRange(
                pairs
                    .Select(p => Easy(left, right, p.Left, p.Right))
                    .OfType<TogetherLink>()
                    .Where(link => link.Effort > easier && link.Effort < most)
                    .Take(1)
            );
        }
        var (lastLeft, lastRight) = (left.Count - 1, right.Count - 1);
        var parts = new List<(StepKind Kind, BarRange Bars)>();
        if (_strains.Count > 1)
        {
            parts.Add((StepKind.TogetherStrain, hardest));
        }
        if (Strains.Halves(goal, _strains) is var (first, second))
        {
            var half =
                _strains.Count == 1 ? Harder(first, second)
                : first.Contains(hardest.First) ? first
                : second;
            if (parts.Count == 0 || half.Count > hardest.Count)
            {
                parts.Add((StepKind.TogetherHalf, half));
            }
        }
        parts.Add((StepKind.TogetherWhole, All));
        foreach (var (kind, bars) in parts)
        {
            var score = Excerpts.Bars(goal, bars.First, bars.Last, repeats: kind == StepKind.TogetherStrain);
            links.Add(new(kind, score, bars, Hardest(goal, kind).Effort, lastLeft, lastRight));
        }
        return links;
    }

    private BarRange All => new(0, goal.Bars.Count - 1);

    // Null where the hands are in each other's way.
    private TogetherLink? Easy(List<HandLink> left, List<HandLink> right, int l, int r)
    {
        var score = Excerpts.Together(goal, right[r].Score, left[l].Score);
        return Judge.Check(score, hands).IsPlayable
            ? new(StepKind.TogetherEasy, score, All, Hardest(score, StepKind.TogetherEasy).Effort, l, r)
            : null;
    }

    // Easier levels, each with what may stand for it: both hands at their first, and both on the way, the left striding and the
    // right with its ties inside the bar.
    private static IEnumerable<IEnumerable<(int Left, int Right)>> Easier(List<HandLink> left, List<HandLink> right)
    {
        // A left hand without octaves strides as it is written.
        var stride = left.FindLastIndex(l => l.Kind is StepKind.LeftSecondBass or StepKind.LeftStride);
        stride = stride >= 0 ? stride : left.Count - 1;
        var ties = right.FindLastIndex(r => r.Kind <= StepKind.RightTiedMid);
        yield return Enumerable
            .Range(0, stride + 1)
            .Select(l => (l, 0))
            .Where(p => p.l < left.Count - 1 || right.Count > 1);
        if (ties > 0)
        {
            yield return Enumerable.Range(0, ties).Select(back => (stride, ties - back));
        }
    }

    private BarRange Harder(BarRange first, BarRange second) =>
        Effort(goal, second) > Effort(goal, first) ? second : first;

    private (BarRange Strain, double Effort) Hardest(Score score, StepKind kind)
    {
        var atTest = pace.Slowed(score, pace.TestOf(kind));
        return _strains.Select(s => (s, Effort(atTest, s))).MaxBy(s => s.Item2);
    }

    private double Effort(Score score, BarRange bars) =>
        Judge.Check(Excerpts.Bars(score, bars.First, bars.Last), hands).Effort.Overall;
}
