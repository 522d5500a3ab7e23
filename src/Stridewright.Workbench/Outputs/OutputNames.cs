using System.Globalization;
using System.Text;
using Stridewright.Music;

namespace Stridewright.Workbench.Outputs;

/// <summary>
/// Names of a run's outputs, without ending: the input's own name; for the tunes of a book a number and the title
/// behind it. No name is given twice, whatever the case of its letters.
/// </summary>
internal sealed class OutputNames
{
    private const int LongestTitle = 40;
    private readonly HashSet<string> _taken = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>The words of a title, or of chords, whose sharps are spelled out.</summary>
    public static string OfWords(string text) =>
        Words(text.Replace('♭', 'b').Replace('♯', '#').Replace("#", "-sharp ", StringComparison.Ordinal));

    /// <summary>A name with a key behind it, such as <c>tune.B-flat</c>.</summary>
    public static string InKey(string name, Tone tonic) =>
        name
        + "."
        + tonic.Step
        + string.Concat(Enumerable.Repeat(tonic.Alter < 0 ? "-flat" : "-sharp", Math.Abs(tonic.Alter)));

    /// <summary>A name with a level behind it, such as <c>tune.level-3</c>.</summary>
    public static string AtLevel(string name, int level) => FormattableString.Invariant($"{name}.level-{level}");

    public static string OfFile(string path) => Path.GetFileNameWithoutExtension(path);

    /// <param name="number">Place in the book, from 1.</param>
    /// <param name="count">Tunes in the book.</param>
    public static string OfBook(string path, int number, int count, string title)
    {
        var width = Math.Max(2, count.ToString(CultureInfo.InvariantCulture).Length);
        var digits = number.ToString(CultureInfo.InvariantCulture).PadLeft(width, '0');
        var words = Words(title);
        return OfFile(path) + "-" + digits + (words.Length > 0 ? "-" + words : "");
    }

    /// <summary>The name itself, or, where it is taken, with the first free number from 2 behind it.</summary>
    public string Take(string name)
    {
        var free = name;
        for (var n = 2; !_taken.Add(free); n++)
        {
            free = string.Create(CultureInfo.InvariantCulture, $"{name}-{n}");
        }
        return free;
    }

    // Letters and digits of a title in lower case, all else as single hyphens; apostrophes go.
    private static string Words(string title)
    {
        var text = new StringBuilder();
        foreach (var c in title.ToLowerInvariant())
        {
            if (char.IsLetterOrDigit(c))
            {
                text.Append(c);
            }
            else if (c is not ('\'' or '’') && text.Length > 0 && text[^1] != '-')
            {
                text.Append('-');
            }
            if (text.Length >= LongestTitle)
            {
                break;
            }
        }
        return text.ToString().TrimEnd('-');
    }
}
