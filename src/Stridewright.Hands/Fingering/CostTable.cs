namespace Stridewright.Hands;

/// <summary>
/// One set of prices, in hundredths of a point; a point is what the published rules charge for one semitone. The rules are
/// described in <see cref="LineCosts"/> and <see cref="GraspCosts"/>.
/// </summary>
internal sealed record CostTable
{
    /// <summary>A price that nothing is worth.</summary>
    public const int Never = 10_000_000;

    /// <summary>Distances are millimetres on the keyboard given as whole mean semitones (Jacobs 2001), and limits those of the
    /// hand; else both are semitones as printed.</summary>
    public bool InMillimetres { get; init; }

    /// <summary>Rule 1, for each semitone.</summary>
    public int Stretch { get; init; } = 200;

    /// <summary>Rule 2, for each semitone, of a pair with the thumb.</summary>
    public int SmallWithThumb { get; init; } = 100;

    /// <summary>Rule 2, of another pair.</summary>
    public int Small { get; init; } = 200;

    /// <summary>Rule 3, for each semitone, of a pair with the thumb.</summary>
    public int LargeWithThumb { get; init; } = 100;

    /// <summary>Rule 3, of another pair.</summary>
    public int Large { get; init; } = 200;

    /// <summary>Rule 4, for a half change.</summary>
    public int PositionChange { get; init; } = 100;

    /// <summary>Rule 5, for each semitone.</summary>
    public int PositionSize { get; init; } = 100;

    /// <summary>Rule 6, of the fourth finger.</summary>
    public int Fourth { get; init; } = 100;

    /// <summary>Rule 6, of the fourth finger in a chord or dyad.</summary>
    public int FourthInChord { get; init; } = 100;

    /// <summary>Rule 6, of the fifth finger.</summary>
    public int Fifth { get; init; } = 100;

    /// <summary>Rule 7.</summary>
    public int ThreeFourFive { get; init; } = 100;

    /// <summary>Rule 8.</summary>
    public int ThreeToFour { get; init; } = 100;

    /// <summary>Rule 9.</summary>
    public int FourOnBlack { get; init; } = 100;

    /// <summary>Rule 10, itself.</summary>
    public int ThumbOnBlack { get; init; } = 100;

    /// <summary>Rule 10, for each white neighbour.</summary>
    public int ThumbBesideWhite { get; init; } = 200;

    /// <summary>Rule 11, for each white neighbour.</summary>
    public int FiveBesideWhite { get; init; } = 200;

    /// <summary>Rule 12, on one level.</summary>
    public int PassOnLevel { get; init; } = 100;

    /// <summary>Rule 12, between another finger on a white key and the thumb on a black one.</summary>
    public int PassToBlack { get; init; } = 300;

    /// <summary>What cannot be connected is hopped: the price between single keys.</summary>
    public int Hop { get; init; } = Never;

    /// <summary>The same where a chord takes part.</summary>
    public int HopOfChord { get; init; } = Never;

    /// <summary>For each semitone that the hand goes in a hop.</summary>
    public int HopSize { get; init; }

    /// <summary>For each key struck again by another finger.</summary>
    public int ChangeOnRepeat { get; init; }

    /// <summary>One finger strikes a key again faster than fingers do.</summary>
    public int FastRepeat { get; init; }

    /// <summary>For each held key that changes its finger.</summary>
    public int Substitution { get; init; } = Never;

    /// <summary>For each finger that a leapt bass lies away from the fifth.</summary>
    public int BassFinger { get; init; }

    /// <summary>The fifth finger on the black key of an octave.</summary>
    public int OctaveOnBlack { get; init; }

    /// <summary>The thumb on two white keys of a chord.</summary>
    public int ThumbOnTwo { get; init; } = Never;

    /// <summary>For each key of a long run with another finger than an octave before.</summary>
    public int RunUnlike { get; init; }

    /// <summary>For each semitone beyond the practical limit, where nothing else is left.</summary>
    public int BeyondReach { get; init; } = 1000;

    /// <summary>The twelve rules of Parncutt et al. 1997, in semitones, all weights 1. For single lines.</summary>
    public static CostTable Published { get; } = new();

    /// <summary>
    /// The rules as refined by Jacobs 2001 (millimetres, one price of a large span, the fifth finger not weak, rule 7 off), with
    /// terms for chords after Al Kasimi et al. 2007 and for stride. Tuned so that the twelve major scales come out as handbooks
    /// have them: the thumb keeps off black keys at a higher price, passes more dearly between white keys, and the fourth finger
    /// is feared less (rules 8 and 9 off).
    /// </summary>
    public static CostTable Shipped { get; } =
        new()
        {
            InMillimetres = true,
            Large = 100,
            Fourth = 50,
            Fifth = 0,
            ThreeFourFive = 0,
            ThreeToFour = 0,
            FourOnBlack = 0,
            ThumbOnBlack = 400,
            PassOnLevel = 200,
            Hop = 2000,
            HopOfChord = 100,
            HopSize = 25,
            ChangeOnRepeat = 100,
            FastRepeat = 200,
            Substitution = 400,
            BassFinger = 100,
            OctaveOnBlack = 400,
            ThumbOnTwo = 300,
            RunUnlike = 300,
        };
}
