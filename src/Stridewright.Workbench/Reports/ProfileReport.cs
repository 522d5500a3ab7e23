using Stridewright.Arranging;
using Stridewright.Music;

namespace Stridewright.Workbench.Reports;

/// <summary>The measured style of scores. The object of <c>profile --json</c>.</summary>
public sealed record ProfileReport
{
    public string Kind { get; } = "profile";

    /// <summary>Scores that could be read, in order.</summary>
    public ValueList<ProfiledScore> Scores { get; init; } = [];

    public ValueList<Problem> Problems { get; init; } = [];

    public bool Cancelled { get; init; }
}

/// <summary>One score's style.</summary>
public sealed record ProfiledScore(string File, string Title, StyleProfile Style, ValueList<Remark> Reading);
