using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Works settings again around the bars that are kept.</summary>
public static class Reworking
{
    /// <summary>What one hand does in a bar of a setting, to be kept.</summary>
    /// <param name="bar">Place among the setting's bars, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">When the setting has no such bar.</exception>
    public static KeptBar Spot(Arrangement arrangement, int bar, Hand hand)
    {
        var solution = Of(arrangement);
        ArgumentOutOfRangeException.ThrowIfNegative(bar);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(bar, solution.Lattice.Bars.Length);
        return Spots.Of(solution, bar, hand);
    }

    /// <summary>
    /// The same tune and brief with these bars kept and no others, at the prices and the tempo that were settled before:
    /// of the rest only what has a better way now changes.
    /// </summary>
    /// <returns>The arrangement, or the conflict: a bar that does not fit the piece, or that these hands cannot play.</returns>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellation"/> is signalled.</exception>
    public static ArrangeResult Rework(
        Arrangement before,
        ValueList<KeptBar> kept,
        CancellationToken cancellation = default
    )
    {
        return Rework(Of(before), kept, null, cancellation);
    }

    internal static ArrangeResult Rework(
        Solution before,
        ValueList<KeptBar> kept,
        Func<Lattice, Lattice>? hold,
        CancellationToken cancellation
    )
    {
        var brief = before.Stage.Brief with { Kept = kept };
        return new Setting(
            before.Plan.Piece.Tune,
            brief,
            before.Lattice.Feel,
            before.Plan.Metre,
            before.Stage.Prices
        ).WorkAgain(before, hold, cancellation);
    }

    /// <summary>What is kept, with these bars in place of what was kept of them.</summary>
    public static ValueList<KeptBar> With(ValueList<KeptBar> kept, IEnumerable<KeptBar> added)
    {
        var now = added.ToList();
        return kept.Where(k => !now.Exists(n => n.Bar == k.Bar && n.Hand == k.Hand))
            .Concat(now)
            .OrderBy(k => k.Bar)
            .ThenBy(k => k.Hand)
            .ToValueList();
    }

    /// <summary>The bars that somebody has written otherwise in the score of a setting, to be kept.</summary>
    /// <param name="edited">The setting's score as it came back, with or without its ids.</param>
    /// <param name="fault">Why it cannot be taken, with the bar.</param>
    public static ValueList<KeptBar>? Edited(Arrangement before, Score edited, out Diagnostic? fault)
    {
        ArgumentNullException.ThrowIfNull(edited);
        return Edits.Of(Of(before), before.Score, edited, out fault);
    }

    /// <summary>A bar of one hand as somebody writes it, to be kept.</summary>
    /// <param name="bar">Place among the setting's bars, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">When the setting has no such bar.</exception>
    public static KeptBar Written(Arrangement before, int bar, Hand hand, IEnumerable<WrittenStroke> strokes)
    {
        var solution = Of(before);
        ArgumentOutOfRangeException.ThrowIfNegative(bar);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(bar, solution.Lattice.Bars.Length);
        return Edits.Of(solution, bar, hand, strokes);
    }

    /// <summary>The bars kept in a setting that hold in one of the corrected tune: those whose chords and, in the right
    /// hand, whose notes of the tune are as they were. None where the bars themselves are others.</summary>
    /// <param name="after">With nothing kept.</param>
    public static ValueList<KeptBar> Carried(Arrangement before, Arrangement after) =>
        Carrying.Over(Of(before).Lattice, Of(after).Lattice, Of(before).Stage.Brief.Kept);

    /// <summary>The step that strokes of a setting usually stand on: a sixteenth or an eighth.</summary>
    public static ScoreTime Step(Arrangement arrangement) => Of(arrangement).Lattice.Tick * Lattice.TicksPerUnit;

    /// <summary>Places of the bars in which a setting and what came of working it again differ, from 0.</summary>
    public static IEnumerable<int> Differing(Arrangement before, Arrangement after) =>
        Spots.Differing(Of(before), Of(after));

    /// <summary>What was settled for a whole setting, for its brief: set again with it, it changes only where it must.</summary>
    public static Settled Settled(Arrangement arrangement) => Of(arrangement).Settled;

    internal static Solution Of(Arrangement arrangement)
    {
        ArgumentNullException.ThrowIfNull(arrangement);
        return arrangement.Solution ?? throw new ArgumentException("made without the arranger", nameof(arrangement));
    }
}
