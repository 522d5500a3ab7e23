using Stridewright.Music;

namespace Stridewright.Engraving;

/// <summary>A score laid out on pages.</summary>
/// <param name="Setup">The paper it was laid out for.</param>
/// <param name="Title">The score's title; empty when it has none.</param>
/// <param name="Pages">Each page as SVG, in units of a tenth of a millimetre.</param>
/// <param name="TimeMap">When notes sound, in time order; empty unless it was asked for.</param>
public sealed record EngravedScore(
    PageSetup Setup,
    string Title,
    ValueList<string> Pages,
    ValueList<TimeMapEntry> TimeMap
)
{
    /// <summary>Width and height of a picture that was cut, in millimetres; null: those of the paper.</summary>
    public (double Width, double Height)? CutTo { get; init; }

    /// <summary>Width of its pages in millimetres.</summary>
    public double Width => CutTo?.Width ?? Setup.Width;

    /// <summary>Height of its pages in millimetres.</summary>
    public double Height => CutTo?.Height ?? Setup.Height;

    /// <summary>Ids of the bars after which a page is turned: none where there are two pages or fewer.</summary>
    public ValueList<string> PageEnds { get; init; } = [];
}

/// <summary>A moment at which notes begin.</summary>
/// <param name="Quarters">Score time from the start, in quarter notes.</param>
/// <param name="Milliseconds">Time from the start at the printed tempo, rounded by the engraver.</param>
/// <param name="Notes">Ids of the notes that begin here, tied-on ones included; a note that a repeat brings back has
/// its id followed by <c>-rend2</c> and so on.</param>
public sealed record TimeMapEntry(double Quarters, double Milliseconds, ValueList<string> Notes);
