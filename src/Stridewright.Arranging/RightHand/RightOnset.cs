using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>One onset of the right hand, placed by the ragging.</summary>
/// <param name="Tick">When it is struck.</param>
/// <param name="Tune">Index of the tune's note; −1 for a filler.</param>
internal readonly record struct RightOnset(int Tick, int Tune)
{
    public bool IsFiller => Tune < 0;
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
