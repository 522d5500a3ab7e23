using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>How many fingers are printed.</summary>
public enum FingerDensity
{
    /// <summary>Every note.</summary>
    All,

    /// <summary>Where a hand begins or changes its position, or a finger is not the one that is expected.</summary>
    Changes,

    /// <summary>The dearest tenth of each hand's moves, and what leads to them.</summary>
    Hard,
}

/// <summary>Which fingers that stand in a score hold.</summary>
public enum KeptFingers
{
    All,

    /// <summary>Those that are not what the search itself takes there: of a score that it fingered, those that somebody has
    /// changed since.</summary>
    Edited,

    None,
}

/// <summary>How a score is to be fingered.</summary>
public sealed record FingeringOptions
{
    public FingerDensity Density { get; init; } = FingerDensity.All;

    /// <summary>Which fingers that stand in the score hold; the rest is worked around them.</summary>
    public KeptFingers Keep { get; init; } = KeptFingers.All;

    /// <summary>Tempo throughout, above 0; null: as printed.</summary>
    public double? QuartersPerMinute { get; init; }
}

/// <summary>A score with its fingers, and what they cost.</summary>
/// <param name="Score">The score with the fingers that are printed.</param>
/// <param name="Onsets">Every stroke of each hand with all its fingers, printed or not; right hand first.</param>
/// <param name="Remarks">Written fingers that cannot be, held keys let go, keys beyond the hand or without a finger.</param>
public sealed record FingeredScore(Score Score, ValueList<FingeredOnset> Onsets, ValueList<Diagnostic> Remarks)
{
    /// <summary>What a hand's fingering of one bar costs, in points.</summary>
    /// <param name="bar">Index of the bar.</param>
    public double CostOf(Hand hand, int bar) => Onsets.Where(o => o.Hand == hand && o.Bar == bar).Sum(o => o.Cost);
}

/// <summary>What one hand strikes at one moment, with its fingers.</summary>
/// <param name="Bar">Index of the bar.</param>
/// <param name="At">Place in the bar.</param>
/// <param name="Keys">Keys struck and held, lowest first.</param>
/// <param name="Terms">What the shape and the way to it cost, by term; terms of no cost left out.</param>
public sealed record FingeredOnset(
    Hand Hand,
    int Bar,
    ScoreTime At,
    ValueList<FingeredKey> Keys,
    ValueList<TermCost> Terms
)
{
    /// <summary>Points: what the published rules charge for one semitone is one.</summary>
    public double Cost => Terms.Sum(t => t.Points);

    /// <summary>The hand comes by a leap or after a rest, or begins.</summary>
    public bool IsFree { get; init; }

    /// <summary>The hand cannot take it in one grasp.</summary>
    public bool IsBeyondReach { get; init; }
}

/// <summary>A key and its finger.</summary>
/// <param name="Key">MIDI number.</param>
/// <param name="Finger">1 to 5; null: it stays without.</param>
/// <param name="IsHeld">Struck before and still down.</param>
public readonly record struct FingeredKey(int Key, int? Finger, bool IsHeld);

/// <summary>What one term charges.</summary>
public readonly record struct TermCost(CostTerm Term, double Points);
