using Stridewright.Arranging;
using Stridewright.Music;

namespace Stridewright.Workbench.Sheets;

/// <summary>What somebody brought: the tunes in it, and what the reader found.</summary>
public sealed record TuneSource
{
    /// <summary>Name of the file, or of what was typed.</summary>
    public required string Name { get; init; }

    /// <summary>In order; empty where nothing could be read.</summary>
    public ValueList<Tune> Tunes { get; init; } = [];

    /// <summary>The line of chords it comes from, which takes the metre of the feel; null: another source.</summary>
    internal string? Chords { get; init; }

    /// <summary>The arrangement file it comes from, with all that was said in it; null: another source.</summary>
    internal ArrangementFile? Stored { get; init; }

    public ValueList<Diagnostic> Findings { get; init; } = [];
}
