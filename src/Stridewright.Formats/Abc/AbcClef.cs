using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>
/// How written notes lie to sounding ones, as K: and V: say it (ABC 2.1, 4.6): a clef with <c>+8</c> or <c>-8</c> and
/// <c>octave=</c> move the notes by octaves, <c>transpose=</c> the whole voice by semitones. <c>middle=</c> and
/// <c>stafflines=</c> are about print only.
/// </summary>
/// <param name="ClefOctaves">By the clef.</param>
/// <param name="Octaves">By <c>octave=</c>, -4 to 4.</param>
/// <param name="Semitones">By <c>transpose=</c>, -48 to 48.</param>
internal sealed record AbcClef(int ClefOctaves = 0, int Octaves = 0, int Semitones = 0, bool IsPercussion = false)
{
    private const int MostOctaves = 4;
    private const int MostSemitones = 48;

    public static readonly AbcClef Usual = new();

    private static readonly string[] Names = ["treble", "alto", "tenor", "bass", "perc", "none"];

    /// <summary>True for a word that names a clef or gives a property, which is no key.</summary>
    public static bool IsProperty(string word) => word.IndexOf('=', StringComparison.Ordinal) > 2 || IsName(word);

    /// <summary>Takes over what the words of a field give; the rest stays as before.</summary>
    /// <param name="bad">The first property that cannot be read; null when all can.</param>
    public static AbcClef Read(IEnumerable<string> words, AbcClef before, out string? bad)
    {
        var clef = before;
        bad = null;
        foreach (var word in words)
        {
            if (ValueOf(word, "octave=") is { } octaves)
            {
                clef = Number(octaves, MostOctaves) is { } n ? clef with { Octaves = n } : clef;
                bad ??= Number(octaves, MostOctaves) is null ? word : null;
            }
            else if (ValueOf(word, "transpose=") is { } semitones)
            {
                clef = Number(semitones, MostSemitones) is { } n ? clef with { Semitones = n } : clef;
                bad ??= Number(semitones, MostSemitones) is null ? word : null;
            }
            else if ((ValueOf(word, "clef=") ?? (IsName(word) ? word : null)) is { } name)
            {
                var shift =
                    name.EndsWith("+8", StringComparison.Ordinal) ? 1
                    : name.EndsWith("-8", StringComparison.Ordinal) ? -1
                    : 0;
                clef = clef with
                {
                    ClefOctaves = shift,
                    IsPercussion = name.StartsWith("perc", StringComparison.OrdinalIgnoreCase),
                };
            }
        }
        return clef;
    }

    /// <summary>The interval that <see cref="Semitones"/> makes in a key: spelled so that the sounding key has the fewest
    /// sharps or flats; of equals the usual one (a second, third, fourth …).</summary>
    public Interval Transposing(Key written)
    {
        if (Semitones == 0)
        {
            return Interval.Unison;
        }
        ReadOnlySpan<int> steps = [0, 1, 1, 2, 2, 3, 3, 4, 5, 5, 6, 6];
        var within = Math.Abs(Semitones) % 12;
        var usual = Math.Sign(Semitones) * (Math.Abs(Semitones) / 12 * 7 + steps[within]);
        return new[] { usual, usual - 1, usual + 1 }
            .Select(s => new Interval(s, Semitones))
            .MinBy(i => Math.Abs(written.Plus(i).Signature));
    }

    private static bool IsName(string word) =>
        Array.Exists(Names, n => word.StartsWith(n, StringComparison.OrdinalIgnoreCase));

    private static string? ValueOf(string word, string property) =>
        word.StartsWith(property, StringComparison.OrdinalIgnoreCase) ? word[property.Length..] : null;

    private static int? Number(string text, int most) =>
        int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var n)
        && Math.Abs(n) <= most
            ? n
            : null;
}
