namespace Stridewright.Music;

/// <summary>
/// A spelled interval: how many letters and how many semitones it spans. A major third is (2, 4), a diminished
/// fourth (3, 4). Negative values go down; <c>default</c> is the unison.
/// </summary>
public readonly record struct Interval(int Steps, int Semitones)
{
    public static readonly Interval Unison = new(0, 0);
    public static readonly Interval MinorSecond = new(1, 1);
    public static readonly Interval MajorSecond = new(1, 2);
    public static readonly Interval MinorThird = new(2, 3);
    public static readonly Interval MajorThird = new(2, 4);
    public static readonly Interval PerfectFourth = new(3, 5);
    public static readonly Interval PerfectFifth = new(4, 7);
    public static readonly Interval Octave = new(7, 12);

    /// <summary>Places moved along the line of fifths.</summary>
    public int Fifths => 7 * Semitones - 12 * Steps;

    public Interval Plus(Interval other) => new(Steps + other.Steps, Semitones + other.Semitones);

    public Interval Inverse => new(-Steps, -Semitones);

    /// <summary>The interval that leads from one pitch to another.</summary>
    public static Interval Between(Pitch from, Pitch to) =>
        new(to.DiatonicIndex - from.DiatonicIndex, to.Midi - from.Midi);
}
