using System.Buffers;
using System.Text;
using System.Text.RegularExpressions;

namespace Stridewright.Trials;

/// <summary>
/// Damage to a text that still looks like its format: words change places, are doubled or dropped, numbers grow beyond
/// reason, brackets nest or go missing. Same text, same random numbers: same damage.
/// </summary>
internal static partial class TextMutation
{
    private const int LongestResult = 1 << 20;
    private static readonly SearchValues<char> Brackets = SearchValues.Create("[](){}<>|:\"!/");

    /// <summary>Numbers at and beyond limits.</summary>
    public static readonly string[] Numbers =
    [
        "0",
        "-1",
        "1",
        "3",
        "7",
        "13",
        "64",
        "127",
        "128",
        "255",
        "9973",
        "32768",
        "65536",
        "999983",
        "2147483647",
        "2147483648",
        "-2147483648",
        "4294967296",
        "9223372036854775807",
        "99999999999999999999999999",
        "0.00000001",
        "1e308",
        "1e400",
        "NaN",
        "1/0",
        "0/0",
        "1/2147483647",
    ];

    private static readonly string[] Odd =
    [
        "\0",
        "\u0001",
        "\uFEFF",
        "\uFFFD",
        "\u202E",
        "\uD834\uDD1E",
        "e\u0301",
        "♯♭♮",
        "\t",
        "\r",
        "\r\n\r\n",
        "&#0;",
        "&lt;",
        "<![CDATA[",
        "<!--",
        "-->",
        "%%",
        "\\",
    ];

    /// <param name="other">Another text of the format, from which pieces are taken.</param>
    public static string Of(string text, string other, Random random)
    {
        var changes = 1 + random.Next(1, 6) * random.Next(0, 3);
        var tokens = Tokens().Matches(text).Select(m => m.Value).ToList();
        for (var i = 0; i < changes && tokens.Count > 0; i++)
        {
            Change(tokens, other, random);
        }
        var result = new StringBuilder();
        foreach (var token in tokens)
        {
            if (result.Length + token.Length > LongestResult)
            {
                break;
            }
            result.Append(token);
        }
        return result.ToString();
    }

    private static void Change(List<string> tokens, string other, Random random)
    {
        var at = random.Next(tokens.Count);
        var to = random.Next(2) == 0 ? random.Next(tokens.Count) : Math.Min(tokens.Count - 1, at + random.Next(1, 8));
        var length = Math.Min(tokens.Count - at, 1 + random.Next(1 << random.Next(0, 7)));
        switch (random.Next(12))
        {
            case 0:
                (tokens[at], tokens[to]) = (tokens[to], tokens[at]);
                break;
            case 1:
                tokens.InsertRange(to, tokens.GetRange(at, length));
                break;
            case 2:
                tokens.RemoveRange(at, length);
                break;
            case 3 or 4:
                Replace(tokens, at, token => char.IsAsciiDigit(token[0]), Numbers[random.Next(Numbers.Length)]);
                break;
            case 5:
                Replace(tokens, at, token => token.AsSpan().IndexOfAny(Brackets) >= 0, "");
                break;
            case 6:
                var bracket = tokens
                    .Skip(at)
                    .Concat(tokens)
                    .First(t => t.AsSpan().IndexOfAny(Brackets) >= 0 || t == tokens[at]);
                tokens.Insert(to, Repeated(bracket, random));
                break;
            case 7:
                tokens.Insert(to, Repeated(string.Concat(tokens.GetRange(at, length)), random));
                break;
            case 8:
                var start = random.Next(other.Length);
                tokens.Insert(at, other.Substring(start, Math.Min(other.Length - start, random.Next(1, 400))));
                break;
            case 9:
                tokens.Insert(at, Odd[random.Next(Odd.Length)]);
                break;
            case 10:
                var token = tokens[at];
                var place = random.Next(token.Length);
                tokens[at] = token[..place] + (char)(token[place] ^ (1 << random.Next(7))) + token[(place + 1)..];
                break;
            default:
                if (random.Next(4) == 0)
                {
                    tokens.RemoveRange(at, tokens.Count - at);
                }
                break;
        }
        tokens.RemoveAll(t => t.Length == 0);
    }

    // The first token of the kind from a place on.
    private static void Replace(List<string> tokens, int from, Predicate<string> isKind, string with)
    {
        if (tokens.FindIndex(from, isKind) is >= 0 and var at)
        {
            tokens[at] = with;
        }
    }

    private static string Repeated(string what, Random random) =>
        string.Concat(Enumerable.Repeat(what, Math.Min(1 << random.Next(1, 16), 1 + LongestResult / 4 / what.Length)));

    // Tags, quoted words, numbers, words, white space, or a single sign.
    [GeneratedRegex("""</?[A-Za-z][^<>]*>|"[^"\n]*"|\d+|[A-Za-z]+|\s+|.""", RegexOptions.Singleline)]
    private static partial Regex Tokens();
}
