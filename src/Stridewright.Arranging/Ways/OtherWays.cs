using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>The next-best solutions for one bar of a setting, stage by stage: forward–backward over the whole graph of each
/// stage's search, with the stages before it as they are.</summary>
public static class OtherWays
{
    /// <summary>Most ways looked for in each stage.</summary>
    public const int Most = 20;

    /// <summary>Other ways for a bar, those of one stage together, cheapest first. What these hands cannot play is left
    /// out, and so is what comes to the same notes.</summary>
    /// <param name="bar">Place among the setting's bars, from 0.</param>
    /// <param name="each">How many ways of each stage at most, 1 to <see cref="Most"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">When the setting has no such bar, or too many are asked for.</exception>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellation"/> is signalled.</exception>
    public static ValueList<OtherWay> Of(
        Arrangement arrangement,
        int bar,
        int each,
        CancellationToken cancellation = default
    )
    {
        var solution = Reworking.Of(arrangement);
        ArgumentOutOfRangeException.ThrowIfNegative(bar);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(bar, solution.Lattice.Bars.Length);
        ArgumentOutOfRangeException.ThrowIfLessThan(each, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(each, Most);
        var found = new List<OtherWay>();
        var seen = new HashSet<(WayKind, KeptBar)>();
        var style = StyleMeasure.Of(arrangement.Score);
        foreach (var (kind, dearer, hold) in StageWays.Of(solution, bar, each, cancellation))
        {
            cancellation.ThrowIfCancellationRequested();
            var hand = kind == WayKind.LeftHand ? Hand.Left : Hand.Right;
            var kept = arrangement.Brief.Kept.Where(k => k.Bar != bar || k.Hand != hand).ToValueList();
            if (
                Reworking.Rework(solution, kept, hold, cancellation).Arrangement is not { Solution: { } after } result
                || Spots.Of(after, bar, hand) is var spot
                    && (spot.Equals(Spots.Of(solution, bar, hand)) || !seen.Add((kind, spot)))
            )
            {
                continue;
            }
            found.Add(Described(kind, dearer, arrangement, style, bar, spot, result));
        }
        return found.ToValueList();
    }

    private static OtherWay Described(
        WayKind kind,
        long dearer,
        Arrangement before,
        StyleProfile style,
        int bar,
        KeptBar spot,
        Arrangement result
    )
    {
        var old = Reworking.Of(before);
        var others = Reworking.Differing(before, result).Where(b => b != bar);
        return new OtherWay(kind, dearer, spot, result)
        {
            Changes = WayWords.Of(old.Lattice, Spots.Of(old, bar, spot.Hand), spot),
            OtherBars = others.Select(b => old.Lattice.Bars[b].Number).ToValueList(),
            EffortBefore = Effort(before, bar),
            EffortAfter = Effort(result, bar),
            Style = Style(style, StyleMeasure.Of(result.Score)),
        };
    }

    private static double Effort(Arrangement arrangement, int bar) =>
        arrangement.Verdict.Effort.Bars.FirstOrDefault(e => e.Bar == bar)?.Value ?? 1;

    // Of rhythms bar by bar the other sentences tell enough.
    private static ValueList<StyleChange> Style(StyleProfile before, StyleProfile after)
    {
        var now = after.Figures.ToDictionary(f => f.Key);
        return before
            .Figures.Where(f => f is { Values.Count: 1, Reference.Count: 1, Section: not StyleMessages.PatternSection })
            .Where(f => now.TryGetValue(f.Key, out var other) && !other.Values.Equals(f.Values))
            .Select(f => new StyleChange(f.Words, f.Unit, f.Values[0], now[f.Key].Values[0], f.Reference[0]))
            .ToValueList();
    }
}
