namespace Stridewright.Practice.Listening;

/// <summary>The order in which pairs are told: as played, what is missing between what was played around it. Each is a note
/// of the score and the index of the played one; either may be missing.</summary>
internal static class PairOrder
{
    public static IReadOnlyList<(ExpectedNote? Expected, int? Played)> Of(Alignment alignment)
    {
        var (score, take) = (alignment.Score.Notes, alignment.Take.Notes);
        var played = alignment
            .Pairs.Where(p => p.Played is not null)
            .Select(p => (Expected: p.Expected is { } e ? score[e] : null, Played: p.Played!.Value, IsInside: true))
            .Concat(alignment.Outside.Select(o => (o.Expected, o.Played, IsInside: false)))
            .OrderBy(p => take[p.Played].Onset)
            .ThenBy(p => p.Played)
            .ToList();
        var missing = alignment
            .Pairs.Where(p => p.Played is null)
            .OrderBy(p => p.Expected)
            .Select(p => score[p.Expected!.Value])
            .ToList();
        var (ordered, next, reached) = (new List<(ExpectedNote?, int?)>(), 0, double.NegativeInfinity);
        foreach (var (expected, at, isInside) in played)
        {
            if (isInside && expected is not null && expected.Beats > reached)
            {
                reached = expected.Beats;
                while (next < missing.Count && missing[next].Beats < reached)
                {
                    ordered.Add((missing[next++], null));
                }
            }
            ordered.Add((expected, at));
        }
        ordered.AddRange(missing.Skip(next).Select(m => ((ExpectedNote?)m, (int?)null)));
        return ordered;
    }
}
