namespace Stridewright.Music;

/// <summary>The seven letters, C first; the value is the diatonic index 0 to 6.</summary>
public enum Step
{
    C,
    D,
    E,
    F,
    G,
    A,
    B,
}

/// <summary>
/// A spelled pitch class: a letter with its alteration and no octave, held as its place on the line of fifths
/// (…, B♭ −2, F −1, C 0, G 1, D 2, …). <c>default</c> is C. Ordered by place on that line.
/// </summary>
/// <param name="Fifths">Place on the line of fifths; C is 0, each fifth up adds 1.</param>
public readonly record struct Tone(int Fifths) : IComparable<Tone>
{
    private static readonly int[] FifthsOfStep = [0, 2, 4, -1, 1, 3, 5];
    private static readonly Step[] StepOfFifths = [Step.F, Step.C, Step.G, Step.D, Step.A, Step.E, Step.B];

    public Tone(Step step, int alter)
        : this(FifthsOfStep[(int)step] + 7 * alter) { }

    /// <summary>The letter.</summary>
    public Step Step => StepOfFifths[Modulo(Fifths + 1, 7)];

    /// <summary>Semitones by which the letter is raised (positive) or lowered.</summary>
    public int Alter => (int)Math.Floor((Fifths + 1) / 7.0);

    /// <summary>Semitones above C, 0 to 11.</summary>
    public int PitchClass => Modulo(7 * Fifths, 12);

    public Tone PlusFifths(int fifths) => new(Fifths + fifths);

    /// <summary>This tone moved by a spelled interval.</summary>
    public Tone Plus(Interval interval) => new(Fifths + interval.Fifths);

    /// <summary>Reads a letter A–G (either case) and any of <c># b ♯ ♭ x</c> after it.</summary>
    public static bool TryParse(ReadOnlySpan<char> text, out Tone tone)
    {
        tone = default;
        if (text.IsEmpty)
        {
            return false;
        }
        var letter = "CDEFGAB".IndexOf(char.ToUpperInvariant(text[0]), StringComparison.Ordinal);
        if (letter < 0 || text.Length > 5)
        {
            return false;
        }
        var alter = 0;
        foreach (var c in text[1..])
        {
            switch (c)
            {
                case '#' or '♯':
                    alter++;
                    break;
                case 'b' or '♭':
                    alter--;
                    break;
                case 'x':
                    alter += 2;
                    break;
                default:
                    return false;
            }
        }
        tone = new Tone((Step)letter, alter);
        return true;
    }

    public static Tone Parse(string text) =>
        TryParse(text, out var tone) ? tone : throw new FormatException($"'{text}' names no tone");

    public int CompareTo(Tone other) => Fifths.CompareTo(other.Fifths);

    public static bool operator <(Tone a, Tone b) => a.Fifths < b.Fifths;

    public static bool operator >(Tone a, Tone b) => a.Fifths > b.Fifths;

    public static bool operator <=(Tone a, Tone b) => a.Fifths <= b.Fifths;

    public static bool operator >=(Tone a, Tone b) => a.Fifths >= b.Fifths;

    /// <summary>Letter and accidentals in plain text, such as <c>F#</c> or <c>Bb</c>.</summary>
    public override string ToString() => Step + (Alter >= 0 ? new string('#', Alter) : new string('b', -Alter));

    internal static int Modulo(int value, int by) => ((value % by) + by) % by;
}
