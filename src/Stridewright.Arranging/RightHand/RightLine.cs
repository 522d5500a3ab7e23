using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>One onset of the right hand with its keys.</summary>
internal sealed record RightNote
{
    public required int Tick { get; init; }

    /// <summary>When it is released.</summary>
    public required int End { get; init; }

    /// <summary>Index of the tune's note; −1 for a filler.</summary>
    public required int Tune { get; init; }

    public required Pitch Top { get; init; }

    /// <summary>Keys under the top one, lowest first.</summary>
    public ValueList<Pitch> Below { get; init; } = [];

    /// <summary>A crushed note before the top one.</summary>
    public Pitch? Crushed { get; init; }

    /// <summary>In the lower of the hand's two voices: under a tune note that goes on sounding, or the tune under a line.
    /// </summary>
    public bool UnderHeld { get; init; }

    /// <summary>Sounds on above the fillers that follow.</summary>
    public bool Holds { get; init; }

    /// <summary>Its part in a device.</summary>
    public RightUse Use { get; init; }

    /// <summary>Steps of the scale down to what is struck with a note of a run.</summary>
    public int StepsUnder { get; init; }

    /// <summary>Lowest key of the hand here; 0: as usual.</summary>
    public int Floor { get; init; }

    public bool IsFiller => Tune < 0;

    public int Lowest => Below.Count > 0 ? Below[0].Midi : Top.Midi;
}

/// <summary>A stage's result: the right hand so far.</summary>
internal sealed record RightLine(RightNote[] Notes, long Cost);
