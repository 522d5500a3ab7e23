using System.Text;

namespace Stridewright.Music;

/// <summary>
/// Chord symbols in plain text, as musicians type them: <c>C</c>, <c>F#m7b5</c>, <c>Bb7(b9)/D</c>, <c>N.C.</c>
/// The case of M and m matters; the root is a capital, the bass may be small (<c>D/f#</c>).
/// </summary>
public static class ChordText
{
    /// <summary>No symbol is longer.</summary>
    public const int MaxLength = 64;

    /// <summary>
    /// Reads a symbol. False when the text is no chord symbol. Flats and sharps are <c>b # ♭ ♯</c>; a bass may have
    /// <c>+</c> for a sharp (<c>D/f+</c>); <c>Cd</c> and <c>Ca</c> are diminished and augmented. Accidentals after the
    /// root belong to the root as far as they go: <c>Bb5</c> is a fifth on B flat, <c>B(b5)</c> alters a fifth.
    /// </summary>
    public static bool TryParse(string text, out ChordSymbol chord)
    {
        ArgumentNullException.ThrowIfNull(text);
        chord = ChordSymbol.NoChord;
        if (text.Length > MaxLength)
        {
            return false;
        }
        var plain = Plain(text);
        if (plain.ToUpperInvariant() is "N.C." or "NC" or "N.C" or "NOCHORD")
        {
            return true;
        }
        var after = RootEnd(plain);
        if (after == 0 || !char.IsAsciiLetterUpper(plain[0]) || !Tone.TryParse(plain.AsSpan(0, after), out var root))
        {
            return false;
        }
        var bassAt = plain.LastIndexOf('/');
        Tone? bass = null;
        if (bassAt >= after && bassAt + 1 < plain.Length && char.IsAsciiLetter(plain[bassAt + 1]))
        {
            if (!Tone.TryParse(plain[(bassAt + 1)..].Replace('+', '#'), out var tone))
            {
                return false;
            }
            bass = tone == root ? null : tone;
            plain = plain[..bassAt];
        }
        if (!ChordSuffix.TryParse(ChordSuffix.Lowered(plain[after..]), out var kind, out var degrees))
        {
            return false;
        }
        chord = new ChordSymbol(root, kind) { Degrees = degrees, Bass = bass };
        return true;
    }

    /// <summary>
    /// The symbol in ASCII. Reading it back gives the same symbol, except that a bass equal to the root is dropped
    /// and that N.C. has neither root nor bass. Functional sixths and kinds without fixed tones have plain names:
    /// <c>Cnea6</c>, <c>Cit6</c>, <c>Cfr6</c>, <c>Cger6</c>, <c>Cped</c>, <c>Ctristan</c>, <c>Cother</c>.
    /// </summary>
    public static string Format(ChordSymbol chord)
    {
        ArgumentNullException.ThrowIfNull(chord);
        if (chord.IsNoChord)
        {
            return "N.C.";
        }
        var bass = chord.Bass is { } tone && tone != chord.Root ? "/" + tone : "";
        return chord.Root + ChordSuffix.Format(chord.Kind, chord.Degrees) + bass;
    }

    // Without spaces, accidentals in ASCII.
    private static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            if (!char.IsWhiteSpace(c))
            {
                plain.Append(
                    c switch
                    {
                        '♭' => 'b',
                        '♯' => '#',
                        _ => c,
                    }
                );
            }
        }
        return plain.ToString();
    }

    private static int RootEnd(string plain)
    {
        var end = Math.Min(1, plain.Length);
        while (end < plain.Length && end < 5 && plain[end] is 'b' or '#' && plain[end] == plain[1])
        {
            end++;
        }
        return end;
    }
}
