namespace Stridewright.Music;

/// <summary>
/// The kinds of chord of MusicXML 4.0 (simple type <c>kind-value</c>), in its order. The functional sixths,
/// pedal, Tristan and other have no fixed tones of their own or depend on context.
/// </summary>
public enum ChordKind
{
    Major,
    Minor,
    Augmented,
    Diminished,
    Dominant,
    MajorSeventh,
    MinorSeventh,
    DiminishedSeventh,
    AugmentedSeventh,
    HalfDiminished,
    MajorMinor,
    MajorSixth,
    MinorSixth,
    DominantNinth,
    MajorNinth,
    MinorNinth,
    Dominant11th,
    Major11th,
    Minor11th,
    Dominant13th,
    Major13th,
    Minor13th,
    SuspendedSecond,
    SuspendedFourth,
    Neapolitan,
    Italian,
    French,
    German,
    Pedal,
    Power,
    Tristan,
    Other,

    /// <summary>No chord: the harmony is silent here.</summary>
    None,
}

/// <summary>What a degree does to a chord.</summary>
public enum DegreeChange
{
    Add,
    Alter,
    Subtract,
}

/// <summary>One change to a chord's tones: the degree (1 to 13), its alteration in semitones, and how it applies.
/// For an added degree the alteration is relative to a dominant chord (MusicXML 4.0, <c>degree-alter</c>).</summary>
public readonly record struct ChordDegree(int Value, int Alter, DegreeChange Change);
