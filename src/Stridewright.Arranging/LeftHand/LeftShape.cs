using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>What the left hand may strike at a place.</summary>
internal enum LeftKind
{
    Bass,
    Octave,
    Tenth,
    RolledTenth,
    Chord,

    /// <summary>A note of a run, single, at a weak place.</summary>
    Run,

    /// <summary>A note of a run in octaves.</summary>
    RunOctave,

    /// <summary>Nothing is struck.</summary>
    Rest,
}

/// <summary>Keys of the left hand at one place.</summary>
/// <param name="Pitches">Lowest first.</param>
/// <param name="Price">Price of the shape by itself.</param>
/// <param name="MustStep">Only as a step between its neighbours: a note of a run or a walking bass.</param>
internal sealed record LeftShape(LeftKind Kind, ValueList<Pitch> Pitches, Stretch Stretch, long Price, bool MustStep)
{
    /// <summary>Asked for by the manner of its bar.</summary>
    public bool IsAsked { get; init; }

    /// <summary>How it must be reached from what is struck before; null: anyhow.</summary>
    public StepRule? Into { get; init; }

    /// <summary>How it must go on; null: anyhow.</summary>
    public StepRule? OnTo { get; init; }

    /// <summary>The keys are struck one after the other, a grid unit apart.</summary>
    public bool Broken { get; init; }

    public int Low { get; } = Pitches.Count > 0 ? Pitches[0].Midi : 0;

    public int High { get; } = Pitches.Count > 0 ? Pitches[^1].Midi : 0;

    public bool IsRest => Kind == LeftKind.Rest;

    public bool IsRun => Kind is LeftKind.Run or LeftKind.RunOctave;

    public bool IsStrained => Stretch == Stretch.Strained;
}

/// <summary>Which moves of the lowest key are allowed.</summary>
/// <param name="Least">Semitones at least.</param>
/// <param name="Most">Semitones at most.</param>
/// <param name="Direction">1: up; −1: down; 0: either.</param>
internal sealed record StepRule(int Least, int Most, int Direction)
{
    /// <summary>A step of a scale one way.</summary>
    public static StepRule Step(int direction) => new(1, 2, direction);

    public bool Allows(int move) =>
        Math.Abs(move) >= Least && Math.Abs(move) <= Most && (Direction == 0 || Math.Sign(move) == Direction);
}
