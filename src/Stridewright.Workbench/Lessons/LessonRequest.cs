using Stridewright.Music;

namespace Stridewright.Workbench;

/// <summary>A piece to be learned, by whom, and in what time.</summary>
public sealed record LessonRequest
{
    public const string UsualFolder = "lessons";

    /// <summary>What is written of each step and drill unless asked otherwise.</summary>
    public static readonly ValueList<OutputFormat> UsualFormats = [OutputFormat.MusicXml];

    /// <summary>A piano score in MusicXML, an arrangement file, or a tune, which is then set for the player.</summary>
    public required string Piece { get; init; }

    /// <summary>Player file; null: usual hands.</summary>
    public string? Player { get; init; }

    /// <summary>1 to 6, for a tune or an arrangement file; null: the file's own, else the usual.</summary>
    public int? Level { get; init; }

    public int Days { get; init; } = 7;

    /// <summary>Minutes a day, breaks counted in.</summary>
    public int Minutes { get; init; } = 30;

    /// <summary>Standard MIDI Files of what was played already, earliest first.</summary>
    public ValueList<string> Takes { get; init; } = [];

    public string OutputFolder { get; init; } = UsualFolder;

    /// <summary>Of each step and drill, beside the booklet.</summary>
    public ValueList<OutputFormat> Formats { get; init; } = UsualFormats;

    public Paper Paper { get; init; } = Paper.A4;

    /// <summary>Existing outputs of other content may be replaced.</summary>
    public bool Replace { get; init; }
}
