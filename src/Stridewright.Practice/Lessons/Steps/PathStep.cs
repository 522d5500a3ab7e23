using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>Which hands play a step.</summary>
public enum StepHands
{
    Left,
    Right,
    Together,
}

/// <summary>What a step is about.</summary>
public enum StepKind
{
    /// <summary>Bass and chord in one place, no leaps.</summary>
    LeftInPlace,

    /// <summary>Second basses, leaps up to an octave.</summary>
    LeftSecondBass,

    /// <summary>Stride on single basses.</summary>
    LeftStride,

    /// <summary>Octaves, and what else the left hand has short of the whole.</summary>
    LeftOctaves,

    /// <summary>The left hand as written.</summary>
    LeftWhole,

    /// <summary>The tune on the beat.</summary>
    RightPlain,

    /// <summary>One returning off-beat figure in a phrase.</summary>
    RightFirstFigures,

    /// <summary>Syncopation within the half bar, without a tie.</summary>
    RightUntied,

    /// <summary>Syncopation tied over the middle of the bar, in three over a beat.</summary>
    RightTiedMid,

    /// <summary>Syncopation tied over the bar line; every rhythm as written, on single notes.</summary>
    RightTiedBar,

    /// <summary>Thirds and sixths under the tune.</summary>
    RightPairs,

    /// <summary>Octaves without inner notes.</summary>
    RightOctaves,

    /// <summary>The right hand as written.</summary>
    RightWhole,

    /// <summary>Both hands, easier than written, the whole piece.</summary>
    TogetherEasy,

    /// <summary>Both hands as written, the hardest strain.</summary>
    TogetherStrain,

    /// <summary>Both hands as written, the half of the piece around it.</summary>
    TogetherHalf,

    /// <summary>The piece.</summary>
    TogetherWhole,
}

/// <summary>One step on the way to a piece.</summary>
public sealed record PathStep
{
    /// <summary>Such as <c>left-1</c>, <c>right-3</c>, <c>together-2</c>.</summary>
    public required string Id { get; init; }

    public required StepHands Hands { get; init; }

    public required StepKind Kind { get; init; }

    /// <summary>A few words, such as <c>Left hand: single-bass stride</c>.</summary>
    public required string Name { get; init; }

    /// <summary>What it is for, in one sentence.</summary>
    public required string Aim { get; init; }

    /// <summary>To be played; its bars keep the piece's numbers and ids. Its tempo is that of its test.</summary>
    public required Score Score { get; init; }

    /// <summary>Indexes of its first and last bar in the piece.</summary>
    public required int First { get; init; }

    /// <inheritdoc cref="First"/>
    public required int Last { get; init; }

    /// <summary>Effort at the tempo of its test, 1 to 100: of the one hand, or with both hands of the hardest strain in it. It
    /// rises from a step to the next of the same hands.</summary>
    public required double Effort { get; init; }

    /// <summary>Share of the strokes of the step before (of the same hands) that stand again in this one; 1 for the first.</summary>
    public double Again { get; init; } = 1;

    public required TempoRange Tempo { get; init; }

    public required MoveOn Test { get; init; }

    /// <summary>Ids of the steps that come before it.</summary>
    public ValueList<string> After { get; init; } = [];

    /// <summary>The step is the piece itself, one hand of it or some bars of it.</summary>
    public bool IsOfThePiece => Kind is StepKind.LeftWhole or StepKind.RightWhole or >= StepKind.TogetherStrain;
}

/// <summary>Tempo to begin with and tempo to come to, in beats a minute.</summary>
public sealed record TempoRange(double From, double To)
{
    /// <summary>The rungs from the one to the other, each about 5 % above the one before.</summary>
    public ValueList<double> Ladder => TempoLadder.Of(From, To);
}

/// <summary>When a step is done: so many clean takes in a row at this tempo.</summary>
/// <param name="CleanTakes">In a row.</param>
/// <param name="LeastRight">Share of the notes that are right in a clean take.</param>
public sealed record MoveOn(int CleanTakes, double BeatsPerMinute, double LeastRight);

/// <summary>A step that this player does not need.</summary>
/// <param name="Why">In one sentence.</param>
public sealed record SkippedStep(PathStep Step, string Why);
