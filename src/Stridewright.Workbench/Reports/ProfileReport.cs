using Stridewright.Music;

namespace Stridewright.Workbench.Reports;

/// <summary>The measured style of scores. The object of <c>profile --json</c>.</summary>
public sealed record ProfileReport
{
    public string Kind { get; } = "profile";

    /// <summary>Scores that could be read, in order.</summary>
    public ValueList<ProfiledScore> Scores { get; init; } = [];

    /// <summary>Drawings of them, where they were asked for.</summary>
    public ValueList<WrittenFile> Drawings { get; init; } = [];

    public ValueList<Problem> Problems { get; init; } = [];

    public bool Cancelled { get; init; }
}

/// <summary>One score's style.</summary>
public sealed record ProfiledScore(string File, string Title, MeasuredStyle Style, ValueList<Remark> Reading);

/// <param name="Metre">Such as <c>2/4</c>.</param>
/// <param name="Bars">Full bars that were measured.</param>
/// <param name="Reference">What the reference was measured on; empty where none is published for the metre.</param>
public sealed record MeasuredStyle(string Metre, int Bars, string Reference, ValueList<MeasuredFigure> Figures);

/// <summary>One figure beside the published one.</summary>
/// <param name="Unit"><c>share</c> (0 to 1), <c>per-bar</c>, <c>key</c> (MIDI), <c>semitones</c> or <c>number</c>.</param>
/// <param name="Reference">As many values as measured, or none.</param>
public sealed record MeasuredFigure(
    string Key,
    string Words,
    string Unit,
    ValueList<double> Values,
    ValueList<double> Reference
)
{
    /// <summary>What it belongs to, in words: figures of one section stand together.</summary>
    public string Section { get; init; } = "";
}
