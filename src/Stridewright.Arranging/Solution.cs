using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Everything that was found for a setting, stage by stage: what reasons are read off, and what other ways and
/// another working start from.</summary>
/// <param name="Stage">The lattice, the brief, the hands and the tempo of the last search.</param>
/// <param name="Right">The right hand as written, crushed notes with it.</param>
internal sealed record Solution(
    Plan Plan,
    Stage Stage,
    Ragged Ragged,
    HomePositions Homes,
    RightLine Right,
    LeftLine Left,
    Settled Settled
)
{
    public Lattice Lattice => Stage.Lattice;

    public bool HasNotes => Lattice.Notes.Length > 0;
}

/// <summary>
/// What holds for a whole piece and was found by trial: the extra prices that keep shares down, the tempo, the bars that
/// are thinned. Worked again at the same, a piece changes only where it must.
/// </summary>
internal sealed record Settled
{
    /// <summary>Price of a strained shape before the judge has asked for fewer.</summary>
    public const long UsualStrain = 1200;

    /// <summary>Extra prices of the ragging, for the right hand's level and those above that it is a part of; empty: to be
    /// found.</summary>
    public ValueList<RagExtra> Ragging { get; init; } = [];

    /// <summary>Extra price of the left hand's runs; null: to be found.</summary>
    public long? RunPrice { get; init; }

    public long LeftStrain { get; init; } = UsualStrain;

    public long RightStrain { get; init; } = UsualStrain;

    /// <summary>Indices of the bars in which the right hand plays single notes.</summary>
    public ValueList<int> ThinBars { get; init; } = [];

    /// <summary>Beats per minute as printed; null: what the brief wants.</summary>
    public double? BeatsPerMinute { get; init; }
}
