using Stridewright.Music;

namespace Stridewright.Engraving;

/// <summary>Paper sizes.</summary>
public enum Paper
{
    /// <summary>210 × 297 mm (ISO 216).</summary>
    A4,

    /// <summary>8½ × 11 inches (ANSI/ASME Y14.1, A).</summary>
    Letter,
}

/// <summary>How a score is laid out on paper. Lengths are in millimetres.</summary>
public sealed record PageSetup
{
    public static PageSetup Default { get; } = new();

    public Paper Paper { get; init; } = Paper.A4;

    /// <summary>Margin at the left and right, 5 to 40.</summary>
    public double SideMargin { get; init; } = 14;

    /// <summary>Margin at the top and bottom, 5 to 40, of what is cut from 0; the page number stands in the lower one.</summary>
    public double EndMargin { get; init; } = 13;

    /// <summary>Height of a staff, its lowest to its highest line, 4 to 9; 6.6 is common for piano music.</summary>
    public double StaffHeight { get; init; } = 6.6;

    /// <summary>Whether the title, subtitle and composer stand above the first system.</summary>
    public bool Header { get; init; } = true;

    /// <summary>Whether the part's name stands before its staves.</summary>
    public bool Named { get; init; } = true;

    /// <summary>No page is filled: the music stands on one picture that is as high as it.</summary>
    public bool Cut { get; init; }

    /// <summary>All bars stand in one system, as wide as it needs; only where it is cut.</summary>
    public bool OneSystem { get; init; }

    /// <summary>Width of a screen's page, 60 to 300: as high as the music that stands on it, without a number; null:
    /// paper.</summary>
    public double? ScreenWidth { get; init; }

    /// <summary>Width of the page.</summary>
    public double Width => ScreenWidth ?? PaperWidth;

    private double PaperWidth => Paper == Paper.A4 ? 210 : 215.9;

    /// <summary>Height of the paper; of a screen's page only text without music has it.</summary>
    public double Height => Paper == Paper.A4 ? 297 : 279.4;

    /// <summary>Ids of bars after which a hand is free to turn the page; empty: pages end where they are full.</summary>
    public ValueList<string> Turns { get; init; } = [];

    /// <summary>No page more is taken for the sake of such a turn than makes so many; null: any number.</summary>
    public int? MostPages { get; init; }

    /// <summary>Someone waits for the pages: they are laid out as they come, with a last bar or line alone and wherever they
    /// turn, which laying them out again would mend.</summary>
    public bool Once { get; init; }

    /// <summary>Whether it is told when notes sound, which takes the engraver as long as a page.</summary>
    public bool Timed { get; init; }
}
