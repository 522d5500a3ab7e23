using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>Chord symbols as they stand in real ABC: some in brackets as optional, some with an alternative after
/// them.</summary>
internal static class AbcChords
{
    private static readonly char[] Separators = [' ', ';', ',', '\n'];

    public static bool TryParse(string text, out ChordSymbol chord)
    {
        var plain = text.Trim();
        if (plain.Length > 2 && (plain[0], plain[^1]) is ('(', ')') or ('[', ']'))
        {
            plain = plain[1..^1].Trim();
        }
        if (ChordText.TryParse(plain, out chord))
        {
            return true;
        }
        // "G(Em)": the first is meant, the second may be played instead.
        var bracket = plain.IndexOfAny(['(', '[']);
        return bracket > 0 && plain[^1] is ')' or ']'
            ? ChordText.TryParse(plain[..bracket], out chord) && ChordText.TryParse(plain[(bracket + 1)..^1], out _)
            : plain.IndexOfAny(Separators) is > 0 and var cut
                && ChordText.TryParse(plain[..cut], out chord)
                && ChordText.TryParse(plain[cut..].Trim(Separators), out _);
    }
}
