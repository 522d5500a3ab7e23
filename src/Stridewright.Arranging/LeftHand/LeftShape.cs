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
    public int Low { get; } = Pitches.Count > 0 ? Pitches[0].Midi : 0;

    public int High { get; } = Pitches.Count > 0 ? Pitches[^1].Midi : 0;

    public bool IsRest => Kind == LeftKind.Rest;

    public bool IsRun => Kind is LeftKind.Run or LeftKind.RunOctave;

    public bool IsStrained => Stretch == Stretch.Strained;
}
