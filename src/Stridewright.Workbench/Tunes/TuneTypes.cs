using Stridewright.Music;
using Stridewright.Workbench.Sheets;

namespace Stridewright.Workbench.Tunes;

/// <summary>A bar of a tune, to be corrected.</summary>
/// <param name="Number">As printed.</param>
/// <param name="Length">As a part of a whole note.</param>
/// <param name="Notes">One after the other, each of one key.</param>
/// <param name="Chords">As <see cref="TuneChange"/> takes them.</param>
public sealed record TuneBarTold(string Number, string Length, ValueList<SheetStroke> Notes, string Chords);

/// <summary>A tune as it stands.</summary>
/// <param name="Key">Such as <c>F major</c>.</param>
/// <param name="Metre">Such as <c>2/4</c>.</param>
/// <param name="PickUp">Length of its pick-up as a part of a whole note; <c>0</c>: it has none.</param>
/// <param name="Step">What its notes stand on, as a part of a whole note.</param>
/// <param name="Abc">The whole of it in ABC.</param>
/// <param name="IsPlain">It stands on the beat as it is: straightening changes nothing.</param>
public sealed record TuneTold(
    string Key,
    string Metre,
    string PickUp,
    string Step,
    ValueList<TuneBarTold> Bars,
    string Abc,
    bool IsPlain
);

/// <summary>A correction of a tune.</summary>
/// <param name="Action"><c>notes</c>, <c>chords</c>, <c>key</c>, <c>metre</c> or <c>pick-up</c>.</param>
/// <param name="Bar">For notes and chords: which, from 0.</param>
/// <param name="Notes">For notes: all of the bar.</param>
/// <param name="Value">For chords: symbols with spaces between, which share the bar as in a line of chords, or have a place
/// behind <c>@</c>, such as <c>F C7@3/8</c>; for key: such as <c>F</c> or <c>Dm</c>; for metre: such as <c>3/4</c>; for
/// pick-up: its length as a part of a whole note.</param>
public sealed record TuneChange(
    string Action,
    int Bar = 0,
    IReadOnlyList<SheetStroke>? Notes = null,
    string? Value = null
);
