using Stridewright.Music;

namespace Stridewright.Workbench;

/// <summary>Which scores to finger, for which hands, and where they go.</summary>
public sealed record FingerRequest
{
    public const string UsualFolder = "fingered";

    public static readonly ValueList<OutputFormat> UsualFormats = [OutputFormat.MusicXml, OutputFormat.Pdf];

    /// <summary>Scores and folders of them, in order.</summary>
    public required ValueList<string> Scores { get; init; }

    public string OutputFolder { get; init; } = UsualFolder;

    public ValueList<OutputFormat> Formats { get; init; } = UsualFormats;

    public Paper Paper { get; init; } = Paper.A4;

    /// <summary><c>all</c>, <c>changes</c> or <c>hard</c>; null: all.</summary>
    public string? Density { get; init; }

    /// <summary>Which fingers that stand in a score hold: <c>all</c>, <c>edited</c> (those that are not ours) or
    /// <c>none</c>; null: all.</summary>
    public string? Keep { get; init; }

    /// <summary>A player file, whose hands are meant; null: usual hands.</summary>
    public string? Player { get; init; }

    /// <summary>Existing outputs of other content may be replaced.</summary>
    public bool Replace { get; init; }

    public string? Span { get; init; }

    public string? OctaveWidth { get; init; }

    /// <summary>Tempo to finger for, in beats of the metre; null: as printed.</summary>
    public double? BeatsPerMinute { get; init; }
}
