using System.Globalization;

namespace Stridewright.Music;

/// <summary>
/// A spelled pitch: tone and octave, octave 4 starting at middle C. <c>default</c> is C0. Ordered by sounding
/// height, then by spelling. The MIDI note number is derived, C4 = 60.
/// </summary>
public readonly record struct Pitch(Tone Tone, int Octave) : IComparable<Pitch>
{
    private static readonly int[] SemitonesOfStep = [0, 2, 4, 5, 7, 9, 11];

    public Pitch(Step step, int alter, int octave)
        : this(new Tone(step, alter), octave) { }

    public Step Step => Tone.Step;

    public int Alter => Tone.Alter;

    /// <summary>MIDI note number, 60 for middle C. May lie outside 0–127.</summary>
    public int Midi => 12 * (Octave + 1) + SemitonesOfStep[(int)Step] + Alter;

    /// <summary>Staff position: seven per octave, C0 = 0.</summary>
    public int DiatonicIndex => 7 * Octave + (int)Step;

    public Pitch Plus(Interval interval)
    {
        var tone = Tone.Plus(interval);
        return new Pitch(tone, (DiatonicIndex + interval.Steps - (int)tone.Step) / 7);
    }

    /// <summary>The pitch with this MIDI number whose tone is the given one (same pitch class).</summary>
    public static Pitch At(int midi, Tone tone)
    {
        var bare = midi - tone.Alter - SemitonesOfStep[(int)tone.Step];
        if (Tone.Modulo(bare, 12) != 0)
        {
            throw new ArgumentException($"{tone} does not sound as key {midi}", nameof(tone));
        }
        return new Pitch(tone, bare / 12 - 1);
    }

    /// <summary>Reads text such as <c>F#4</c>, <c>Bb3</c>, <c>C-1</c>.</summary>
    public static bool TryParse(ReadOnlySpan<char> text, out Pitch pitch)
    {
        pitch = default;
        var split = text.IndexOfAnyInRange('0', '9');
        if (split > 0 && text[split - 1] == '-')
        {
            split--;
        }
        if (
            split <= 0
            || !Tone.TryParse(text[..split], out var tone)
            || !int.TryParse(text[split..], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var octave)
            || octave is < -2 or > 12
        )
        {
            return false;
        }
        pitch = new Pitch(tone, octave);
        return true;
    }

    public static Pitch Parse(string text) =>
        TryParse(text, out var pitch) ? pitch : throw new FormatException($"'{text}' names no pitch");

    public int CompareTo(Pitch other) =>
        Midi != other.Midi ? Midi.CompareTo(other.Midi) : DiatonicIndex.CompareTo(other.DiatonicIndex);

    public static bool operator <(Pitch a, Pitch b) => a.CompareTo(b) < 0;

    public static bool operator >(Pitch a, Pitch b) => a.CompareTo(b) > 0;

    public static bool operator <=(Pitch a, Pitch b) => a.CompareTo(b) <= 0;

    public static bool operator >=(Pitch a, Pitch b) => a.CompareTo(b) >= 0;

    public override string ToString() => Tone + Octave.ToString(CultureInfo.InvariantCulture);
}
