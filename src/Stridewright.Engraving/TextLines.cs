using System.Text;

namespace Stridewright.Engraving;

/// <summary>Breaks text into lines between its words.</summary>
internal static class TextLines
{
    /// <summary>At least one line; a word that is wider than the room has a line of its own.</summary>
    /// <param name="size">Of the letters, in the unit of the room.</param>
    public static List<string> Of(string text, double size, double room)
    {
        var lines = new List<string>();
        var line = new StringBuilder();
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && SvgText.WidthOf($"{line} {word}", size) > room)
            {
                lines.Add(line.ToString());
                line.Clear();
            }
            line.Append(line.Length > 0 ? " " : "").Append(word);
        }
        lines.Add(line.ToString());
        return lines;
    }
}
