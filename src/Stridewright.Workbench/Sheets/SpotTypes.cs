using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Sheets;

/// <summary>A bar of a setting among the others.</summary>
/// <param name="Id">As on its pages.</param>
/// <param name="Number">As printed.</param>
/// <param name="Effort">1 to 100.</param>
/// <param name="Hard">0: no harder than the piece; 1 to 3: among its hardest, by how much.</param>
/// <param name="Kept">Hands that are kept: <c>right</c>, <c>left</c>.</param>
public sealed record SheetBar(string Id, string Number, double Effort, int Hard, ValueList<string> Kept);

/// <summary>All bars of a setting, and the figures at hand.</summary>
public sealed record SheetBars(ValueList<SheetBar> Bars, ValueList<SheetFigure> Figures);

/// <summary>A figure at hand.</summary>
/// <param name="Kind"><c>introduction</c>, <c>fill</c>, <c>run</c> or <c>ending</c>; null: it has none.</param>
public sealed record SheetFigure(string Name, string? Kind);

/// <summary>Keys that are struck together.</summary>
/// <param name="At">Place in the bar as a part of a whole note, such as <c>3/16</c>.</param>
/// <param name="Length">As a part of a whole note.</param>
/// <param name="Pitches">Such as <c>F#4</c>, lowest first.</param>
/// <param name="Role">Such as <c>tune</c>, <c>fill</c>, <c>bass</c>, <c>chord</c>; what is sent back need not say it.</param>
public sealed record SheetStroke(
    string At,
    string Length,
    IReadOnlyList<string> Pitches,
    bool Rolled = false,
    string? Role = null
);

/// <summary>What is known of one bar.</summary>
/// <param name="Step">What its strokes usually stand on, as a part of a whole note.</param>
/// <param name="Length">Of the bar, as a part of a whole note.</param>
public sealed record SpotNotes(
    SheetBar Bar,
    double RightEffort,
    double LeftEffort,
    ValueList<Why> Reasons,
    ValueList<SheetStroke> Right,
    ValueList<SheetStroke> Left,
    string Step,
    string Length
);

/// <summary>A bar as it would be.</summary>
/// <param name="Picture">Engraved, as SVG.</param>
/// <param name="Heard">How it sounds.</param>
/// <param name="OtherBars">Printed numbers of other bars that change with it.</param>
/// <param name="Refusal">Why it cannot be had; null: it can.</param>
public sealed record SpotSeen(
    string? Picture,
    Heard? Heard,
    double? Effort,
    ValueList<string> OtherBars,
    string? Refusal = null
);

/// <summary>Work on a bar of a setting.</summary>
/// <param name="Action"><c>keep</c>, <c>release</c>, <c>choose</c>, <c>write</c>, <c>figure</c> or <c>use</c>.</param>
/// <param name="Bar">Its id; null, for release: all bars; for use: wherever the figure's kind belongs.</param>
/// <param name="Hand"><c>right</c> or <c>left</c>; null: both.</param>
/// <param name="Way">For choose: the name of the way.</param>
/// <param name="Strokes">For write: all that the hand strikes in the bar.</param>
/// <param name="Figure">For figure and use: its name.</param>
/// <param name="Bars">For figure: how many bars; null: one.</param>
/// <param name="Kind">For figure: where it belongs, <c>introduction</c>, <c>fill</c>, <c>run</c> or <c>ending</c>; null:
/// where it is put.</param>
public sealed record SpotWish(
    string Action,
    string? Bar = null,
    string? Hand = null,
    string? Way = null,
    IReadOnlyList<SheetStroke>? Strokes = null,
    string? Figure = null,
    int? Bars = null,
    string? Kind = null
);

/// <summary>What came of work on a bar.</summary>
/// <param name="Source">The tune with all that is kept, for further briefs.</param>
/// <param name="Changed">Printed numbers of the bars that are other than before.</param>
public sealed record SpotDone(SheetResult Result, TuneSource? Source, ValueList<string> Changed);
