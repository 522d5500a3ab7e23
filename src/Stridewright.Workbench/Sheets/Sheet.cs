using Stridewright.Arranging;
using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Sheets;

/// <summary>A setting on its pages.</summary>
/// <param name="Tune">What was chosen and how hard it is; no outputs, since nothing was written.</param>
/// <param name="Pages">One SVG a page, in UTF-8.</param>
/// <param name="Name">For files made of it, without ending: letters, digits and hyphens of its title.</param>
public sealed record Sheet(WrittenTune Tune, ValueList<byte[]> Pages, string Name)
{
    internal byte[] MusicXml { get; init; } = [];

    internal Func<byte[]> Midi { get; init; } = () => [];

    internal EngravedPages? Engraved { get; init; }

    internal Piece? Piece { get; init; }
}

/// <summary>What a setting was made from, so that it can be kept as an arrangement file.</summary>
internal sealed record Piece(Tune Tune, Brief Brief, ValueList<FigureText> Figures);

/// <summary>A setting, or why there is none.</summary>
/// <param name="IsBadWish">A wish cannot be understood; its problem names it.</param>
public sealed record SheetResult(Sheet? Sheet, ValueList<Problem> Problems, bool IsBadWish = false);
