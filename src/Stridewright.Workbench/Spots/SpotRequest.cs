using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>What is done with the bars of an arrangement file.</summary>
public enum SpotAction
{
    /// <summary>Other ways for a bar are listed; the file stays as it is.</summary>
    Ways,

    /// <summary>A bar stays as it is from now on.</summary>
    Keep,

    /// <summary>Another way is taken for a bar, and kept.</summary>
    Choose,

    /// <summary>A bar is no longer kept; without a bar: none is.</summary>
    Release,

    /// <summary>Bars that were written otherwise in the score are kept so.</summary>
    Rewrite,

    /// <summary>Bars of one hand are stored as a figure of the file.</summary>
    Figure,

    /// <summary>A figure is put at a bar, and kept.</summary>
    Use,
}

/// <summary>Work on the bars of one arrangement file, which is rewritten where something is kept or released.</summary>
public sealed record SpotRequest
{
    /// <summary>The arrangement file.</summary>
    public required string File { get; init; }

    public required SpotAction Action { get; init; }

    /// <summary>Printed number of the bar.</summary>
    public string? Bar { get; init; }

    /// <summary><c>left</c> or <c>right</c>; null: both.</summary>
    public string? Hand { get; init; }

    /// <summary>How many ways of each kind are listed; null: <see cref="UsualEach"/>.</summary>
    public int? Each { get; init; }

    public const int UsualEach = 3;

    /// <summary>Name of the way that is taken, such as <c>rhythm-2</c>.</summary>
    public string? Way { get; init; }

    /// <summary>Name of the figure.</summary>
    public string? Figure { get; init; }

    /// <summary>How many bars a figure takes; null: one.</summary>
    public int? Bars { get; init; }

    /// <summary>The arrangement file that has the figure; null: the same.</summary>
    public string? Source { get; init; }

    /// <summary>For a figure: the word of its kind, such as <c>run</c>; null: it has none.</summary>
    public string? FigureKind { get; init; }

    /// <summary>The score that came back, in MusicXML.</summary>
    public string? Edited { get; init; }
}

/// <summary>What came of work on bars. The object of <c>--json</c>.</summary>
public sealed record SpotReport
{
    public string Kind { get; } = "spots";

    public required string File { get; init; }

    /// <summary>Other ways for the bar, those of one kind together, cheapest first.</summary>
    public ValueList<WayFound> Ways { get; init; } = [];

    /// <summary>All that is kept now.</summary>
    public ValueList<KeptSpot> Kept { get; init; } = [];

    /// <summary>Printed numbers of the bars that are other than before.</summary>
    public ValueList<string> Changed { get; init; } = [];

    /// <summary>Names of the figures in the file.</summary>
    public ValueList<string> Figures { get; init; } = [];

    public ValueList<Remark> Remarks { get; init; } = [];

    public ValueList<Problem> Problems { get; init; } = [];

    public bool Cancelled { get; init; }
}

/// <summary>A kept bar of one hand.</summary>
public sealed record KeptSpot(string Bar, string Hand);

/// <summary>Another way for a bar.</summary>
/// <param name="Name">What it is asked for by, such as <c>rhythm-2</c>.</param>
/// <param name="Dearer">What it costs more than the cheapest, in natural logarithms.</param>
/// <param name="OtherBars">Other bars that change with it.</param>
/// <param name="EffortBefore">Effort of the bar, 1 to 100.</param>
public sealed record WayFound(
    string Name,
    double Dearer,
    ValueList<string> Changes,
    ValueList<string> OtherBars,
    double EffortBefore,
    double EffortAfter,
    ValueList<StyleMoved> Style
);

/// <summary>A figure of style that moves, with its published reference.</summary>
/// <param name="Unit"><c>share</c> (0 to 1), <c>per-bar</c>, <c>key</c>, <c>semitones</c> or <c>number</c>.</param>
public sealed record StyleMoved(string Words, string Unit, double Before, double After, double Reference);
