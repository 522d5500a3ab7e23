namespace Stridewright.Hands;

/// <summary>What the arranger must know of a player's hands and keyboard.</summary>
public sealed record PlayerHands
{
    /// <summary>Thumb to little finger, flat hand, in millimetres.</summary>
    public double SpanMm { get; init; } = 205;

    /// <summary>Width of an octave on the player's keyboard, in millimetres.</summary>
    public double OctaveMm { get; init; } = 165.1;

    /// <summary>The player wants nothing of an octave or more struck by one hand.</summary>
    public bool NoOctaves { get; init; }

    /// <summary>The player wants no strained stretch at all.</summary>
    public bool NoStrain { get; init; }
}
