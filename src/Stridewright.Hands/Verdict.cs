using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>What cannot be played.</summary>
public enum FaultKind
{
    Reach,
    TooManyKeys,
    RolledTooWide,
    RolledTwice,
    StrainedTwice,
    StrainedOften,
    Leap,
    RepeatedKey,
    RepeatedOctave,
    SharedKey,
    OctaveUnwanted,
    OffKeyboard,
}

/// <summary>One spot that these hands cannot play as written.</summary>
/// <param name="Bar">Index of the bar in the score.</param>
/// <param name="Place">Place in words, such as <c>bar 12 beat 2.5</c>.</param>
/// <param name="Need">What the spot asks, in the unit of the kind (mm, bits per second, strokes per second, share).</param>
/// <param name="Limit">What these hands have.</param>
public sealed record Fault(FaultKind Kind, Hand Hand, int Bar, string Place, double Need, double Limit, string Message);

/// <summary>A judgement of a score for a pair of hands at a tempo.</summary>
/// <param name="Faults">Spots that cannot be played, in time order; empty when all can.</param>
/// <param name="Effort">How hard it is.</param>
public sealed record Verdict(ValueList<Fault> Faults, Effort Effort)
{
    public bool IsPlayable => Faults.Count == 0;
}

/// <summary>
/// How hard a score is for a pair of hands: the parts, and one number from 1 to 100 made of them.
/// </summary>
public sealed record Effort
{
    /// <summary>1 (nothing to it) to 100.</summary>
    public required double Overall { get; init; }

    public required HandEffort Right { get; init; }

    public required HandEffort Left { get; init; }
}

/// <summary>What one hand does.</summary>
public sealed record HandEffort
{
    /// <summary>Strokes per second, mean over the piece.</summary>
    public required double StrokesPerSecond { get; init; }

    /// <summary>95th percentile of the leap rates, bits per second.</summary>
    public required double LeapBitsPerSecond { get; init; }

    /// <summary>Share of the onsets of two or more keys that are strained.</summary>
    public required double StrainedShare { get; init; }

    /// <summary>Mean stretch of the onsets of two or more keys as a share of the span.</summary>
    public required double MeanStretch { get; init; }
}
