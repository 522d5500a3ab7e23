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
public sealed record Fault(FaultKind Kind, Hand Hand, int Bar, string Place, double Need, double Limit, string Message)
{
    /// <summary>Place in the bar.</summary>
    public ScoreTime At { get; init; }
}

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
