using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Whole settings of one tune that differ in their motifs and in their bass plan.</summary>
public static class SeveralSettings
{
    /// <summary>Most settings of one tune.</summary>
    public const int Most = 5;

    /// <summary>Share of bars in which each two settings are to differ.</summary>
    public const double Wanted = 0.3;

    // Tried one after the other, until the settings differ enough.
    private static readonly long[] Prices = [0, 800, 1600, 3200, 6400, 12_800, 25_600];

    /// <summary>Settings of a tune for one brief, the usual one first, up to the first that is refused. Each of the others
    /// has a seed of its own, and pays for what the ones before it do, as little as makes it differ in
    /// <see cref="Wanted"/> of the bars; where no price does, the one that differs most is given. Its notes say how much.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">When <paramref name="count"/> is not 1 to <see cref="Most"/>.</exception>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellation"/> is signalled.</exception>
    public static ValueList<ArrangeResult> Of(
        Tune tune,
        Brief brief,
        int count,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(brief);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, Most);
        var results = new List<ArrangeResult> { Arranger.Arrange(tune, brief, cancellation) };
        while (results.Count < count && results[^1].Arrangement is not null)
        {
            var earlier = results.Select(r => r.Arrangement!).ToList();
            results.Add(Next(tune, brief with { Seed = brief.Seed + results.Count }, earlier, cancellation));
        }
        return results.ToValueList();
    }

    /// <summary>Shares of bars in which two settings of one piece differ.</summary>
    /// <returns>In when the right hand strikes; in the lowest keys of the left hand's basses and runs.</returns>
    public static (double Motif, double Bass) Difference(Arrangement a, Arrangement b)
    {
        var (first, second) = (Reworking.Of(a), Reworking.Of(b));
        var bars = Math.Min(first.Lattice.Bars.Length, second.Lattice.Bars.Length);
        var all = Enumerable.Range(0, bars).ToList();
        return (
            (double)all.Count(bar => !Motif(first, bar).SequenceEqual(Motif(second, bar))) / bars,
            (double)all.Count(bar => !Basses(first, bar).SequenceEqual(Basses(second, bar))) / bars
        );
    }

    private static IEnumerable<ScoreTime> Motif(Solution solution, int bar) =>
        Spots.Of(solution, bar, Hand.Right).Strokes.Select(s => s.At);

    private static IEnumerable<(ScoreTime At, int Key)> Basses(Solution solution, int bar) =>
        Spots.Of(solution, bar, Hand.Left).Strokes.Where(s => s.Role != "chord").Select(s => (s.At, s.Pitches[0].Midi));

    private static ArrangeResult Next(Tune tune, Brief brief, List<Arrangement> earlier, CancellationToken cancellation)
    {
        ArrangeResult? best = null;
        var most = (Motif: -1.0, Bass: -1.0);
        foreach (var price in Prices)
        {
            var unlike = new Unlike([.. earlier.Select(Reworking.Of)], price);
            var result = Arranger.Arrange(tune, brief with { Unlike = unlike }, cancellation);
            if (result.Arrangement is not { } arrangement)
            {
                best ??= result;
                continue;
            }
            var differences = earlier.Select(e => Difference(e, arrangement)).ToList();
            var least = (Motif: differences.Min(d => d.Motif), Bass: differences.Min(d => d.Bass));
            if (best?.Arrangement is null || Enough(least) > Enough(most))
            {
                (best, most) = (result, least);
            }
            if (Math.Min(least.Motif, least.Bass) >= Wanted)
            {
                break;
            }
        }
        return best!.Arrangement is { } done
            ? new ArrangeResult(done with { Notes = [.. done.Notes, Told(most)] }, null)
            : best;
    }

    // What is beyond the wanted share counts for nothing.
    private static double Enough((double Motif, double Bass) share) =>
        Math.Min(share.Motif, Wanted) + Math.Min(share.Bass, Wanted);

    private static Diagnostic Told((double Motif, double Bass) share) =>
        new(Severity.Note, Place.Whole, WayMessages.Differs(share.Motif, share.Bass));
}
