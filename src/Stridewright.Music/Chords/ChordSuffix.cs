using System.Globalization;
using System.Text;

namespace Stridewright.Music;

/// <summary>What stands after the root of a chord symbol: its kind and its changed degrees.</summary>
internal static class ChordSuffix
{
    // Ways of writing a chord; the first of a row is the one that is written. Source: common practice, with the
    // kinds of MusicXML 4.0. Degrees: + added, ~ altered, with the accidental relative to the kind.
    private static readonly (ChordKind Kind, string Degrees, string Names)[] Rows =
    [
        (ChordKind.Major, "", " M maj ma major ^"),
        (ChordKind.Minor, "", "m min mi minor -"),
        (ChordKind.Augmented, "", "+ aug a augmented (#5)"),
        (ChordKind.Diminished, "", "dim o ° º d diminished m(b5) mb5"),
        (ChordKind.Dominant, "", "7 dom7 dom"),
        (ChordKind.MajorSeventh, "", "maj7 M7 ma7 major7 ^7 Δ Δ7 j7 (maj7)"),
        (ChordKind.MinorSeventh, "", "m7 min7 mi7 minor7 -7"),
        (ChordKind.DiminishedSeventh, "", "dim7 o7 °7 º7 d7 diminished7"),
        (ChordKind.AugmentedSeventh, "", "7#5 +7 7+ aug7 a7 7aug 7+5 7(#5) 7(+5) augmented7"),
        (ChordKind.HalfDiminished, "", "m7b5 min7b5 mi7b5 -7b5 m7(b5) min7(b5) -7(b5) m7-5 ø ø7 Ø Ø7"),
        (
            ChordKind.MajorMinor,
            "",
            "m(maj7) mmaj7 mM7 minmaj7 min(maj7) mma7 m(ma7) m(M7) min(M7) -(maj7) -maj7 -M7 m^7 -^7 m^ -^ mΔ -Δ mΔ7 -Δ7"
        ),
        (ChordKind.MajorSixth, "", "6 maj6 M6 ma6"),
        (ChordKind.MinorSixth, "", "m6 min6 mi6 -6"),
        (ChordKind.DominantNinth, "", "9 dom9"),
        (ChordKind.MajorNinth, "", "maj9 M9 ma9 ^9 Δ9 major9"),
        (ChordKind.MinorNinth, "", "m9 min9 mi9 -9"),
        (ChordKind.Dominant11th, "", "11"),
        (ChordKind.Major11th, "", "maj11 M11 ma11 ^11 Δ11"),
        (ChordKind.Minor11th, "", "m11 min11 mi11 -11"),
        (ChordKind.Dominant13th, "", "13"),
        (ChordKind.Major13th, "", "maj13 M13 ma13 ^13 Δ13"),
        (ChordKind.Minor13th, "", "m13 min13 mi13 -13"),
        (ChordKind.SuspendedSecond, "", "sus2"),
        (ChordKind.SuspendedFourth, "", "sus4 sus"),
        (ChordKind.Neapolitan, "", "nea6"),
        (ChordKind.Italian, "", "it6"),
        (ChordKind.French, "", "fr6"),
        (ChordKind.German, "", "ger6"),
        (ChordKind.Pedal, "", "ped"),
        (ChordKind.Power, "", "5"),
        (ChordKind.Tristan, "", "tristan"),
        (ChordKind.Other, "", "other"),
        (ChordKind.MajorSixth, "+9", "69 6/9 maj69 M69 M6/9"),
        (ChordKind.MinorSixth, "+9", "m69 m6/9 min69 min6/9 -69 -6/9"),
        (ChordKind.Major, "+9", "add9 (add9)"),
        (ChordKind.Major, "+2", "add2 2 (add2)"),
        (ChordKind.Minor, "+9", "madd9 m(add9) minadd9"),
        (ChordKind.Major, "~b5", "(b5) -5 majb5"),
        (ChordKind.SuspendedFourth, "+7", "7sus4 7sus sus7 7(sus4) 7(sus)"),
        (ChordKind.SuspendedSecond, "+7", "7sus2 7(sus2)"),
        (ChordKind.SuspendedFourth, "+7 +9", "9sus4 9sus 9(sus4) 9(sus)"),
        (ChordKind.SuspendedFourth, "+7 +9 +13", "13sus4 13sus 13(sus4) 13(sus)"),
        (ChordKind.SuspendedFourth, "+7 +b9", "7sus4(b9) 7b9sus4 7b9sus"),
        (ChordKind.SuspendedFourth, "+#7", "maj7sus4 maj7sus M7sus4 M7sus"),
        (ChordKind.MajorMinor, "+9", "m(maj9) mmaj9 mM9 minmaj9 -maj9 -M9 m^9 -^9 mΔ9 -Δ9"),
        (ChordKind.AugmentedSeventh, "+9", "9#5 +9 9+ aug9 9(#5) 9+5"),
        (ChordKind.AugmentedSeventh, "+#9", "7alt alt alt7"),
        (ChordKind.MajorSeventh, "~#5", "maj7#5 maj7(#5) +maj7 +M7 M7#5 ^7#5 Δ7#5 augmaj7 +(maj7)"),
    ];

