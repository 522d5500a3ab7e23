namespace Stridewright.Practice.Listening;

/// <summary>The order in which pairs are told: as played, what is missing between what was played around it.</summary>
internal static class PairOrder
{
    public static IReadOnlyList<NotePair> Of(Alignment alignment)
    {
        var (score, take) = (alignment.Score.Notes, alignment.Take.Notes);
        var played = alignment
            .Pairs.Where(p => p.Played is not null)
            .OrderBy(p => take[p.Played!.Value].Onset)
            .ThenBy(p => p.Played)
            .ToList();
        var missing = alignment.Pairs.Where(p => p.Played is null).OrderBy(p => p.Expected).ToList();
        var (ordered, next, reached) = (new List<NotePair>(alignment.Pairs.Count), 0, double.NegativeInfinity);
        foreach (var pair in played)
        {
            if (pair.Expected is { } expected && score[expected].Beats > reached)
            {
                reached = score[expected].Beats;
                while (next < missing.Count && score[missing[next].Expected!.Value].Beats < reached)
                {
                    ordered.Add(missing[next++]);
                }
            }
            ordered.Add(pair);
        }
        ordered.AddRange(missing.Skip(next));
        return ordered;
    }
}
