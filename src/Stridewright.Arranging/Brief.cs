using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>The manner of a setting.</summary>
public enum Feel
{
    /// <summary>Rag in 2/4, straight sixteenths.</summary>
    Classic,

    /// <summary>4/4, swung eighths in the right hand.</summary>
    Stride,

    /// <summary>Rag waltz, 3/4.</summary>
    Waltz,

    /// <summary>March in 6/8.</summary>
    SixEight,
}

/// <summary>What the arranger is asked for. Null: the arranger chooses.</summary>
public sealed record Brief
{
    public const int LowestLevel = 1,
        HighestLevel = 6;

    /// <summary>Tempi beyond these are typing errors: a beat of six seconds, or one of an eighth of a second.</summary>
    public const double SlowestBeats = 10,
        FastestBeats = 480;

    /// <summary>The scale of effort.</summary>
    public const double LeastEffort = 1,
        GreatestEffort = 100;

    /// <summary>Signatures are written with up to seven accidentals; so are tonics.</summary>
    public const int FurthestTonic = 7;

    public Feel? Feel { get; init; }

    /// <summary>1 to 6.</summary>
    public int LeftLevel { get; init; } = 4;

    /// <summary>1 to 6.</summary>
    public int RightLevel { get; init; } = 4;

    /// <summary>0 (plain) to 1.</summary>
    public double Raggedness { get; init; } = 0.5;

    /// <summary>Tonic wanted; the mode stays the tune's.</summary>
    public Tone? Tonic { get; init; }

    /// <summary>Tempo wanted in beats as printed: quarters in 2/4, 4/4 and 3/4, dotted quarters in 6/8.</summary>
    public double? BeatsPerMinute { get; init; }

    /// <summary>
    /// The left hand is written alone. Over a tune with notes it is the left hand of the setting for both hands, so that
    /// it is not learned twice. A tune without notes is set for the left hand alone in any case.
    /// </summary>
    public bool LeftHandOnly { get; init; }

    public PlayerHands Hands { get; init; } = new();

    /// <summary>The tune's words are printed under the right hand.</summary>
    public bool Lyrics { get; init; }

    /// <summary>How much the harmony is enriched.</summary>
    public HarmonyWish Harmony { get; init; } = new();

    /// <summary>Form of the piece; null: the tune as it stands.</summary>
    public FormLine? Form { get; init; }

    /// <summary>Playing time wanted in seconds, repeats included: the form grows or shrinks to it, the tempo bends a little
    /// where the brief leaves it open.</summary>
    public double? Seconds { get; init; }

    /// <summary>The form grows or shrinks to at most so many printed bars; null: no matter.</summary>
    public int? MostBars { get; init; }

    /// <summary>The plain tune, where it stood before it was ragged, is shown on a small staff above (the device of the
    /// School of Ragtime, 1908); the words go there where the left hand is written alone.</summary>
    public bool ShowPlain { get; init; }

    /// <summary>A sketch is made beside the setting: tune, chords and bass line.</summary>
    public bool Sketch { get; init; }

    /// <summary>Who sings the tune, to be accompanied; null: the right hand plays it.</summary>
    public Singer? Singer { get; init; }

    /// <summary>What the left hand is to do at fitting places, in turn by the phrase.</summary>
    public ValueList<LeftManner> LeftManners { get; init; } = [];

    /// <summary>What the right hand is to do at fitting places, in turn by the phrase.</summary>
    public ValueList<RightManner> RightManners { get; init; } = [];

    /// <summary>Bars that stay as they are, each hand of a bar at most once.</summary>
    public ValueList<KeptBar> Kept { get; init; } = [];

    /// <summary>Figures of one's own that are put where their kind belongs, where these hands can play them; the bars are
    /// kept then, and the brief of the setting has them under <see cref="Kept"/>.</summary>
    public ValueList<OwnFigure> Figures { get; init; } = [];

    /// <summary>What an earlier setting of the same brief settled, so that it changes only where it must; null: nothing
    /// did.</summary>
    public Settled? Settled { get; init; }

    /// <summary>Effort that the piece may ask for, 1 to 100: the levels are chosen for it; null: no matter.</summary>
    public double? MostEffort { get; init; }

    /// <summary>Earlier settings that this one is to differ from; null: none.</summary>
    internal Unlike? Unlike { get; init; }

    public int Seed { get; init; } = 1;
}
