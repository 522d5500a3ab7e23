using System.Globalization;

namespace Stridewright.Arranging;

/// <summary>Every sentence about figures of one's own.</summary>
internal static class FigureMessages
{
    public const string NoChord = "a figure is stored by its chords, and this bar has none";
    public const string NothingToTake = "nothing is struck here that the figure could hold";

    /// <param name="bars">Where figures begin; empty: none could be put anywhere.</param>
    public static string Put(List<string> bars) =>
        bars.Count switch
        {
            0 => "none of the figures asked for found a place that is of its kind and that these hands can play",
            1 => $"a figure of your own begins in bar {bars[0]}",
            _ => $"figures of your own begin in bars {string.Join(", ", bars)}",
        };

    public const string Empty = "the figure has no lines";

    public static string TooLong(int bars, int left) =>
        string.Create(CultureInfo.InvariantCulture, $"the figure has {bars} bars, and the setting {left} from here on");

    public static string NoLine(string line) =>
        $"'{(line.Length > 60 ? line[..60] : line)}' is no line of a figure: first its hand and bars, such as left 2 or right 1 fill, then strokes such as 1 0+1/8 bass 1 8";
}
