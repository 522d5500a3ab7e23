using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>
/// How hard a score is for a pair of hands: one number from 1 to 100 and the parts it is made of. See
/// <see cref="HandEffort"/> for what counts.
/// </summary>
public sealed record Effort
{
    /// <summary>1 (nothing to it) to 100: two thirds the busier hand's, one third the other's.</summary>
    public required double Overall { get; init; }

    public required HandEffort Right { get; init; }

    public required HandEffort Left { get; init; }

    /// <summary>Every bar in order.</summary>
    public required ValueList<BarEffort> Bars { get; init; }
}

/// <summary>What makes a part hard for a hand.</summary>
public enum EffortKind
{
    /// <summary>How wide the hand is opened, and how often.</summary>
    Reach,

    /// <summary>Stretches that are strained or out of reach.</summary>
    Strain,

    /// <summary>How fast it must travel.</summary>
    Leap,

    /// <summary>How many strokes a second, and how many keys in each.</summary>
    Density,

    /// <summary>One key or octave struck again and again, by its speed.</summary>
    Repetition,

    /// <summary>Rhythm against the beat and against the other hand.</summary>
    Independence,

    /// <summary>What the eye has to sort out: ties, accidentals, ledger lines, tuplets, second voices, the signature.</summary>
    Reading,
}

/// <summary>One part of a hand's effort.</summary>
/// <param name="Amount">0 (none) to 1 (no more could count).</param>
/// <param name="Points">What it adds to the hand's value; the values of all parts and 1 add up to it.</param>
public sealed record EffortPart(EffortKind Kind, double Amount, double Points);

/// <summary>How hard one bar is, measured as the whole score is.</summary>
/// <param name="Bar">Index of the bar in the score.</param>
/// <param name="Number">Its printed number.</param>
/// <param name="Value">Both hands, 1 to 100.</param>
public sealed record BarEffort(int Bar, string Number, double Value)
{
    /// <summary>The right hand alone, 1 to 100; 1 where it rests.</summary>
    public double Right { get; init; } = EffortMeasure.Least;

    /// <summary>The left hand alone, 1 to 100; 1 where it rests.</summary>
    public double Left { get; init; } = EffortMeasure.Least;

    /// <summary>Parts of the right hand's value; empty where it rests.</summary>
    public ValueList<EffortPart> RightParts { get; init; } = [];

    /// <summary>Parts of the left hand's value; empty where it rests.</summary>
    public ValueList<EffortPart> LeftParts { get; init; } = [];
}

/// <summary>What one hand does.</summary>
public sealed record HandEffort
{
    /// <summary>1 to 100, made of <see cref="Parts"/>: higher with each of them.</summary>
    public required double Value { get; init; }

    /// <summary>The seven parts in the order of their kinds; empty for a hand that rests.</summary>
    public ValueList<EffortPart> Parts { get; init; } = [];

    /// <summary>Strokes per second, mean over the piece.</summary>
    public required double StrokesPerSecond { get; init; }

    /// <summary>Keys struck per stroke, mean; 0 for a hand that rests.</summary>
    public required double KeysPerStroke { get; init; }

    /// <summary>95th percentile of the leap rates, bits per second.</summary>
    public required double LeapBitsPerSecond { get; init; }

    /// <summary>Median of the leap rates, bits per second.</summary>
    public required double MedianLeapBitsPerSecond { get; init; }

    /// <summary>Share of the onsets of two or more keys, rolled ones apart, that are strained or out of reach.</summary>
    public required double StrainedShare { get; init; }

    /// <summary>Mean stretch of the onsets of two or more keys, rolled ones too, as a share of the span.</summary>
    public required double MeanStretch { get; init; }

    /// <summary>Share of all onsets that have two or more keys down at once.</summary>
    public required double StretchedShare { get; init; }

    /// <summary>Share of the strokes on a weak place that sound through the next stronger one.</summary>
    public required double SyncopatedShare { get; init; }
}
