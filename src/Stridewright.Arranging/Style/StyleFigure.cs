using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>What a figure of style counts in.</summary>
public enum StyleUnit
{
    /// <summary>A share of bars, onsets or chords, 0 to 1.</summary>
    Share,

    /// <summary>Occurrences or strength a bar.</summary>
    PerBar,

    /// <summary>MIDI key numbers.</summary>
    Key,

    Semitones,

    /// <summary>A plain number.</summary>
    Number,
}

/// <summary>One measured figure of style.</summary>
/// <param name="Key">Its name for programs, such as <c>untied_bars</c>.</param>
/// <param name="Words">Its name for a musician.</param>
/// <param name="Values">One value; the 5th, 25th, 50th, 75th and 95th percentile, or of steps the last three; shares of a
/// whole, side by side. Never empty.</param>
/// <param name="Reference">The published value or percentiles; empty where none is published.</param>
public sealed record StyleFigure(
    string Key,
    string Words,
    StyleUnit Unit,
    ValueList<double> Values,
    ValueList<double> Reference
)
{
    /// <summary>What it belongs to, such as syncopation, in a musician's words.</summary>
    public string Section { get; init; } = "";
}

/// <summary>The measured style of a score.</summary>
/// <param name="Reference">What the reference was measured on; empty where none is published for the metre.</param>
/// <param name="Bars">Full bars in 2/4, 4/4 or 2/2 that were measured.</param>
public sealed record StyleProfile(string Metre, int Bars, string Reference, ValueList<StyleFigure> Figures);
