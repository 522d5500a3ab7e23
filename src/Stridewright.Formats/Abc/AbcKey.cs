using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>A key as ABC gives it: the key, and what it does to each letter, which may differ from the key's signature
/// (<c>K:GLyd =f</c>, <c>K:HP</c>). Source: ABC 2.1, 3.1.14.</summary>
internal sealed record AbcKey(Key Key, ValueList<int> Alters)
{
    private static readonly (string Start, Mode Mode)[] Modes =
    [
        ("maj", Mode.Major),
        ("ion", Mode.Major),
        ("min", Mode.Minor),
        ("aeo", Mode.Minor),
        ("mix", Mode.Mixolydian),
        ("dor", Mode.Dorian),
        ("phr", Mode.Phrygian),
        ("lyd", Mode.Lydian),
        ("loc", Mode.Locrian),
    ];

    /// <summary>A signature with more is written for by its enharmonic neighbour.</summary>
    public const int MostAlterations = 7;

    private const int MostAccidentals = 4;

    public static readonly AbcKey CMajor = Of(default);

    /// <summary>Semitones that the key adds to a letter.</summary>
    public int AlterOf(Step step) => Alters[(int)step];

    /// <summary>Reads a K: field; parts it does not give (<c>K:clef=bass</c>) stay as before.</summary>
    /// <param name="keepsFarKeys">Keys of more than seven sharps or flats keep their names.</param>
    public static bool TryParse(string text, AbcKey before, bool keepsFarKeys, out AbcKey key)
    {
        key = before;
        var words = text.Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries).ToList();
        if (words.Count == 0 || words[0].Equals("none", StringComparison.OrdinalIgnoreCase))
        {
            key = CMajor;
            words = words.Skip(1).ToList();
        }
        else if (words[0] is "HP" or "Hp")
        {
            key = Of(new Key(new Tone(Step.A, 0), Mode.Mixolydian));
            words.RemoveAt(0);
        }
        else if (!IsModifier(words[0]))
        {
            if (!TryTonic(words, out var tonic, out var mode, out var isExplicit))
            {
                return false;
            }
            key = isExplicit
                ? new AbcKey(new Key(tonic, Mode.Major), CMajor.Alters).WithAccidentals(words).WithLikeliestMode()
                : Of(new Key(tonic, mode), keepsFarKeys);
        }
        key = key.WithAccidentals(words);
        return true;
    }

    private static AbcKey Of(Key key, bool keepsFarKeys = false) =>
        new(keepsFarKeys ? key : Within(key), Enum.GetValues<Step>().Select(s => key.ToneOf(s).Alter).ToValueList());

    // A key of more than seven sharps or flats is named by its enharmonic neighbour; its notes stay as written.
    private static Key Within(Key key) =>
        key.Signature > MostAlterations ? key with { Tonic = key.Tonic.PlusFifths(-12) }
        : key.Signature < -MostAlterations ? key with { Tonic = key.Tonic.PlusFifths(12) }
        : key;

    private static bool TryTonic(List<string> words, out Tone tonic, out Mode mode, out bool isExplicit)
    {
        (tonic, mode, isExplicit) = (default, Mode.Major, false);
        var first = words[0];
        var end = 1;
        while (end < first.Length && end <= MostAccidentals && first[end] is '#' or 'b' or '♯' or '♭')
        {
            end++;
        }
        if (!Tone.TryParse(first.AsSpan(0, end), out tonic))
        {
            return false;
        }
        words.RemoveAt(0);
        var rest = first[end..];
        if (
            rest.Length == 0
            && words.Count > 0
            && (words[0] == "m" || words[0] == "exp" || words[0] == "M" || IsMode(words[0], out _))
        )
        {
            rest = words[0];
            words.RemoveAt(0);
        }
        // An accidental may follow without a space: K:D=c.
        if (rest.Length > 0 && rest[0] is '^' or '_' or '=')
        {
            words.Insert(0, rest);
            rest = "";
        }
        isExplicit = rest == "exp";
        if (rest.Length == 0 || isExplicit || rest == "M")
        {
            return true;
        }
        if (rest == "m")
        {
            mode = Mode.Minor;
            return true;
        }
        return IsMode(rest, out mode);
    }

    private static bool IsMode(string word, out Mode mode)
    {
        foreach (var (start, found) in Modes)
        {
            if (word.StartsWith(start, StringComparison.OrdinalIgnoreCase))
            {
                mode = found;
                return true;
            }
        }
        mode = Mode.Major;
        return false;
    }

    private static bool IsModifier(string word) => word[0] is '^' or '_' or '=' || AbcClef.IsProperty(word);

    // Accidentals such as ^f, __b or =c.
    private AbcKey WithAccidentals(List<string> words)
    {
        var alters = Alters.ToArray();
        foreach (var word in words)
        {
            var letter = word.Length is 2 or 3 ? "cdefgab".IndexOf(char.ToLowerInvariant(word[^1])) : -1;
            if (letter >= 0 && word[..^1] is "^" or "^^" or "_" or "__" or "=")
            {
                alters[letter] =
                    word[0] == '=' ? 0
                    : word[0] == '^' ? word.Length - 1
                    : 1 - word.Length;
            }
        }
        return this with { Alters = alters.ToValueList() };
    }

    // For K:D exp ^f …: the mode whose signature is nearest to the accidentals given.
    private AbcKey WithLikeliestMode()
    {
        var best = Enum.GetValues<Mode>()
            .MinBy(m => Enum.GetValues<Step>().Sum(s => Math.Abs(new Key(Key.Tonic, m).ToneOf(s).Alter - AlterOf(s))));
        return this with { Key = Within(Key with { Mode = best }) };
    }
}
