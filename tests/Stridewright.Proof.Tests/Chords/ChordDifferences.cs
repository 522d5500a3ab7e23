using Stridewright.Music;

namespace Stridewright.Proof.Tests.Chords;

/// <summary>
/// Where the library and we differ, each with its reason. Intervals are written as the library writes them. Nothing else
/// may differ, and every row must be a difference still.
/// </summary>
internal static class ChordDifferences
{
    /// <summary>Kinds that the library builds otherwise, or not at all (theirs is empty then); ours by the definition
    /// text of MusicXML 4.0, <c>kind-value</c>, where it gives one.</summary>
    public static readonly Dictionary<ChordKind, (string Ours, string Theirs, string Reason)> Kinds = new()
    {
        [ChordKind.Dominant11th] = (
            "1P 3M 5P 7m 9M 11P",
            "1P 5P 7m 9M 11P",
            "MusicXML: dominant-ninth and eleventh; they leave out the third, as it is often voiced"
        ),
        [ChordKind.Dominant13th] = ("1P 3M 5P 7m 9M 11P 13M", "1P 3M 5P 7m 9M 13M", NoEleventh),
        [ChordKind.Major13th] = ("1P 3M 5P 7M 9M 11P 13M", "1P 3M 5P 7M 9M 13M", NoEleventh),
        [ChordKind.Minor13th] = ("1P 3m 5P 7m 9M 11P 13M", "1P 3m 5P 7m 9M 13M", NoEleventh),
        [ChordKind.Neapolitan] = ("1P 3M 5P", "", Functional),
        [ChordKind.Italian] = ("1P 3M 6A", "", Functional),
        [ChordKind.French] = ("1P 3M 4A 6A", "", Functional),
        [ChordKind.German] = ("1P 3M 5P 6A", "", Functional),
        [ChordKind.Pedal] = ("1P", "", "MusicXML: a pedal-point bass; no chord of the library"),
        [ChordKind.Tristan] = ("1P 4A 6A 9A", "", "MusicXML: augmented fourth, sixth and ninth; not in the library"),
        [ChordKind.Other] = ("1P", "", "MusicXML: explained by added degrees alone; the root is all that is known"),
    };

    /// <summary>Their names that we refuse.</summary>
    public static readonly Dictionary<string, string> Refused = new()
    {
        ["M7#5sus4"] = "an altered fifth beside a suspended fourth: no lead sheet has it",
        ["M9#5sus4"] = "likewise",
        ["7#5sus4"] = "likewise",
        ["7b9b13sus4"] = "alterations before the word; we read them after it",
        ["M9sus4"] = "a suspended major ninth: no lead sheet has it",
        ["sus24"] = "two suspensions in one word",
        ["67"] = "could be a sixth and a seventh or a misprint",
        ["m+"] = "contradicts itself: minor, but + stands for a major third",
        ["mb6M7"] = "a name of the library's own",
        ["m/ma7"] = OurSlash,
        ["m/maj7"] = OurSlash,
        ["m/M7"] = OurSlash,
        ["oM7"] = "a major seventh on a diminished triad has no kind in MusicXML",
        ["o7M7"] = "likewise",
        ["h7"] = Letter,
        ["h"] = Letter,
        ["4"] = "fourths on fourths are no kind of MusicXML",
        ["quartal"] = "likewise",
        ["m11A"] = "a name of the library's own",
        ["phryg"] = "a scale, not a chord symbol",
    };

    /// <summary>Their names that we read otherwise, with our intervals.</summary>
    public static readonly Dictionary<string, (string Ours, string Reason)> Names = new()
    {
        ["11"] = ("1P 3M 5P 7m 9M 11P", "as the kind"),
        ["11b9"] = ("1P 3M 5P 7m 9m 11P", "as the kind"),
        ["13"] = ("1P 3M 5P 7m 9M 11P 13M", NoEleventh),
        ["13b5"] = ("1P 3M 5d 7m 9M 11P 13M", NoEleventh),
        ["13b9"] = ("1P 3M 5P 7m 9m 11P 13M", NoEleventh),
        ["13#9"] = ("1P 3M 5P 7m 9A 11P 13M", NoEleventh),
        ["13no5"] = ("1P 3M 7m 9M 11P 13M", NoEleventh),
        ["maj13"] = ("1P 3M 5P 7M 9M 11P 13M", NoEleventh),
        ["Maj13"] = ("1P 3M 5P 7M 9M 11P 13M", NoEleventh),
        ["^13"] = ("1P 3M 5P 7M 9M 11P 13M", NoEleventh),
        ["m13"] = ("1P 3m 5P 7m 9M 11P 13M", NoEleventh),
        ["-13"] = ("1P 3m 5P 7m 9M 11P 13M", NoEleventh),
        ["M7add13"] = ("1P 3M 5P 7M 13M", "only the thirteenth is added; they bring the ninth along"),
        ["maj#4"] = ("1P 3M 5P 11A", "maj alone is a triad; they take it for a major seventh here only"),
        ["M7b6"] = ("1P 3M 5P 6m 7M", FifthStays),
        ["^7b6"] = ("1P 3M 5P 6m 7M", FifthStays),
        ["7b13"] = ("1P 3M 5P 7m 13m", FifthStays),
        ["9b13"] = ("1P 3M 5P 7m 9M 13m", FifthStays),
        ["mb6b9"] = ("1P 3m 5P 6m 9m", FifthStays),
        ["m7#5"] = ("1P 3m 5A 7m", NameSpells),
        ["m9#5"] = ("1P 3m 5A 7m 9M", NameSpells),
        ["M6b5"] = ("1P 3M 5d 6M", FifthLowered),
        ["6b5"] = ("1P 3M 5d 6M", FifthLowered),
        ["7b5b13"] = ("1P 3M 5d 7m 13m", FifthLowered),
        ["9b5b13"] = ("1P 3M 5d 7m 9M 13m", FifthLowered),
        ["7b5b9"] = ("1P 3M 5d 7m 9m", FifthLowered),
        ["7b9b5"] = ("1P 3M 5d 7m 9m", FifthLowered),
        ["7b5b9b13"] = ("1P 3M 5d 7m 9m 13m", FifthLowered),
        ["7b5#9"] = ("1P 3M 5d 7m 9A", FifthLowered),
        ["7#9b5"] = ("1P 3M 5d 7m 9A", FifthLowered),
        ["alt7"] = ("1P 3M 5A 7m 9A", "altered has no fixed tones; we take their 7alt, they a ninth without a fifth"),
    };

