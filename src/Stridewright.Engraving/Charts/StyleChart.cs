using Stridewright.Music;

namespace Stridewright.Engraving;

/// <summary>What a row of a chart counts in.</summary>
public enum ChartUnit
{
    /// <summary>A share, 0 to 1, printed in percent.</summary>
    Share,

    /// <summary>Keys by MIDI number, printed as notes.</summary>
    Key,

    Number,
}

/// <summary>Measured figures beside published ones, to be drawn on paper.</summary>
/// <param name="Subtitle">What was measured, and beside what; it says what the two kinds of mark are.</param>
public sealed record StyleChart(string Title, string Subtitle, ValueList<ChartSection> Sections);

/// <summary>Rows that are compared with each other: they share a scale.</summary>
public sealed record ChartSection(string Title, ValueList<ChartRow> Rows);

/// <summary>One figure.</summary>
/// <param name="Measured">One value, or percentiles from low to high of which the middle one is the median.</param>
/// <param name="Published">As many, or none.</param>
public sealed record ChartRow(string Words, ChartUnit Unit, ValueList<double> Measured, ValueList<double> Published);
