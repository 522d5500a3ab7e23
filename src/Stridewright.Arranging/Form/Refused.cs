using Stridewright.Hands;

namespace Stridewright.Arranging;

/// <summary>Gives up what was asked for where the judge refuses it, before anything else is thinned or slowed.</summary>
internal static class Refused
{
    /// <summary>The same bars in the usual way where a manner with strokes of its own is at fault; null: none is.</summary>
    public static Lattice? Without(Lattice lattice, Verdict verdict)
    {
        var bars = verdict
            .Faults.Where(f => f.Kind is not (FaultKind.StrainedOften or FaultKind.StrainedTwice))
            .SelectMany(f => new[] { f.Bar, f.Bar - 1 }.Where(b => b >= 0 && HasOwn(lattice.Bars[b].Treatment)).Take(1))
            .ToHashSet();
        return bars.Count == 0
            ? null
            : lattice with
            {
                Bars = [.. lattice.Bars.Select((b, i) => bars.Contains(i) ? Usual(b) : b)],
            };
    }

    private static bool HasOwn(Treatment treatment) => HasOwn(treatment.Left) || HasOwn(treatment.Right);

    private static bool HasOwn(LeftManner manner) =>
        manner is not (LeftManner.Stride or LeftManner.StopTime or LeftManner.Break or LeftManner.Silent);

    private static bool HasOwn(RightManner manner) =>
        manner
            is RightManner.Answer
                or RightManner.ThumbTune
                or RightManner.Obbligato
                or RightManner.ThreeAgainstFour
                or RightManner.ParallelRun
                or RightManner.Tremolo;

    private static LatticeBar Usual(LatticeBar bar) =>
        bar with
        {
            Treatment = bar.Treatment with
            {
                Left = HasOwn(bar.Treatment.Left) ? LeftManner.Stride : bar.Treatment.Left,
                Right = HasOwn(bar.Treatment.Right) ? RightManner.Ragged : bar.Treatment.Right,
            },
        };
}
