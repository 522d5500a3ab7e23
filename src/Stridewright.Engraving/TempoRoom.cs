using System.Globalization;
using System.Text.RegularExpressions;

namespace Stridewright.Engraving;

/// <summary>
/// Lifts a tempo off the chord symbols. The engraver puts the first symbol under a tempo where there is room, then lines it up
/// with the other symbols of its system, and does not look again whether they still keep clear of each other.
/// </summary>
internal static partial class TempoRoom
{
    // Hundredths of a millimetre, as in the engraver's SVG: from one line of words to the next, and about the width of a letter.
    private const int LineHeight = 400,
        Letter = 190;

    /// <summary>The most that a tempo is lifted, in millimetres.</summary>
    public const double Most = LineHeight / 100.0;

    public static string Lifted(string svg)
    {
        var symbols = Symbol().Matches(svg).Select(m => (X: Number(m, "x"), Y: Number(m, "y"))).ToList();
        return Tempo()
            .Replace(
                svg,
                tempo =>
                {
                    var (x, y) = (Number(tempo, "x"), Number(tempo, "y"));
                    var end =
                        x + Letter * Tag().Replace(tempo.Groups["words"].Value, "").Count(c => !char.IsWhiteSpace(c));
                    var under = symbols.FindAll(s => s.X >= x && s.X < end && Math.Abs(s.Y - y) < LineHeight);
                    return under.Count == 0
                        ? tempo.Value
                        : string.Create(
                            CultureInfo.InvariantCulture,
                            $"{tempo.Groups["before"]}{under.Min(s => s.Y) - LineHeight}{tempo.Groups["after"]}"
                        );
                }
            );
    }

    private static int Number(Match match, string group) =>
        int.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("class=\"harm\"[^>]*>\\s*<text x=\"(?<x>[0-9]+)\" y=\"(?<y>[0-9]+)\"")]
    private static partial Regex Symbol();

    [GeneratedRegex(
        "(?<before>class=\"tempo\"[^>]*>\\s*<text x=\"(?<x>[0-9]+)\" y=\")(?<y>[0-9]+)(?<after>\"(?<words>.*?)</text>)",
        RegexOptions.Singleline
    )]
    private static partial Regex Tempo();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();
}
