namespace Stridewright.Workbench;

/// <summary>A take to be heard against a score.</summary>
public sealed record CompareRequest
{
    public const string UsualFolder = "compared";

    /// <summary>A piano score in MusicXML, or an arrangement file.</summary>
    public required string Score { get; init; }

    /// <summary>A Standard MIDI File.</summary>
    public required string Take { get; init; }

    public string OutputFolder { get; init; } = UsualFolder;

    /// <summary>Bars that were to be played, such as <c>5-12</c>, by their printed numbers; null: all.</summary>
    public string? Range { get; init; }

    /// <summary><c>left</c> or <c>right</c>: the hand that was to be played alone; null: both, or what the take shows.</summary>
    public string? Hand { get; init; }

    /// <summary>Existing outputs of other content may be replaced.</summary>
    public bool Replace { get; init; }
}
