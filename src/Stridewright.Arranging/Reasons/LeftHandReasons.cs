using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>What a bass note is to its chord.</summary>
public enum BassRole
{
    Root,

    /// <summary>The bass that the chord symbol names behind its slash.</summary>
    SlashBass,

    /// <summary>The fifth under a tonic that the diminished chord on its raised fourth led to.</summary>
    FifthUnderTonic,

    /// <summary>The fifth, perfect or not.</summary>
    Fifth,
    Third,

    /// <summary>Another tone of the chord.</summary>
    ChordTone,

    /// <summary>The bass struck before, held on under a chord that has another bass.</summary>
    Pedal,

    /// <summary>Outside the chord, a step from the stroke that follows.</summary>
    StepTo,

    /// <summary>Outside the chord, a step from the stroke before.</summary>
    StepFrom,

    /// <summary>Outside the chord and no step.</summary>
    Foreign,
}

/// <summary>How a bass is struck.</summary>
public enum BassForm
{
    Single,
    Octave,
    Tenth,

    /// <summary>A tenth, its lower note first.</summary>
    RolledTenth,
}

/// <summary>One bass.</summary>
/// <param name="At">Place in the bar.</param>
/// <param name="Pitches">Lowest first.</param>
/// <param name="Chord">The chord that sounds there.</param>
/// <param name="Neighbour">Lowest note of the stroke that a step leads to or comes from; null where it is no step.</param>
public sealed record BassStroke(
    ScoreTime At,
    ValueList<Pitch> Pitches,
    ChordSymbol Chord,
    BassRole Role,
    BassForm Form,
    Pitch? Neighbour
);

/// <summary>What the basses of a bar take.</summary>
/// <param name="Strokes">At least one, in time order.</param>
public sealed record BassReason(int Bar, ValueList<BassStroke> Strokes) : Reason(Bar, Music.Hand.Left, Strokes[0].At);

/// <summary>What settled the inversion of an off-beat chord.</summary>
public enum VoicingGround
{
    /// <summary>No chord stands right before it.</summary>
    Opens,

    /// <summary>The same keys as the chord before.</summary>
    Stays,

    /// <summary>The harmony comes in with it: its bass lies lowest.</summary>
    RootDue,

    /// <summary>No inversion of these notes is nearer to the chord before.</summary>
    Nearest,

    /// <summary>A nearer one lies elsewhere than the chord does at every level.</summary>
    Home,

    /// <summary>A nearer one lies further from the middle of the chords' register.</summary>
    Register,

    /// <summary>A nearer one comes in the way of the right hand.</summary>
    RightHand,

    /// <summary>A nearer one strains the hand.</summary>
    Strain,

    /// <summary>A nearer one is a longer or a wrong way from the basses around it.</summary>
    Way,

    /// <summary>A nearer one leads less well to the next chord.</summary>
    NextChord,

    /// <summary>A nearer one has a semitone, or a third in the depth, inside it.</summary>
    Sound,

    /// <summary>A nearer one weighed as much but for the variety that the seed draws.</summary>
    Variety,
}

/// <summary>Why a tone of the chord is not struck.</summary>
public enum OmissionGround
{
    /// <summary>The bass before has it.</summary>
    InTheBass,

    /// <summary>The fifth, missed least.</summary>
    Fifth,

    /// <summary>A note added to triad and seventh.</summary>
    AddedNote,

    /// <summary>Three notes are enough.</summary>
    Thin,
}

/// <summary>A tone of the chord that the left hand leaves out.</summary>
public sealed record Omission(Tone Tone, OmissionGround Ground);

/// <summary>The voicing of an off-beat chord.</summary>
/// <param name="At">Place in the bar.</param>
/// <param name="Before">Keys of the chord before, lowest first; empty where none stands right before.</param>
/// <param name="Movement">Semitones that the voices move from there, lowest to lowest and so on.</param>
/// <param name="Nearer">The nearer inversion that was not taken; empty: there is none.</param>
/// <param name="NearerMovement">Semitones to it.</param>
public sealed record VoicingReason(
    int Bar,
    ScoreTime At,
    ChordSymbol Chord,
    ValueList<Pitch> Pitches,
    ValueList<Pitch> Before,
    int Movement,
    VoicingGround Ground,
    ValueList<Pitch> Nearer,
    int NearerMovement,
    ValueList<Omission> Omitted
) : Reason(Bar, Music.Hand.Left, At)
{
    /// <summary>Keys that are held from the chord before.</summary>
    public int Held => Pitches.Count(p => Before.Any(b => b.Midi == p.Midi));
}

/// <summary>An off-beat chord has two notes only.</summary>
/// <param name="At">Place in the bar.</param>
/// <param name="Fuller">The cheapest that has more.</param>
/// <param name="Ground">What stands against it.</param>
public sealed record ThinChordReason(
    int Bar,
    ScoreTime At,
    ValueList<Pitch> Pitches,
    ValueList<Pitch> Fuller,
    VoicingGround Ground
) : Reason(Bar, Music.Hand.Left, At);

/// <summary>Notes that lead by step into a bass.</summary>
/// <param name="Notes">Lowest notes, in time order.</param>
/// <param name="Into">Lowest note of the stroke after them.</param>
public sealed record RunReason(int Bar, ScoreTime At, ValueList<Pitch> Notes, Pitch Into)
    : Reason(Bar, Music.Hand.Left, At);

/// <summary>The left hand strikes the first beat and rests, since the right is busy.</summary>
/// <param name="RightOnsets">Strokes of the right hand after the first beat's.</param>
public sealed record BreakReason(int Bar, int RightOnsets) : Reason(Bar, Music.Hand.Left, default);
