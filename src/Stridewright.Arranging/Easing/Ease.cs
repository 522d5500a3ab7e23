namespace Stridewright.Arranging;

/// <summary>What a bar goes without, to be easier: each with all before it. The tune is never given up.</summary>
public enum Ease
{
    /// <summary>Nothing is given up.</summary>
    None,

    /// <summary>No tenths.</summary>
    Tenths,

    /// <summary>No inner notes in the right hand's octaves, no chords of three.</summary>
    InnerNotes,

    /// <summary>No octaves, in either hand.</summary>
    Octaves,

    /// <summary>Single notes in the right hand.</summary>
    TwoNotes,
}

/// <summary>A bar that goes without.</summary>
/// <param name="Bar">Index of the bar.</param>
internal readonly record struct EasedBar(int Bar, Ease Ease);
