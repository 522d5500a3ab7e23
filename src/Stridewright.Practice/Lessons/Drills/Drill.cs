using Stridewright.Music;
using Stridewright.Practice.Listening.Reporting;

namespace Stridewright.Practice.Lessons;

/// <summary>What a drill works on.</summary>
public enum DrillKind
{
    /// <summary>One leap of the left hand, from bass to chord and back.</summary>
    Leap,

    /// <summary>A rhythm tapped, on one note, as written.</summary>
    Rhythm,

    /// <summary>Two chords of the left hand that follow each other.</summary>
    ChordChange,

    /// <summary>Octaves and chords of the right hand: the outer notes, then the inner ones.</summary>
    Frame,

    /// <summary>The left hand's beat over a few bars.</summary>
    Beat,

    /// <summary>From one strain into the next.</summary>
    MemoryJoin,

    /// <summary>Over a page turn.</summary>
    PageTurn,

    /// <summary>Over a place where a take was held up.</summary>
    Join,
}

/// <summary>A small piece of practice made from the piece's own notes.</summary>
public sealed record Drill
{
    /// <summary>Such as <c>leap-1</c>.</summary>
    public required string Id { get; init; }

    public required DrillKind Kind { get; init; }

    /// <summary>The hand it is for; null: both.</summary>
    public Hand? Hand { get; init; }

    public required string Name { get; init; }

    /// <summary>What it is made of, such as <c>F2 to A3, 16 semitones, seven times in the piece, first in bar 5</c>.</summary>
    public required string Claim { get; init; }

    /// <summary>How to practise it, a sentence each.</summary>
    public required ValueList<string> How { get; init; }

    /// <summary>Why it was chosen.</summary>
    public required string Why { get; init; }

    public required Score Score { get; init; }

    /// <summary>Indexes of the bars of the piece that it serves, rising.</summary>
    public required ValueList<int> Bars { get; init; }

    /// <summary>Kinds of remarks on takes that it answers.</summary>
    public required ValueList<RemarkKind> Serves { get; init; }

    public required TempoRange Tempo { get; init; }

    /// <summary>Effort of the hardest of its bars in the piece, 1 to 100.</summary>
    public required double Effort { get; init; }

    /// <summary>Id of the first step that has its notes.</summary>
    public required string Step { get; init; }

    /// <summary>What a take showed in its bars; empty: nothing did.</summary>
    public ValueList<RemarkKind> Heard { get; init; } = [];

    /// <summary>The leap or change that it is about; null for other kinds.</summary>
    public KeyMove? Move { get; init; }
}

/// <summary>From what a hand strikes to what it strikes next.</summary>
/// <param name="From">Keys as MIDI numbers, lowest first.</param>
/// <param name="To">Likewise.</param>
/// <param name="Times">How often it comes in the piece as written.</param>
/// <param name="Seconds">Least time there is for it at the piece's tempo.</param>
public sealed record KeyMove(ValueList<int> From, ValueList<int> To, int Times, double Seconds)
{
    /// <summary>Semitones from the lowest key to the lowest.</summary>
    public int Semitones => To[0] - From[0];
}
