using Stridewright.Music;

namespace Stridewright.Workbench;

/// <summary>Size of the printed page.</summary>
public enum Paper
{
    A4,
    Letter,
}

/// <summary>What is written of an arrangement.</summary>
public enum OutputFormat
{
    MusicXml,

    /// <summary>MusicXML in its compressed container.</summary>
    Mxl,
    Midi,
    Pdf,

    /// <summary>One picture a page, to scale.</summary>
    Svg,

    /// <summary>One picture a page, of 150 dots an inch.</summary>
    Png,

    /// <summary>The recorded piano playing it.</summary>
    Wav,

    /// <summary>One HTML file with score and sound for a phone or a tablet, which needs no network.</summary>
    Phone,
}

/// <summary>Which tunes to arrange, how, and where the results go.</summary>
public sealed record ArrangeRequest
{
    public const string UsualFolder = "arrangements";

    /// <summary>All formats but the pictures, the container and the sound.</summary>
    public static readonly ValueList<OutputFormat> UsualFormats =
    [
        OutputFormat.MusicXml,
        OutputFormat.Midi,
        OutputFormat.Pdf,
    ];

    /// <summary>Files, books and folders, in order; empty where <see cref="Chords"/> are given.</summary>
    public required ValueList<string> Tunes { get; init; }

    /// <summary>A line of chords such as <c>F | D7 | G7 C7 | F</c>, to be set for the left hand alone.</summary>
    public string? Chords { get; init; }

    /// <summary>Title of what is made of <see cref="Chords"/>; null: one of our own.</summary>
    public string? Title { get; init; }

    /// <summary>Each tune in all twelve keys, from its own round by fourths.</summary>
    public bool AllKeys { get; init; }

    public string OutputFolder { get; init; } = UsualFolder;

    public ValueList<OutputFormat> Formats { get; init; } = UsualFormats;

    public Paper Paper { get; init; } = Paper.A4;

    /// <summary>The plain tune is written beside each arrangement, as NAME.plain in the same formats.</summary>
    public bool Plain { get; init; }

    /// <summary>A one-page sketch of each arrangement is written beside it, as NAME.sketch in the same formats.</summary>
    public bool Sketch { get; init; }

    /// <summary>The reasons of every bar are reported.</summary>
    public bool Why { get; init; }

    /// <summary>The most telling reasons stand as numbered notes under the score, and on a page after it.</summary>
    public bool Notes { get; init; }

    /// <summary>Existing outputs of other content may be replaced.</summary>
    public bool Replace { get; init; }

    /// <summary>Which part of each file has the tune: a name, abbreviation, id or number from 1, in MusicXML with a voice
    /// behind a colon; null for the likeliest.</summary>
    public string? Part { get; init; }

    /// <summary>Levels at which each tune is set, for both hands; null: the one of the wishes.</summary>
    public LevelRange? Levels { get; init; }

    /// <summary>The form is grown or shrunk to fill at most so many pages; null: no matter.</summary>
    public int? Pages { get; init; }

    /// <summary>How many settings of each tune, different in motif and bass plan; null: one.</summary>
    public int? Settings { get; init; }

    /// <summary>Arrangement file whose figures are put where their kind belongs; null: none.</summary>
    public string? Figures { get; init; }

    /// <summary>Arrangement file to be written with the one tune of the run and the brief; null: none.</summary>
    public string? Save { get; init; }

    public Wishes Wishes { get; init; } = new();
}

/// <summary>Levels from one to another, both counted in.</summary>
public sealed record LevelRange(int First, int Last);

/// <summary>
/// The brief as a person gives it; null where nothing was said. Names of the wishes in messages are the words a person
/// uses: feel, level, left, right, raggedness, key, bpm, span, octave-width,
/// player, play, harmony, without, form, minutes, seed.
/// </summary>
public sealed record Wishes
{
    /// <summary><c>classic</c>, <c>stride</c>, <c>waltz</c> or <c>six-eight</c>.</summary>
    public string? Feel { get; init; }

    /// <summary>1 to 6, for both hands; excludes <see cref="LeftLevel"/> and <see cref="RightLevel"/>.</summary>
    public int? Level { get; init; }

