using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>What is held of one bar while the rest is worked again; every stage takes it as the only thing to do there.</summary>
internal sealed record HeldBar
{
    /// <summary>Onsets of the right hand, one a tick, in time order; null: it is free.</summary>
    public ValueList<HeldRight>? Right { get; init; }

    /// <summary>Notes of the tune that belong here and are not struck at all.</summary>
    public ValueList<int> LeftOut { get; init; } = [];

    /// <summary>Strokes of the left hand in time order; null: it is free.</summary>
    public ValueList<HeldLeft>? Left { get; init; }

    /// <summary>True where two lattices of one piece hold the same of the right hand.</summary>
    public static bool SameRight(Lattice a, Lattice b) =>
        a
            .Bars.Zip(b.Bars)
            .All(bars =>
                Equals(bars.First.Held?.Right, bars.Second.Held?.Right)
                && (bars.First.Held?.LeftOut ?? []).Equals(bars.Second.Held?.LeftOut ?? [])
            );
}

/// <summary>One held onset of the right hand: when, and as far as given, what.</summary>
/// <param name="Tune">Index of the tune's note; −1: a filler.</param>
internal sealed record HeldRight(int Tick, int Tune)
{
    /// <summary>Null: the tune's own key, or any for a filler.</summary>
    public Pitch? Top { get; init; }

    /// <summary>Keys under the top one, lowest first; null: free.</summary>
    public ValueList<Pitch>? Below { get; init; }

    public Pitch? Crushed { get; init; }

    /// <summary>When it is released; null: free, and so are voices and crushed notes.</summary>
    public int? End { get; init; }

    /// <summary>Struck under a note that sounds on above it.</summary>
    public bool UnderHeld { get; init; }
}

/// <summary>One held stroke of the left hand.</summary>
internal sealed record HeldLeft(int Tick, int End, LeftKind Kind, ValueList<Pitch> Pitches)
{
    /// <summary>The keys are struck one after the other, a grid unit apart.</summary>
    public bool Broken { get; init; }
}
