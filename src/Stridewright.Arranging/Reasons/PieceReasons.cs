using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Chords that stand for others.</summary>
public sealed record HarmonyReason(int Bar, ScoreTime At, HarmonyChange Change) : Reason(Bar, null, At);

/// <summary>A part of the form begins.</summary>
/// <param name="Part">Its name, such as <c>Intro</c> or <c>A</c>.</param>
/// <param name="Before">How often its tune was heard before.</param>
public sealed record PartReason(int Bar, string Part, int Before) : Reason(Bar, null, default);

/// <summary>The left hand was asked for more than stride.</summary>
/// <param name="FellBack">It could not wholly be played so.</param>
public sealed record LeftMannerReason(int Bar, LeftManner Manner, bool FellBack)
    : Reason(Bar, Music.Hand.Left, default);

/// <summary>The right hand was asked for more than the tune ragged.</summary>
/// <param name="FellBack">It could not wholly be played so.</param>
public sealed record RightMannerReason(int Bar, RightManner Manner, bool FellBack)
    : Reason(Bar, Music.Hand.Right, default);

/// <summary>The bar was to stay as it was.</summary>
public sealed record KeptReason(int Bar, Hand Kept) : Reason(Bar, Kept, default);

/// <summary>Which limit bound.</summary>
public enum LimitKind
{
    /// <summary>An octave is wider than the hand; need and limit in millimetres.</summary>
    OctaveOut,

    /// <summary>No octaves are wanted.</summary>
    OctaveUnwanted,

    /// <summary>An octave strains the hand; need and the widest without strain in millimetres.</summary>
    OctaveStrained,

    /// <summary>The octave asks for a leap that is too fast; bits per second.</summary>
    OctaveLeap,

    /// <summary>A tenth is wider than the hand and is rolled; millimetres.</summary>
    TenthRolled,

    /// <summary>What was thicker could not be played: single notes.</summary>
    Thinned,

    /// <summary>The tempo was lowered; beats per minute wanted and printed.</summary>
    Slower,

    /// <summary>Strained stretches were made dearer to keep them rare; times the usual price, and 1.</summary>
    StrainDearer,
}

/// <summary>A limit of the hands that decided.</summary>
/// <param name="Keys">What would have been struck, or was rolled; lowest first, empty where no keys are meant.</param>
/// <param name="Need">What would be needed, in the unit of its kind; 0 where nothing is measured.</param>
/// <param name="Limit">What there is.</param>
public sealed record LimitReason(
    int Bar,
    Hand? Bound,
    ScoreTime At,
    LimitKind Kind,
    ValueList<Pitch> Keys,
    double Need,
    double Limit
) : Reason(Bar, Bound, At);
