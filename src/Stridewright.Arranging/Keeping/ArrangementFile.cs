using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>What an arrangement file holds: the brief with the kept bars, the figures used, and the tune.</summary>
/// <param name="Brief">As it was given, not as it was settled.</param>
/// <param name="Tune">The tune in ABC.</param>
public sealed record ArrangementFile(Brief Brief, ValueList<FigureText> Figures, string Tune)
{
    /// <summary>What is shown of it where that is not as usual, by words of <see cref="ShownText"/>.</summary>
    public ValueList<string> Shown { get; init; } = [];

    /// <summary>Line of the file that the tune begins in, from 1; 0 where it was not read from one.</summary>
    public int TuneLine { get; init; }
}

/// <summary>A figure as it stands in a file.</summary>
/// <param name="Name">On one line, no space at either end, not empty.</param>
/// <param name="Lines">Its content, line by line; none is blank.</param>
public sealed record FigureText(string Name, ValueList<string> Lines);
