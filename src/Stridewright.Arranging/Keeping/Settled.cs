using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// What holds for a whole piece and was found by trial: the extra prices that keep shares down, the tempo, the bars that
/// are thinned. Worked again at the same, a piece changes only where it must.
/// </summary>
public sealed record Settled
{
    /// <summary>Price of a strained shape before the judge has asked for fewer.</summary>
    internal const long UsualStrain = 1200;

    /// <summary>Extra prices of the ragging, for the right hand's level and those above that it is a part of; empty: to be
    /// found.</summary>
    internal ValueList<RagExtra> Ragging { get; init; } = [];

    /// <summary>Extra price of the left hand's runs; null: to be found.</summary>
    internal long? RunPrice { get; init; }

    internal long LeftStrain { get; init; } = UsualStrain;

    internal long RightStrain { get; init; } = UsualStrain;

    /// <summary>Indices of the bars in which the right hand plays single notes.</summary>
    internal ValueList<int> ThinBars { get; init; } = [];

    /// <summary>Bars that go without, each once, in order.</summary>
    internal ValueList<EasedBar> Eased { get; init; } = [];

    /// <summary>Beats per minute as printed; null: what the brief wants.</summary>
    internal double? BeatsPerMinute { get; init; }

    /// <summary>Ticks at which the right hand plays single notes.</summary>
    internal HashSet<int> Thin(Lattice lattice, RightLine line) =>
        ThinBars.Count == 0
            ? []
            : [.. line.Notes.Select(n => n.Tick).Where(tick => ThinBars.Contains(lattice.BarAt(tick)))];
}
