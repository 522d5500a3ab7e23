using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>What a note of the right hand does in a device that its bar was asked for.</summary>
internal enum RightUse
{
    /// <summary>No device: the tune or a filler.</summary>
    Usual,

    /// <summary>The tune's note once more, on the accent of a group.</summary>
    Accent,

    /// <summary>Under the accent of its group.</summary>
    Inner,

    /// <summary>A note of a run in parallel.</summary>
    Run,

    /// <summary>A chord above the tune in the left thumb.</summary>
    AfterBeat,

    /// <summary>A note of a line above the tune.</summary>
    Line,

    /// <summary>A stroke of a tremolo.</summary>
    Tremolo,
}

/// <summary>One onset of the right hand, placed by the ragging.</summary>
/// <param name="Tick">When it is struck.</param>
/// <param name="Tune">Index of the tune's note; −1 for a filler.</param>
internal readonly record struct RightOnset(int Tick, int Tune)
{
    public bool IsFiller => Tune < 0;

    public RightUse Use { get; init; }

    /// <summary>Lowest and highest key that a filler of a device may take; one key: that one.</summary>
    public (int Low, int High) Keys { get; init; }

    /// <summary>Steps of the scale down to what is struck with a note of a run.</summary>
    public int StepsUnder { get; init; }

    /// <summary>Lowest key of the hand here; 0: as usual.</summary>
    public int Floor { get; init; }
}

/// <summary>What the ragging decided.</summary>
/// <param name="Onsets">In time order.</param>
/// <param name="Cost">Cost of the solution, thousandths.</param>
internal sealed record Ragged(RightOnset[] Onsets, long Cost)
{
    /// <summary>The next level's rhythm, of which this one is a part; null: it stands alone.</summary>
    public Ragged? Fuller { get; init; }

    /// <summary>The extra prices it was found at.</summary>
    public RagExtra Extra { get; init; }

    /// <summary>Those of this level and of the ones above that it is a part of, in this order.</summary>
    public ValueList<RagExtra> Extras => Fuller is null ? [Extra] : [Extra, .. Fuller.Extras];
}
