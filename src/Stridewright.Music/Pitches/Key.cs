namespace Stridewright.Music;

/// <summary>The seven diatonic modes; major and minor first, so that <c>default</c> is major.</summary>
public enum Mode
{
    Major,
    Minor,
    Dorian,
    Phrygian,
    Lydian,
    Mixolydian,
    Locrian,
}

/// <summary>A key: tonic and mode. <c>default</c> is C major.</summary>
public readonly record struct Key(Tone Tonic, Mode Mode)
{
    // Sharps of the mode's signature relative to the major key on the same tonic.
    private static readonly int[] SignatureShift = [0, -3, -2, -4, 1, -1, -5];

    /// <summary>Signature: sharps (positive) or flats (negative).</summary>
    public int Signature => Tonic.Fifths + SignatureShift[(int)Mode];

    /// <summary>True when the third above the tonic is minor.</summary>
    public bool IsMinor => Mode is Mode.Minor or Mode.Dorian or Mode.Phrygian or Mode.Locrian;

    /// <summary>The key with this signature in this mode.</summary>
    public static Key FromSignature(int sharps, Mode mode) => new(new Tone(sharps - SignatureShift[(int)mode]), mode);

    /// <summary>The tone that the signature gives to a letter.</summary>
    public Tone ToneOf(Step step)
    {
        // The signature holds the seven neighbouring fifths from Signature - 1 to Signature + 5.
        var natural = new Tone(step, 0).Fifths;
        var low = Signature - 1;
        return new Tone(low + Tone.Modulo(natural - low, 7));
    }

    /// <summary>True when the tone belongs to the signature.</summary>
    public bool Contains(Tone tone) => tone.Fifths >= Signature - 1 && tone.Fifths <= Signature + 5;

    /// <summary>
    /// A spelling for a sounding key: the signature's own tone where there is one, else the nearest on the line
    /// of fifths to the tonic's chromatic neighbourhood (raised fourth, lowered seventh, third and sixth).
    /// </summary>
    public Tone Spell(int midi)
    {
        var major = Signature + (IsMinor ? 3 : 0);
        var low = IsMinor ? major - 6 : major - 4;
        var wanted = Tone.Modulo(7 * midi, 12);
        return new Tone(low + Tone.Modulo(wanted - low, 12));
    }

    public Key Plus(Interval interval) => new(Tonic.Plus(interval), Mode);

    public override string ToString() =>
        Tonic
        + (
            Mode is Mode.Major ? " major"
            : Mode is Mode.Minor ? " minor"
            : " " + Mode.ToString().ToLowerInvariant()
        );
}
