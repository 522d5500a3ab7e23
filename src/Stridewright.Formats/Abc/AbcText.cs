using System.Globalization;
using System.Text;

namespace Stridewright.Formats.Abc;

/// <summary>
/// Escapes in texts (ABC 2.1, 8.2): <c>\\</c>, <c>\%</c>, <c>\&amp;</c> and <c>\u</c> with four hexadecimal digits.
/// </summary>
internal static class AbcText
{
    private const int HexDigits = 4;

    /// <summary>A text as it is written in a field, on one line and safe from trimming.</summary>
    /// <param name="reserved">Further characters that have a meaning there.</param>
    public static string Escape(string text, string reserved = "")
    {
        var escaped = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            var isInnerSpace = c == ' ' && i > 0 && i < text.Length - 1;
            if (c is '\\' or '%')
            {
                escaped.Append('\\').Append(c);
            }
            else if (
                reserved.Contains(c, StringComparison.Ordinal)
                || char.IsControl(c)
                || char.IsSurrogate(c)
                || c == '\uFEFF'
                || (char.IsWhiteSpace(c) && !isInnerSpace)
            )
            {
                escaped.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}");
            }
            else
            {
                escaped.Append(c);
            }
        }
        return escaped.ToString();
    }

    /// <summary>The text with its escapes read; any other backslash stands for itself.</summary>
    public static string Unescape(string text)
    {
        if (!text.Contains('\\', StringComparison.Ordinal))
        {
            return text;
        }
        var plain = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '\\' && i + 1 < text.Length)
            {
                if (text[i + 1] is '\\' or '%' or '&')
                {
                    plain.Append(text[++i]);
                    continue;
                }
                if (Unicode(text, i) is { } c)
                {
                    plain.Append(c);
                    i += 1 + HexDigits;
                    continue;
                }
            }
            plain.Append(text[i]);
        }
        return plain.ToString();
    }

    /// <summary>The character of <c>\u0041</c> at a place; null when there is none.</summary>
    public static char? Unicode(string text, int at) =>
        at + 1 + HexDigits < text.Length
        && text[at + 1] == 'u'
        && ushort.TryParse(
            text.AsSpan(at + 2, HexDigits),
            NumberStyles.AllowHexSpecifier,
            CultureInfo.InvariantCulture,
            out var code
        )
            ? (char)code
            : null;
}