    /// <summary>The names that the library does not read, behind the name of the same chord that it does.</summary>
    public static readonly (string Theirs, string Ours)[] OtherWays =
    [
        ("", "ma"),
        ("m", "mi"),
        ("aug", "a (#5)"),
        ("dim", "º d m(b5) mb5"),
        ("7", "dom7"),
        ("maj7", "major7 Δ7 j7 (maj7)"),
        ("m7", "minor7"),
        ("dim7", "º7 d7 diminished7"),
        ("7#5", "a7 7+5 7(#5) 7(+5) augmented7"),
        ("m7b5", "min7b5 mi7b5 m7(b5) min7(b5) -7(b5) m7-5 ø7 Ø Ø7"),
        ("mM7", "m(maj7) mmaj7 minmaj7 min(maj7) mma7 m(ma7) m(M7) min(M7) -(maj7) -M7 m^7 m^ -^ -Δ mΔ7"),
        ("6", "maj6 ma6"),
        ("m6", "min6 mi6"),
        ("9", "dom9"),
        ("maj9", "M9 ma9 major9"),
        ("m9", "min9 mi9"),
        ("maj11", "ma11"),
        ("m11", "min11 mi11"),
        ("69", "maj69 M6/9"),
        ("m69", "m6/9 min69 min6/9 -6/9"),
        ("add9", "(add9) (add2)"),
        ("madd9", "m(add9) minadd9"),
        ("Mb5", "(b5) -5 majb5"),
        ("7sus4", "sus7 7(sus4) 7(sus)"),
        ("9sus4", "9(sus4) 9(sus)"),
        ("13sus4", "13(sus4) 13(sus)"),
        ("7b9sus4", "7sus4(b9)"),
        ("M7sus4", "maj7sus4 maj7sus M7sus"),
        ("mM9", "m(maj9) mmaj9 minmaj9 -maj9 -M9 m^9 mΔ9 -Δ9"),
        ("9#5", "+9 aug9 9(#5) 9+5"),
        ("7alt", "alt"),
        ("maj7#5", "maj7(#5) +M7 M7#5 Δ7#5 augmaj7 +(maj7)"),
    ];

    /// <summary>Our names that the library has no name for, with their intervals.</summary>
    public static readonly (string Intervals, string Ours, string Reason)[] NotTheirs =
    [
        ("1P 3M 5P 7M 9M 11P 13M", "M13 ma13 Δ13", NoEleventh),
        ("1P 3m 5P 7m 9M 11P 13M", "min13 mi13", NoEleventh),
        ("1P 2M 5P 7m", "7sus2 7(sus2)", "a suspended second with a seventh is not in the library"),
        ("1P 3M 5P", "nea6", Functional),
        ("1P 3M 6A", "it6", Functional),
        ("1P 3M 4A 6A", "fr6", Functional),
        ("1P 3M 5P 6A", "ger6", Functional),
        ("1P", "ped other", "no chord"),
        ("1P 4A 6A 9A", "tristan", "as the kind"),
    ];

    private const string NoEleventh = "MusicXML: with the eleventh; they leave it out, as it is usually voiced",
        Functional = "MusicXML: a functional chord, spelled by the common practice of its function; not in the library",
        FifthStays = "an added sixth or thirteenth leaves the fifth where it is; they drop it",
        FifthLowered = "b5 lowers the fifth, as the name says; they keep the fifth and add a raised eleventh",
        NameSpells = "#5 is spelled as a raised fifth, as the name says; they spell a lowered sixth",
        OurSlash = "a small letter after a slash is a bass for us",
        Letter = "h is a note name in half of Europe";
}
