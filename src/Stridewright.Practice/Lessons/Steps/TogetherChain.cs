using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>Both hands over some bars.</summary>
/// <param name="Score">Of these bars.</param>
/// <param name="Effort">Of the hardest strain in it.</param>
/// <param name="Left">Index of the left hand's link that it needs.</param>
/// <param name="Right">Likewise of the right hand's.</param>
internal sealed record TogetherLink(StepKind Kind, Score Score, BarRange Bars, double Effort, int Left, int Right);

/// <summary>
/// Hands together at growing level: first easier than written, over the whole piece, then as written the hardest strain, the
/// half around it, and the whole. Effort is that of the hardest strain within, so it rises from level to level and holds while
/// the strain grows into the piece.
/// </summary>
internal sealed class TogetherChain(Score goal, PlayerHands hands)
{
    private const double Tolerance = 1e-9;
    private readonly List<BarRange> _strains = Strains.Of(goal);

    public List<TogetherLink> Of(List<HandLink> left, List<HandLink> right)
    {
        var (hardest, most) = Hardest(goal);
        var links = new List<TogetherLink>();
        foreach (var (l, r) in Pairs(left, right))
        {
            var score = Excerpts.Together(goal, right[r].Score, left[l].Score);
            var effort = Hardest(score).Effort;
            if (
                effort <= most + Tolerance
                && (links is not [.., var easier] || effort >= easier.Effort - Tolerance)
                && Judge.Check(score, hands).IsPlayable
            )
            {
                links.Add(new(StepKind.TogetherEasy, score, All, effort, l, r));
            }
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
            links.Add(new(kind, score, bars, most, lastLeft, lastRight));
        }
        return links;
    }

    private BarRange All => new(0, goal.Bars.Count - 1);

    // Easier levels: both hands at their first, and both on the way, the left striding and the right with all its rhythm.
    private static IEnumerable<(int Left, int Right)> Pairs(List<HandLink> left, List<HandLink> right)
    {
        var first = (0, 0);
        var middle = (
            left.FindLastIndex(l => l.Kind <= StepKind.LeftStride),
            right.FindLastIndex(r => r.Kind <= StepKind.RightTiedMid)
        );
        var last = (left.Count - 1, right.Count - 1);
        return new[] { first, middle }.Where(p => p.Item1 >= 0 && p.Item2 >= 0 && p != last).Distinct();
    }

    private BarRange Harder(BarRange first, BarRange second) =>
        Effort(goal, second) > Effort(goal, first) ? second : first;

    private (BarRange Strain, double Effort) Hardest(Score score) =>
        _strains.Select(s => (s, Effort(score, s))).MaxBy(s => s.Item2);

    private double Effort(Score score, BarRange bars) =>
        Judge.Check(Excerpts.Bars(score, bars.First, bars.Last), hands).Effort.Overall;
}
