using System.Text;

namespace Stridewright.Engraving;

/// <summary>Breaks words into lines that fit a room.</summary>
internal static class TextLines
{
    /// <param name="points">Size of the plain face.</param>
    /// <param name="room">In millimetres.</param>
    public static List<string> Of(string text, double points, double room)
    {
        var lines = new List<string>();
        var line = new StringBuilder();
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(Pieces))
        {
            if (line.Length > 0 && !Fits($"{line} {word}"))
            {
                lines.Add(line.ToString());
                line.Clear();
            }
            line.Append(line.Length > 0 ? " " : "").Append(word);
        }
        lines.Add(line.ToString());
        return lines;

        bool Fits(string words) => SvgText.WidthOf(words, points * PageFrame.Point) <= room;

        // A word that is wider than the room is torn.
        IEnumerable<string> Pieces(string word)
        {
            if (Fits(word))
            {
                yield return word;
                yield break;
            }
            var piece = new StringBuilder();
            foreach (var rune in word.EnumerateRunes())
            {
                if (piece.Length > 0 && !Fits($"{piece}{rune}"))
                {
                    yield return piece.ToString();
                    piece.Clear();
                }
                piece.Append(rune.ToString());
            }
            yield return piece.ToString();
        }
    }
}
