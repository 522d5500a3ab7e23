using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>Reads <c>harmony</c> elements (MusicXML 4.0): root, kind, inversion, bass, degrees.</summary>
internal static class HarmonyReader
{
    // "MajorSeventh" is written "major-seventh", "Dominant11th" "dominant-11th".
    private static readonly Dictionary<string, ChordKind> Kinds = Enum.GetValues<ChordKind>()
        .ToDictionary(k => Written(k), k => k, StringComparer.OrdinalIgnoreCase);

    private const int MostDegrees = 16;

    /// <summary>The symbol at its written pitch, or null with the reason among the findings.</summary>
    public static ChordSymbol? Read(Element harmony, Place place, Findings findings)
    {
        var kindText = harmony.TextOf("kind");
        if (string.Equals(kindText, "none", StringComparison.OrdinalIgnoreCase))
        {
            return ChordSymbol.NoChord;
        }
        if (ReadTone(harmony.Child("root"), "root", place, findings) is not { } root)
        {
            findings.Warn(place, MusicXmlMessages.HarmonyWithoutRoot);
            return null;
        }
        if (harmony.All("root").Skip(1).Any())
        {
            findings.Note(place, MusicXmlMessages.OnlyFirstOfHarmony);
        }
        if (!Kinds.TryGetValue(kindText ?? "", out var kind))
        {
            findings.Warn(place, MusicXmlMessages.UnknownKind(Element.Clean(kindText)));
            kind = kindText is null ? ChordKind.Major : ChordKind.Other;
        }
        var chord = new ChordSymbol(root, kind)
        {
            Degrees = harmony
                .All("degree")
                .Take(MostDegrees)
                .Select(d => ReadDegree(d, place, findings))
                .OfType<ChordDegree>()
                .ToValueList(),
        };
        return chord with { Bass = ReadBass(harmony, chord, place, findings) };
    }

    private static Tone? ReadBass(Element harmony, ChordSymbol chord, Place place, Findings findings)
    {
        if (harmony.Child("bass") is { } written)
        {
            return ReadTone(written, "bass", place, findings) is { } bass && bass != chord.Root ? bass : null;
        }
        // An inversion counts chord tones above the root.
        return
            int.TryParse(harmony.TextOf("inversion"), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && number > 0
            && number < chord.Intervals.Count
            ? chord.Root.Plus(chord.Intervals[number])
            : null;
    }

    private static Tone? ReadTone(Element? holder, string name, Place place, Findings findings)
    {
        if (holder?.TextOf(name + "-step") is not { Length: 1 } letter || !Tone.TryParse(letter, out var natural))
        {
            return null;
        }
        var alter = Alteration.Read(holder, name + "-alter", place, findings);
        return new Tone(natural.Step, alter);
    }

    private static ChordDegree? ReadDegree(Element degree, Place place, Findings findings)
    {
        DegreeChange? change = degree.TextOf("degree-type") switch
        {
            "add" => DegreeChange.Add,
            "alter" => DegreeChange.Alter,
            "subtract" => DegreeChange.Subtract,
            _ => null,
        };
        if (
            change is null
            || !int.TryParse(
                degree.TextOf("degree-value"),
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out var value
            )
            || value is < 1 or > 13
        )
        {
            findings.Warn(place, MusicXmlMessages.BadDegree);
            return null;
        }
        return new ChordDegree(value, Alteration.Read(degree, "degree-alter", place, findings), change.Value);
    }

    private static string Written(ChordKind kind)
    {
        var name = kind.ToString();
        var written = new System.Text.StringBuilder();
        for (var i = 0; i < name.Length; i++)
        {
            var startsWord = char.IsUpper(name[i]) || (char.IsDigit(name[i]) && !char.IsDigit(name[i - 1]));
            written.Append(i > 0 && startsWord ? "-" : "").Append(char.ToLowerInvariant(name[i]));
        }
        return written.ToString();
    }
}