    private static readonly Dictionary<string, (ChordKind Kind, ValueList<ChordDegree> Degrees)> ByName =
        Rows.SelectMany(row => row.Names.Split(' ').Select(name => (name, value: (row.Kind, DegreesOf(row.Degrees)))))
            .ToDictionary(e => e.name, e => e.value, StringComparer.Ordinal);

    /// <summary>Every way of writing a kind that is known by name.</summary>
    public static IReadOnlyCollection<string> Names => ByName.Keys;

    private static readonly int LongestName = ByName.Keys.Max(n => n.Length);

    private static readonly HashSet<string> Words =
    [
        .. "maj ma major min mi minor dim diminished aug augmented sus add no omit dom alt mmaj minmaj madd minadd augmaj".Split(
            ' '
        ),
    ];

    /// <summary>The suffix with words such as Maj, MIN or Sus in small letters; single letters keep their case.</summary>
    public static string Lowered(string suffix)
    {
        var text = new StringBuilder(suffix.Length);
        for (var i = 0; i < suffix.Length; )
        {
            var end = i;
            while (end < suffix.Length && char.IsAsciiLetter(suffix[end]))
            {
                end++;
            }
            var run = suffix[i..Math.Max(end, i + 1)];
            var lower = run.ToLowerInvariant();
            // The m before a further word keeps its case: a capital is major.
            text.Append(
                !Words.Contains(lower) ? run
                : lower is "madd" or "mmaj" ? run[0] + lower[1..]
                : lower
            );
            i += run.Length;
        }
        return text.ToString();
    }

    /// <summary>The longest name that leaves only changes of degree behind it wins.</summary>
    public static bool TryParse(string suffix, out ChordKind kind, out ValueList<ChordDegree> degrees)
    {
        for (var length = Math.Min(LongestName, suffix.Length); length >= 0; length--)
        {
            if (
                ByName.TryGetValue(suffix[..length], out var found)
                && TryDegrees(suffix.AsSpan(length), found.Kind, found.Degrees, out degrees)
            )
            {
                kind = found.Kind;
                return true;
            }
        }
        (kind, degrees) = (ChordKind.None, []);
        return false;
    }

    public static string Format(ChordKind kind, ValueList<ChordDegree> degrees)
    {
        var row = Array.FindIndex(Rows, r => r.Kind == kind && DegreesOf(r.Degrees).Equals(degrees));
        if (row >= 0)
        {
            return NameOf(row);
        }
        var name = NameOf(Array.FindIndex(Rows, r => r.Kind == kind));
        var brief = new StringBuilder(name);
        var full = new StringBuilder(name);
        foreach (var degree in degrees)
        {
            var number = Accidentals(degree.Alter) + degree.Value.ToString(CultureInfo.InvariantCulture);
            var word = degree.Change switch
            {
                DegreeChange.Add => "add",
                DegreeChange.Alter => "alt",
                _ => "no",
            };
            full.Append('(').Append(word).Append(number).Append(')');
            brief.Append('(').Append(degree.Alter == 0 ? word : "").Append(number).Append(')');
        }
        return
            TryParse(brief.ToString(), out var kindRead, out var degreesRead)
            && kindRead == kind
            && degreesRead.Equals(degrees)
            ? brief.ToString()
            : full.ToString();
    }

