using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>Bars that belong together, by index, both counted in.</summary>
public readonly record struct BarRange(int First, int Last)
{
    public int Count => Last - First + 1;

    public bool Contains(int bar) => bar >= First && bar <= Last;
}

/// <summary>The strains of a score: they begin at the names of sections, at repeats and after double bars; what is shorter than
/// four bars belongs to its neighbour, what has no such marks and is long is cut by sixteen bars (common practice).</summary>
internal static class Strains
{
    private const int Shortest = 4,
        Usual = 16,
        Longest = 32;

    public static List<BarRange> Of(Score score)
    {
        var starts = new SortedSet<int> { 0 };
        for (var i = 1; i < score.Bars.Count; i++)
        {
            var (before, bar) = (score.Bars[i - 1].Marks, score.Bars[i]);
            var endsTurn = before.RepeatEnd > 0 && bar.Marks.Ending.Count == 0;
            var endsEnding = before.Ending.Count > 0 && bar.Marks.Ending.Count == 0;
            if (
                bar.Marks.RepeatStart
                || before.DoubleBarAfter
                || before.FinalBarAfter
                || endsTurn
                || endsEnding
                || bar.Directions.Any(d => d.Section is not null)
            )
            {
                starts.Add(i);
            }
        }
        var strains = Merged(Between(starts, score.Bars.Count), score);
        return [.. strains.SelectMany(s => Cut(s))];
    }

    /// <summary>Two halves, cut where a strain begins nearest the middle; of one strain at a phrase of four bars.</summary>
    public static (BarRange First, BarRange Second)? Halves(Score score, List<BarRange> strains)
    {
        var count = score.Bars.Count;
        if (count < 2 * Shortest)
        {
            return null;
        }
        var cut =
            strains.Count > 1
                ? strains.Skip(1).Select(s => s.First).MinBy(first => Math.Abs(2 * first - count))
                : Lead(score) + (count - Lead(score)) / (2 * Shortest) * Shortest;
        return (new(0, cut - 1), new(cut, count - 1));
    }

    private static int Lead(Score score) => score.Bars[0].Implicit ? 1 : 0;

    private static List<BarRange> Between(SortedSet<int> starts, int count)
    {
        var firsts = starts.ToList();
        return
        [
            .. firsts.Select((first, i) => new BarRange(first, (i + 1 < firsts.Count ? firsts[i + 1] : count) - 1)),
        ];
    }

    // A short one goes to the one after it, as an introduction or a pick-up does; the last one to the one before.
    private static List<BarRange> Merged(List<BarRange> strains, Score score)
    {
        var merged = new List<BarRange>();
        var from = 0;
        foreach (var strain in strains)
        {
            if (Enumerable.Range(from, strain.Last - from + 1).Count(i => !score.Bars[i].Implicit) >= Shortest)
            {
                merged.Add(new(from, strain.Last));
                from = strain.Last + 1;
            }
        }
        if (merged.Count == 0)
        {
            return [new(0, score.Bars.Count - 1)];
        }
        merged[^1] = merged[^1] with { Last = score.Bars.Count - 1 };
        return merged;
    }

    private static IEnumerable<BarRange> Cut(BarRange strain)
    {
        var first = strain.First;
        if (strain.Count >= Longest)
        {
            for (; strain.Last - first + 1 >= Usual + Shortest; first += Usual)
            {
                yield return new(first, first + Usual - 1);
            }
        }
        yield return new(first, strain.Last);
    }
}
