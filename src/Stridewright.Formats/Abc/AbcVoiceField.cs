using System.Text;

namespace Stridewright.Formats.Abc;

/// <summary>A V: field (ABC 2.1, 7.1): the voice's id, its names and the words about its clef.</summary>
/// <param name="Name">Null where the field does not give it.</param>
/// <param name="Subname">Null where the field does not give it.</param>
internal sealed record AbcVoiceField(string Id, string? Name, string? Subname, IReadOnlyList<string> Words)
{
    private const int LongestName = 80;

    public static AbcVoiceField Parse(string text)
    {
        var words = Split(text);
        string? Value(params string[] properties) =>
            words
                .Skip(1)
                .Select(w =>
                    properties.FirstOrDefault(p => w.StartsWith(p, StringComparison.OrdinalIgnoreCase)) is { } p
                        ? w[p.Length..]
                        : null
                )
                .OfType<string>()
                .Select(n => n.Length > LongestName ? n[..LongestName] : n)
                .FirstOrDefault(n => n.Length > 0);
        return new(
            words.Count > 0 ? words[0] : "",
            Value("name=", "nm="),
            Value("subname=", "snm=", "sname="),
            words.Skip(1).ToList()
        );
    }

    // Words between spaces; what stands in quotation marks belongs together.
    private static List<string> Split(string text)
    {
        var words = new List<string>();
        var word = new StringBuilder();
        var quoted = false;
        foreach (var c in text + " ")
        {
            if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c is not (' ' or '\t') || quoted)
            {
                word.Append(c);
            }
            else if (word.Length > 0)
            {
                words.Add(word.ToString());
                word.Clear();
            }
        }
        if (word.Length > 0)
        {
            words.Add(word.ToString().Trim()); // a quotation mark that is never closed
        }
        return words;
    }
}
