using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>A player to be shown, made or measured.</summary>
public sealed record PlayerRequest
{
    /// <summary>All that can be said of hands; a person's words for <see cref="Hands"/>.</summary>
    public static ValueList<PlayerWord> Words { get; } =
        HandsText.Words.Select(w => new PlayerWord(w.Word, w.Expected)).ToValueList();

    /// <summary>A player file to begin with; null: usual hands.</summary>
    public string? File { get; init; }

    /// <summary>Where the player is written; null: only shown.</summary>
    public string? Out { get; init; }

    /// <summary>An existing file may be replaced.</summary>
    public bool Replace { get; init; }

    public string? Name { get; init; }

    public string? Notes { get; init; }

    /// <summary>A usual span, such as <c>women 50</c>.</summary>
    public string? Usual { get; init; }

    /// <summary>What is said of the hands, each by a word of <see cref="Words"/>.</summary>
    public ValueList<HandsSaid> Hands { get; init; } = [];

    /// <summary>A take of the leap test, a MIDI file; null: none.</summary>
    public string? LeapTest { get; init; }

    /// <summary>Folder into which the leap test is written, as MusicXML and MIDI for each hand; null: it is not.</summary>
    public string? LeapTestFolder { get; init; }
}

/// <summary>A word for hands.</summary>
/// <param name="Expected">What its value is; empty: it stands alone.</param>
public sealed record PlayerWord(string Word, string Expected);

/// <summary>Something said of hands.</summary>
/// <param name="Value">Empty for a word that stands alone.</param>
public sealed record HandsSaid(string Word, string Value);

/// <summary>A player, and what came of making it. The object of <c>player --json</c>.</summary>
public sealed record PlayerReport
{
    public string Kind { get; } = "player";

    /// <summary>Null for usual hands without a name.</summary>
    public string? Name { get; init; }

    public string Notes { get; init; } = "";

    /// <summary>Null when something could not be read.</summary>
    public HandsUsed? Hands { get; init; }

    public OneHandReport? Right { get; init; }

    public OneHandReport? Left { get; init; }

    /// <summary>What the leap test gave, in sentences.</summary>
    public ValueList<string> Measured { get; init; } = [];

    /// <summary>Files written.</summary>
    public ValueList<WrittenFile> Outputs { get; init; } = [];

    public ValueList<Problem> Problems { get; init; } = [];
}

/// <summary>What one hand is taken to do.</summary>
/// <param name="SpanMm">Thumb to little finger.</param>
/// <param name="IndexSpanMm">Second finger to fifth.</param>
/// <param name="Without">Fingers that cannot be used.</param>
/// <param name="LeapBitsPerSecond">Fastest leaps.</param>
/// <param name="StrokesPerSecond">Fastest strokes of one key.</param>
public sealed record OneHandReport(
    double SpanMm,
    double IndexSpanMm,
    ValueList<int> Without,
    double LeapBitsPerSecond,
    double StrokesPerSecond
)
{
    /// <summary>What it reaches: comfortably, at all, and with strain.</summary>
    public required ValueList<ReachReport> Reach { get; init; }
}

/// <summary>What a hand reaches in one manner.</summary>
/// <param name="Manner"><c>comfortable</c>, <c>possible</c> or <c>strained</c>.</param>
/// <param name="Every">The widest interval that lies so from every key.</param>
/// <param name="Also">Wider ones with the lower keys from which they do, such as <c>major ninth from C, F</c>.</param>
public sealed record ReachReport(string Manner, string Every, ValueList<string> Also);
