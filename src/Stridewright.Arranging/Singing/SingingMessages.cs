using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>What is said about voices.</summary>
internal static class SingingMessages
{
    public const string NothingToSing = "the tune has no notes to be sung: give it as a tune, not as chords alone";

    public static string NoRange(string text) =>
        $"'{text}' is no range: give the lowest and the highest note with a hyphen between, such as A3-D5 (C4 is middle C)";

    public static string UpsideDown(string text) => $"'{text}' is no range: give the lower note first, such as A3-D5";

    public static string NoVoice(string text) =>
        $"'{text}' lies beyond human voices: give notes from C1 to D7, such as A3-D5 (C4 is middle C)";

    public static string FitsNoKey(Pitch lowest, Pitch highest, VocalRange range) =>
        $"the tune goes from {lowest} to {highest} ({Span(highest.Midi - lowest.Midi)}), the voice from {range.Lowest} to {range.Highest} ({Span(range.Highest.Midi - range.Lowest.Midi)}): it fits in no key; a wider range, or a form without the trio, may help";

    public static string FitsNotThisKey(Pitch lowest, Pitch highest, Tone tonic, VocalRange range, Tone better) =>
        $"in {tonic} the tune goes from {lowest} to {highest}, or an octave from there, which is not within {range}; in {better} it is";

    public static string Sung(Pitch lowest, Pitch highest, VocalRange? range) =>
        range is null
            ? $"the voice sings from {lowest} to {highest}, as written"
            : $"the voice sings from {lowest} to {highest}, within {range}";

    private static string Span(int semitones) =>
        FormattableString.Invariant($"{semitones} semitone{(semitones == 1 ? "" : "s")}");
}
