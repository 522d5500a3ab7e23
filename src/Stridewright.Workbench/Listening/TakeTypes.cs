using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Listening;

/// <summary>What is to be played to the program.</summary>
/// <param name="From">Id of the first bar; null: the piece's own.</param>
/// <param name="To">Id of the last bar; null: the piece's own.</param>
/// <param name="Hand"><c>right</c> or <c>left</c>: that one alone; null: both.</param>
/// <param name="Speed">Share of the printed tempo, 0.1 to 3.</param>
/// <param name="Taps">The rhythm is tapped, the right hand on key 84 and the left on key 48.</param>
/// <param name="Player">Name of who plays; null: nobody is named.</param>
/// <param name="Piece">Id of the arrangement on the shelf; null: it does not stand there.</param>
public sealed record TakeWish(
    string? From = null,
    string? To = null,
    string? Hand = null,
    double Speed = 1,
    bool Taps = false,
    string? Player = null,
    string? Piece = null
);

/// <summary>A take among others.</summary>
/// <param name="Range">Printed numbers of the bars that were to be played; null: all.</param>
/// <param name="Asked">Notes that were to be played; null: it was not heard to its end.</param>
/// <param name="Right">Of these, those that were.</param>
public sealed record TakeItem(
    string Id,
    DateTimeOffset At,
    string Title,
    string Player,
    string? Range,
    string? Hand,
    bool Taps,
    int? Asked,
    int? Right,
    double? QuartersPerMinute
);

/// <summary>A take as it is shown beside its score.</summary>
/// <param name="Refusal">Why nothing more can be said; null: all is said.</param>
/// <param name="Summary">The whole of it in a few sentences.</param>
/// <param name="Next">The one or two things worth doing next.</param>
/// <param name="Remarks">What else is remarked, at most three a page with those.</param>
/// <param name="Marks">Every fault at its note.</param>
/// <param name="Bars">Those that were played, in playing order.</param>
/// <param name="Timing">When each stroke came.</param>
public sealed record TakeSeen(
    TakeItem Take,
    HeardTake Heard,
    string? Refusal,
    ValueList<string> Summary,
    ValueList<SeenRemark> Next,
    ValueList<SeenRemark> Remarks,
    ValueList<SeenMark> Marks,
    ValueList<SeenBar> Bars,
    ValueList<SeenStroke> Timing
);

/// <summary>A remark with what to do about it.</summary>
/// <param name="FirstBar">Id of the first bar to rehearse.</param>
/// <param name="LastBar">Id of the last one.</param>
/// <param name="Hand">The hand to rehearse; null: both.</param>
/// <param name="Speed">Share of the printed tempo to begin at.</param>
public sealed record SeenRemark(
    string Kind,
    string Message,
    string FirstBar,
    string LastBar,
    string? Hand,
    double Speed
);

/// <summary>A drill that answers a remark.</summary>
/// <param name="Claim">What it is made of.</param>
/// <param name="How">How to practise it, a sentence each.</param>
/// <param name="Picture">Engraved, as SVG.</param>
public sealed record DrillSeen(string Name, string Claim, ValueList<string> How, string Picture, Sheets.Heard Heard);

/// <summary>A drill, where there is one.</summary>
/// <param name="Drill">Null: the bars themselves are rehearsed.</param>
public sealed record DrillFound(DrillSeen? Drill);

/// <summary>A mark on the score.</summary>
/// <param name="Kind"><c>missing</c>, <c>wrong</c>, <c>extra</c>, <c>early</c>, <c>late</c>, <c>hesitation</c> or
/// <c>spread</c>.</param>
/// <param name="Bar">Id of its bar.</param>
/// <param name="Number">Printed number of that.</param>
/// <param name="Note">Id of its note; null: it is about the bar.</param>
public sealed record SeenMark(string Kind, string Bar, string Number, string? Hand, string? Note, string Words);

/// <summary>A bar that was played.</summary>
public sealed record SeenBar(string Id, string Number);

/// <summary>A stroke of a hand.</summary>
/// <param name="Bar">Index among the bars that were played.</param>
/// <param name="Place">In the bar, from 0 to 1.</param>
/// <param name="Late">Milliseconds behind the tempo around it; negative: before it.</param>
public sealed record SeenStroke(string Hand, int Bar, double Place, double Late);
