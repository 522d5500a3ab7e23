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
    TenthUnwanted,
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

    /// <summary>What is worth knowing and no fault: where the hands cross.</summary>
    public ValueList<Diagnostic> Remarks { get; init; } = [];

    /// <summary>The bars that ask most, hardest first, earlier ones first among equals; silent bars left out.</summary>
    public ValueList<BarEffort> HardestBars(int count) =>
        Effort
            .Bars.Where(b => b.Value > EffortMeasure.Least)
            .OrderByDescending(b => b.Value)
            .ThenBy(b => b.Bar)
            .Take(count)
            .ToValueList();
}

/// <summary>
/// How hard a score is for a pair of hands: the parts, and one number from 1 to 100 made of them. See
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

/// <summary>How hard one bar is, both hands, measured as the whole score is.</summary>
/// <param name="Bar">Index of the bar in the score.</param>
/// <param name="Number">Its printed number.</param>
/// <param name="Value">1 to 100.</param>
public sealed record BarEffort(int Bar, string Number, double Value);

/// <summary>What one hand does.</summary>
public sealed record HandEffort
{
    /// <summary>1 to 100, made of the parts below: higher with each of them.</summary>
    public required double Value { get; init; }

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
