using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>What a note of the tune was taken early over or late after: its plain place.</summary>
public enum PlainPlace
{
    BarLine,
    MidBar,
    Beat,
    OffBeat,
}

/// <summary>A note of the tune that is struck before or after its plain place.</summary>
/// <param name="At">Where it is struck.</param>
/// <param name="By">How far it was moved: a unit of the grid.</param>
/// <param name="Early">Anticipated; else delayed.</param>
/// <param name="Over">Its plain place.</param>
/// <param name="SoundsOn">Sounds through that place.</param>
/// <param name="Chord">Of its plain place, of which it is a tone; null where it is none.</param>
/// <param name="Syllable">The stressed syllable that it carries; null: none.</param>
public sealed record ShiftReason(
    int Bar,
    ScoreTime At,
    Pitch Pitch,
    ScoreTime By,
    bool Early,
    PlainPlace Over,
    bool SoundsOn,
    ChordSymbol? Chord,
    string? Syllable
) : Reason(Bar, Music.Hand.Right, At);

/// <summary>Short-long-short figures in the right hand of a bar.</summary>
/// <param name="Untied">Inside a half bar.</param>
/// <param name="MidBar">Across mid-bar.</param>
/// <param name="BarLine">Across the bar line into the next bar.</param>
public sealed record FigureReason(int Bar, int Untied, bool MidBar, bool BarLine)
    : Reason(Bar, Music.Hand.Right, default);

/// <summary>The right hand's rhythm is that of an earlier bar.</summary>
/// <param name="Like">Index of that bar.</param>
/// <param name="LikeNumber">Its printed number.</param>
public sealed record MotifReason(int Bar, int Like, string LikeNumber) : Reason(Bar, Music.Hand.Right, default);

/// <summary>Notes put in between those of the tune.</summary>
/// <param name="Count">At least one.</param>
/// <param name="Under">The note of the tune that sounds on above them; null: none does.</param>
public sealed record FillReason(int Bar, int Count, Pitch? Under) : Reason(Bar, Music.Hand.Right, default);

/// <summary>How the tune is thickened.</summary>
public enum TuneTexture
{
    Thirds,
    Sixths,

    /// <summary>Another note under the top one, less than an octave away.</summary>
    TwoNotes,
    Octaves,

    /// <summary>Octaves with notes inside.</summary>
    FullOctaves,

    /// <summary>Two notes or more under the top one, less than an octave.</summary>
    Chords,
}

/// <summary>Why the tune is thickened in a bar.</summary>
public enum TextureGround
{
    /// <summary>Asked for.</summary>
    Asked,

    /// <summary>As in the bar before.</summary>
    Lasts,

    /// <summary>On accents alone: notes on strong places and long ones.</summary>
    Accents,

    /// <summary>Nothing but the usual shares.</summary>
    Usual,
}

/// <summary>What the right hand has under its top notes.</summary>
/// <param name="Texture">The most frequent kind of the bar.</param>
/// <param name="Count">Strokes of this kind.</param>
/// <param name="Of">Strokes of the bar.</param>
public sealed record TextureReason(int Bar, TuneTexture Texture, int Count, int Of, TextureGround Ground)
    : Reason(Bar, Music.Hand.Right, default);

/// <summary>A black key slides into the white one above it.</summary>
public sealed record CrushedReason(int Bar, ScoreTime At, Pitch Crushed, Pitch Into)
    : Reason(Bar, Music.Hand.Right, At);
