using Stridewright.Music;

namespace Stridewright.Engraving;

/// <summary>Something that stands in a booklet, one below the other.</summary>
public abstract record BookletPart
{
    /// <summary>A name by which a <see cref="BookletRow"/> can tell the page that this begins on; null: none.</summary>
    public string? Mark { get; init; }

    /// <summary>Begins a new page.</summary>
    public bool NewPage { get; init; }
}

/// <summary>A line of its own.</summary>
/// <param name="Points">Size of the letters.</param>
public sealed record BookletHeading(string Text, double Points = 14) : BookletPart
{
    public bool Centred { get; init; }

    public bool Italic { get; init; }
}

/// <summary>Words broken into lines.</summary>
/// <param name="Points">Size of the letters.</param>
public sealed record BookletText(string Text, double Points = 10.5) : BookletPart
{
    /// <summary>In front of the first line, which the others are set in to; empty: none.</summary>
    public string Label { get; init; } = "";

    public bool Italic { get; init; }
}

/// <summary>Columns side by side, each broken into lines.</summary>
/// <param name="Cells">Text of each column; one that is <c>@mark</c> stands for a page number.</param>
/// <param name="Widths">Shares of the width; they add up to 1.</param>
public sealed record BookletRow(ValueList<string> Cells, ValueList<double> Widths) : BookletPart
{
    public bool Bold { get; init; }

    /// <summary>A thin line under it.</summary>
    public bool Ruled { get; init; }

    /// <summary>Size of the letters.</summary>
    public double Points { get; init; } = 10;
}

/// <summary>Empty room, in millimetres.</summary>
public sealed record BookletSpace(double Height) : BookletPart;

/// <summary>Music among text: one page as SVG, engraved as a strip.</summary>
public sealed record BookletStrip(string Svg) : BookletPart;

/// <summary>Whole pages of engraved music as SVG.</summary>
public sealed record BookletPages(ValueList<string> Svg) : BookletPart;

/// <summary>Parts that are kept on one page where they fit on one.</summary>
public sealed record BookletGroup(ValueList<BookletPart> Parts) : BookletPart;