    /// <summary>1 to 100, instead of a level; null: no matter.</summary>
    public double? Effort { get; init; }

    public int? LeftLevel { get; init; }

    public int? RightLevel { get; init; }

    /// <summary>0 to 1.</summary>
    public double? Raggedness { get; init; }

    /// <summary>Tonic such as <c>F</c> or <c>Bb</c>.</summary>
    public string? Key { get; init; }

    /// <summary>The tune is left to a voice.</summary>
    public bool Accompany { get; init; }

    /// <summary>What the voice reaches, such as <c>A3-D5</c>; null: the tune is sung where it is written.</summary>
    public string? Range { get; init; }

    /// <summary>Beats per minute as printed.</summary>
    public double? BeatsPerMinute { get; init; }

    /// <summary>File of the player whose hands are meant; what is said below goes before it.</summary>
    public string? Player { get; init; }

    /// <summary>The text of a player file, where it is at hand; <see cref="Player"/> goes before it.</summary>
    public string? PlayerText { get; init; }

    /// <summary>Such as <c>205</c>, <c>8.1in</c> or <c>ninth</c>.</summary>
    public string? Span { get; init; }

    /// <summary>Such as <c>165.1</c> or <c>6.5in</c>.</summary>
    public string? OctaveWidth { get; init; }

    public bool NoOctaves { get; init; }

    /// <summary>The left hand is written alone.</summary>
    public bool LeftHandOnly { get; init; }

    /// <summary>The tune's words are printed.</summary>
    public bool Lyrics { get; init; }

    /// <summary>What the hands are to do at fitting places, such as <c>walking-octaves</c> or <c>thirds</c>.</summary>
    public ValueList<string> Play { get; init; } = [];

    /// <summary><c>plain</c>, <c>seasoned</c> or <c>rich</c>.</summary>
    public string? Harmony { get; init; }

    /// <summary>Kinds of change that are not wanted, such as <c>tritone</c>.</summary>
    public ValueList<string> Without { get; init; } = [];

    /// <summary>Form in one line, such as <c>intro A A B tag end</c>; <c>usual</c>: the arranger's own; <c>plain</c>:
    /// the tune as it stands; null: plain, or usual where a length is wanted.</summary>
    public string? Form { get; init; }

    /// <summary>Playing time wanted in minutes, such as <c>2</c>, <c>1.5</c> or <c>1:45</c>.</summary>
    public string? Minutes { get; init; }

    /// <summary>The plain tune is shown on a small staff above.</summary>
    public bool ShowPlain { get; init; }

    public int? Seed { get; init; }
}

/// <summary>Which score to judge, for which hands.</summary>
public sealed record CheckRequest
{
    public required string Score { get; init; }

    /// <summary>File of the player whose hands are meant; what is said below goes before it.</summary>
    public string? Player { get; init; }

    public string? Span { get; init; }

    public string? OctaveWidth { get; init; }

    /// <summary>Tempo to judge at, in beats of the metre; null: as printed.</summary>
    public double? BeatsPerMinute { get; init; }

    /// <summary>File to draw the effort along the piece into, ending in .png, .svg or .pdf; null: it is not drawn.</summary>
    public string? Plot { get; init; }

    /// <summary>An existing drawing of other content may be replaced.</summary>
    public bool Replace { get; init; }
}

/// <summary>Which scores to measure.</summary>
public sealed record ProfileRequest
{
    public required ValueList<string> Scores { get; init; }

    /// <summary>File to draw the figures into, ending in .png, .svg or .pdf; of several scores each gets a number.</summary>
    public string? Plot { get; init; }

    /// <summary>Paper of the drawing.</summary>
    public Paper Paper { get; init; } = Paper.A4;

    /// <summary>An existing drawing of other content may be replaced.</summary>
    public bool Replace { get; init; }
}

/// <summary>How far a run has come.</summary>
/// <param name="Done">Files done; the tunes of a book are fractions of its file.</param>
/// <param name="Files">Files in all.</param>
/// <param name="Current">The file being worked on; empty at the end.</param>
public sealed record ArrangeProgress(double Done, int Files, string Current);
