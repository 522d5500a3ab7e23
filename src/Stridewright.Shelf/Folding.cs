using System.Text;

namespace Stridewright.Shelf;

/// <summary>Words as they are compared when something is sought: small letters without the marks of Latin ones.</summary>
internal static class Folding
{
    // Small letters with marks of Latin-1 and Latin Extended-A (Unicode code charts), behind the letter that they count as.
    // The runtime has no tables for this where it has no cultures.
    private static readonly Dictionary<char, char> Plain = new[]
    {
        "aàáâãäåāăą",
        "cçćĉċč",
        "dďđ",
        "eèéêëēĕėęě",
        "gĝğġģ",
        "hĥħ",
        "iìíîïĩīĭįı",
        "jĵ",
        "kķ",
        "lĺļľŀł",
        "nñńņňŉ",
        "oòóôõöøōŏő",
        "rŕŗř",
        "sśŝşš",
        "tţťŧ",
        "uùúûüũūŭůűų",
        "wŵ",
        "yýÿŷ",
        "zźżž",
    }
        .SelectMany(row => row[1..].Select(marked => (marked, Letter: row[0])))
        .ToDictionary(pair => pair.marked, pair => pair.Letter);

    public static string Of(string text)
    {
        var folded = new StringBuilder(text.Length);
        foreach (var letter in text)
        {
            var small = char.ToLowerInvariant(letter);
            // Marks that stand on their own (combining diacritical marks).
            if (small is not (>= '\u0300' and <= '\u036F'))
            {
                folded.Append(Plain.GetValueOrDefault(small, small));
            }
        }
        return folded.ToString();
    }

    public static string[] Words(string text) => Of(text).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
}
