using Stridewright.Arranging;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Sheets;

/// <summary>A setting on its pages.</summary>
/// <param name="Tune">What was chosen and how hard it is; no outputs, since nothing was written.</param>
/// <param name="Name">For files made of it, without ending: letters, digits and hyphens of its title.</param>
public sealed record Sheet(WrittenTune Tune, string Name)
{
    private readonly Packed _musicXml = new([]);

    internal byte[] MusicXml
    {
        get => _musicXml.Bytes;
        init => _musicXml = new(value);
    }

    /// <summary>As they were laid out first, one SVG a page, in UTF-8.</summary>
    public IReadOnlyList<byte[]> Pages => Engraved?.Svg ?? [];

    internal Score? Score { get; init; }

    internal EngravedPages? Engraved { get; init; }

    /// <summary>As it is printed, once somebody asked for that.</summary>
    internal Print Print { get; } = new();

    internal Piece? Piece { get; init; }

    internal Arrangement? Arrangement { get; init; }

    internal Verdict? Verdict { get; init; }

    internal ValueList<BarReasons> Reasons { get; init; } = [];

    internal SheetAbout? About { get; init; }

    /// <summary>Ways of its bars that were looked for.</summary>
    internal FoundWays Ways { get; init; } = new();
}

/// <summary>Pages laid out with time: they turn where a hand is free, and no bar or line stands alone at the end.</summary>
internal sealed class Print
{
    /// <summary>Null: nobody asked yet.</summary>
    public EngravedPages? Pages { get; set; }
}

/// <summary>What a setting was made from, so that it can be kept as an arrangement file.</summary>
internal sealed record Piece(Tune Tune, Brief Brief, ValueList<FigureText> Figures);

/// <summary>Where a sheet comes from and how it is printed.</summary>
/// <param name="Number">Of the tune in its source; null: it is the only one.</param>
internal sealed record SheetAbout(string Source, int? Number, SheetLook Look);

/// <summary>A setting that is not engraved yet, or why there is none.</summary>
internal sealed record Draft(Sheet? Sheet, Problem? Problem);

/// <summary>A setting, or why there is none.</summary>
/// <param name="IsBadWish">A wish cannot be understood; its problem names it.</param>
public sealed record SheetResult(Sheet? Sheet, ValueList<Problem> Problems, bool IsBadWish = false);