    private static string NameOf(int row) => Rows[row].Names.Split(' ')[0];

    private static string Accidentals(int alter) => new(alter < 0 ? 'b' : '#', Math.Abs(alter));

    // Any run of: [add|alt|no|omit] [b|#|-|+]… number, each perhaps in brackets, with commas or slashes between.
    private static bool TryDegrees(
        ReadOnlySpan<char> text,
        ChordKind kind,
        ValueList<ChordDegree> given,
        out ValueList<ChordDegree> degrees
    )
    {
        var list = given.ToList();
        degrees = given;
        var open = 0;
        while (!text.IsEmpty)
        {
            if (text[0] is '(' or ')' or ',')
            {
                open +=
                    text[0] is '(' ? 1
                    : text[0] is ')' ? -1
                    : 0;
                text = text[1..];
                if (open is < 0 or > 1)
                {
                    return false;
                }
                continue;
            }
            if (!TryDegree(ref text, kind, list, out var degree))
            {
                return false;
            }
            list.Add(degree);
        }
        degrees = list.ToValueList();
        return open == 0;
    }

    private static bool TryDegree(
        ref ReadOnlySpan<char> text,
        ChordKind kind,
        List<ChordDegree> before,
        out ChordDegree degree
    )
    {
        degree = default;
        DegreeChange? change =
            Take(ref text, "add") ? DegreeChange.Add
            : Take(ref text, "alt") ? DegreeChange.Alter
            : Take(ref text, "no") || Take(ref text, "omit") ? DegreeChange.Subtract
            : null;
        if (change == DegreeChange.Add && Take(ref text, "maj7"))
        {
            degree = new ChordDegree(7, 1, DegreeChange.Add);
            return true;
        }
        var alter = 0;
        while (!text.IsEmpty && text[0] is 'b' or '#' or '+' or '-' && Math.Abs(alter) < 4)
        {
            alter += text[0] is 'b' or '-' ? -1 : 1;
            text = text[1..];
        }
        var digits = 0;
        while (digits < text.Length && digits < 2 && char.IsAsciiDigit(text[digits]))
        {
            digits++;
        }
        // One digit unless two make a degree: 13 and 11, but not 59.
        if (digits == 2 && text[0] != '1')
        {
            digits = 1;
        }
        if (
            !int.TryParse(text[..digits], NumberStyles.None, CultureInfo.InvariantCulture, out var value)
            || value is < 1 or > 13
            || (change is null && (alter == 0 || (value, alter) is not ((5 or 6 or 9 or 11 or 13, _) or (4, > 0))))
        )
        {
            return false;
        }
        text = text[digits..];
        // A raised fourth without a word is the raised eleventh.
        value = change is null && value == 4 ? 11 : value;
        change ??= Has(kind, before, value) ? DegreeChange.Alter : DegreeChange.Add;
        degree = new ChordDegree(value, alter, change.Value);
        return true;
    }

    private static bool Has(ChordKind kind, List<ChordDegree> before, int value) =>
        before.All(d => d.Value != value)
        && ChordKinds.IntervalsOf(new ChordSymbol(default, kind)).Any(i => i.Steps == value - 1);

    private static bool Take(ref ReadOnlySpan<char> text, string word)
    {
        if (!text.StartsWith(word, StringComparison.Ordinal))
        {
            return false;
        }
        text = text[word.Length..];
        return true;
    }

    private static ValueList<ChordDegree> DegreesOf(string text) =>
        text.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(part =>
            {
                var number = part.TrimStart('+', '~', 'b', '#');
                return new ChordDegree(
                    int.Parse(number, CultureInfo.InvariantCulture),
                    part.Count(c => c == '#') - part.Count(c => c == 'b'),
                    part[0] == '+' ? DegreeChange.Add : DegreeChange.Alter
                );
            })
            .ToValueList();
}
