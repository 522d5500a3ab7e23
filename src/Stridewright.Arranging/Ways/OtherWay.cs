using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>What another way changes first.</summary>
public enum WayKind
{
    /// <summary>When the right hand strikes.</summary>
    Rhythm,

    /// <summary>Which keys the fills take.</summary>
    Fills,

    /// <summary>How thick the right hand is.</summary>
    Texture,

    /// <summary>Basses, chords and runs.</summary>
    LeftHand,
}

/// <summary>Another way for a spot.</summary>
/// <param name="Dearer">What it costs more than the cheapest, in thousandths of a natural logarithm: the difference
/// between whole searches of its stage, all else there as good as it can be.</param>
/// <param name="Spot">The hand's bar as it becomes, to be kept.</param>
/// <param name="Result">The whole setting with it.</param>
public sealed record OtherWay(WayKind Kind, long Dearer, KeptBar Spot, Arrangement Result)
{
    /// <summary>What changes in the bar, in sentences.</summary>
    public required ValueList<string> Changes { get; init; }

    /// <summary>Printed numbers of other bars that change with it.</summary>
    public required ValueList<string> OtherBars { get; init; }

    /// <summary>Effort of the bar, 1 to 100, as it is.</summary>
    public required double EffortBefore { get; init; }

    public required double EffortAfter { get; init; }

    /// <summary>Figures of the whole setting's style that have a published reference and change.</summary>
    public required ValueList<StyleChange> Style { get; init; }
}

/// <summary>How a figure of style changes.</summary>
/// <param name="Words">Its name for a musician.</param>
public sealed record StyleChange(string Words, StyleUnit Unit, double Before, double After, double Reference);
