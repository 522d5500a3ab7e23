using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>What the left hand does in a bar.</summary>
public enum LeftManner
{
    /// <summary>Bass and chord in turn, with the runs and breaks of its level.</summary>
    Stride,

    /// <summary>Steps in octaves on every weak and strong place, into the next root.</summary>
    WalkingOctaves,

    /// <summary>Steps in tenths, rolled or broken where the hand asks for it.</summary>
    WalkingTenths,

    /// <summary>Roots reached by semitone.</summary>
    ChromaticApproach,

    /// <summary>The tenth's upper note first, the bass after it.</summary>
    BackBeatTenths,

    /// <summary>Bass and tenth one after the other, the chord's fifth between.</summary>
    BrokenTenths,

    /// <summary>A run against the direction of the tune.</summary>
    ContraryRun,

    /// <summary>One low bass through changing chords.</summary>
    LowPedal,

    /// <summary>A cadence in octaves: fourth degree, raised fourth, fifth, root.</summary>
    CadenceFigure,

    /// <summary>Struck on the first beat, or the first two, and then silent.</summary>
    StopTime,

    /// <summary>Silent after the first beat.</summary>
    Break,

    /// <summary>Silent.</summary>
    Silent,
}

/// <summary>What the right hand does in a bar.</summary>
public enum RightManner
{
    /// <summary>The tune ragged and filled as its level has it.</summary>
    Ragged,

    /// <summary>The tune as it stands, unragged.</summary>
    Plain,
    Thirds,
    Sixths,
    Octaves,

    /// <summary>Octaves with inner notes.</summary>
    FullOctaves,

    /// <summary>Calls that leave room for the left hand's answer.</summary>
    Call,

    CrushedNotes,

    /// <summary>Fills without the tune.</summary>
    FillsOnly,

    /// <summary>Calls, and in their gaps a short run of the left hand.</summary>
    Answer,

    /// <summary>The tune in the left thumb, the right hand's chords above it.</summary>
    ThumbTune,

    /// <summary>The tune below a moving line of the same hand.</summary>
    Obbligato,

    /// <summary>Groups of three units across the duple bar: secondary rag.</summary>
    ThreeAgainstFour,

    /// <summary>Into the next phrase a run in parallel thirds, sixths or octaves.</summary>
    ParallelRun,

    /// <summary>Long notes alternate with the octave, or a note of the chord, below them.</summary>
    Tremolo,

    /// <summary>Silent.</summary>
    Silent,
}

/// <summary>How one bar of a piece is to be played: what its form asks of each hand there.</summary>
public sealed record Treatment
{
    public static Treatment Usual { get; } = new();

    /// <summary>Name of the part of the form that the bar belongs to, such as <c>intro</c> or <c>A</c>; empty: no form was
    /// asked for.</summary>
    public string Part { get; init; } = "";

    /// <summary>How often the part's tune was heard before: like bars of different choruses draw their variety anew.</summary>
    public int Chorus { get; init; }

    public LeftManner Left { get; init; }

    public RightManner Right { get; init; }

    /// <summary>Octaves by which the right hand lies above the tune's own register.</summary>
    public int Lift { get; init; }

    /// <summary>Raggedness of this bar; null: the brief's.</summary>
    public double? Raggedness { get; init; }

    /// <summary>Thickness of the right hand against the usual, −1 (thin) to 1 (thick).</summary>
    public double Fullness { get; init; }

    /// <summary>The sustain pedal is held through each harmony of this bar.</summary>
    public bool Pedal { get; init; }

    /// <summary>Dynamic that begins with this bar, such as <c>mf</c>; null: the one before goes on.</summary>
    public string? Dynamic { get; init; }

    /// <summary>Letter or word printed over this bar; null: none.</summary>
    public string? Heading { get; init; }

    /// <summary>The strain leads on after this bar, and the word is printed.</summary>
    public bool Segue { get; init; }

    /// <summary>The notes here are the arranger's own (an introduction, a tag), not the tune's.</summary>
    public bool IsAdded { get; init; }

    /// <summary>Where in this bar the pick-up of the next strain begins; null: it has none.</summary>
    public ScoreTime? PickUpAt { get; init; }
}
