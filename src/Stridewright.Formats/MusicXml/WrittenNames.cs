using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>Names of MusicXML 4.0 for our values.</summary>
internal static class WrittenNames
{
    /// <summary>Value of the type <c>note-type-value</c>.</summary>
    public static string TypeOf(NoteValue value) =>
        value.Part switch
        {
            0 => "breve",
            1 => "whole",
            2 => "half",
            4 => "quarter",
            8 => "eighth",
            32 => "32nd",
            512 => "512th",
            _ => value.Part.ToString(CultureInfo.InvariantCulture) + "th",
        };

    /// <summary>Value of the type <c>kind-value</c>.</summary>
    public static string KindOf(ChordKind kind) =>
        kind switch
        {
            ChordKind.MajorSeventh => "major-seventh",
            ChordKind.MinorSeventh => "minor-seventh",
            ChordKind.DiminishedSeventh => "diminished-seventh",
            ChordKind.AugmentedSeventh => "augmented-seventh",
            ChordKind.HalfDiminished => "half-diminished",
            ChordKind.MajorMinor => "major-minor",
            ChordKind.MajorSixth => "major-sixth",
            ChordKind.MinorSixth => "minor-sixth",
            ChordKind.DominantNinth => "dominant-ninth",
            ChordKind.MajorNinth => "major-ninth",
            ChordKind.MinorNinth => "minor-ninth",
            ChordKind.Dominant11th => "dominant-11th",
            ChordKind.Major11th => "major-11th",
            ChordKind.Minor11th => "minor-11th",
            ChordKind.Dominant13th => "dominant-13th",
            ChordKind.Major13th => "major-13th",
            ChordKind.Minor13th => "minor-13th",
            ChordKind.SuspendedSecond => "suspended-second",
            ChordKind.SuspendedFourth => "suspended-fourth",
            ChordKind.Neapolitan => "Neapolitan",
            ChordKind.Italian => "Italian",
            ChordKind.French => "French",
            ChordKind.German => "German",
            ChordKind.Tristan => "Tristan",
            _ => kind.ToString().ToLowerInvariant(),
        };

    public static string StateOf(BeamState state) =>
        state switch
        {
            BeamState.Begin => "begin",
            BeamState.Continue => "continue",
            BeamState.End => "end",
            BeamState.ForwardHook => "forward hook",
            _ => "backward hook",
        };

    /// <summary>True for the names of elements of the type <c>dynamics</c>.</summary>
    public static bool IsDynamic(string text) =>
        text
            is "p"
                or "pp"
                or "ppp"
                or "pppp"
                or "ppppp"
                or "pppppp"
                or "f"
                or "ff"
                or "fff"
                or "ffff"
                or "fffff"
                or "ffffff"
                or "mp"
                or "mf"
                or "sf"
                or "sfp"
                or "sfpp"
                or "fp"
                or "rf"
                or "rfz"
                or "sfz"
                or "sffz"
                or "fz"
                or "n"
                or "pf"
                or "sfzp";
}
