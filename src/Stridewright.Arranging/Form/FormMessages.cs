using System.Globalization;

namespace Stridewright.Arranging;

/// <summary>Sentences about forms.</summary>
internal static class FormMessages
{
    public const string NoStrain = "the form has no strain: name at least one, such as A";

    public static string NoPart(string name, int place) =>
        Text(
            $"'{name}' at character {place} is no part of a form; parts are intro, vamp, A to Z, A*, half:A, trio:A, tag and end"
        );

    public static string NotClosed(int place) => Text($"the bracket at character {place} is not closed");

    public static string NotApart(int place) => Text($"a space is missing before character {place} of the form");

    public static string NoManner(string word, int place) =>
        Text(
            $"'{word}' at character {place} is no way to play a part, such as octaves, stop-time, breaks, high, rag:0.8 or mf"
        );

    public static string NotHere(string word, int place) =>
        Text(
            $"'{word}' at character {place} does not go with this part: run is for intro, turnaround and segue for strains"
        );

    public static string TooMany(int most, int place) =>
        Text($"the form has more than {most} parts, from character {place} on");

    public static string NoSection(char letter, int place, int sections) =>
        Text($"the form asks for {letter} at character {place}, but the tune has {sections} section(s)");

    public static string NotLifted(string part) =>
        $"{part} cannot be lifted by an octave: its top notes would lie too high; it stays in its register";

    public static string NotHalved(string part) => $"{part} is too short to be halved; all of it is played";

    public static string NoTurnaround(string part) =>
        $"no turnaround at the end of {part}: the tune neither holds nor rests on the tonic there";

    public static string Turned(string part) => $"{part} ends with a turnaround: I VI7 II7 V7";

    public static string Length(double wanted, double seconds, double usual, double printed) =>
        $"{Minutes(seconds)} minutes for the {Minutes(wanted)} asked for"
        + (Math.Abs(usual - printed) < 0.05 ? "" : Text($", at {printed:0.#} instead of the usual {usual:0.#}"));

    public static string NoLength(double wanted, double? shorter, double? longer)
    {
        var nearest = (shorter, longer) switch
        {
            ({ } less, { } more) => $"{Minutes(less)} or {Minutes(more)}",
            ({ } less, null) => Minutes(less),
            (null, { } more) => Minutes(more),
            _ => "none",
        };
        return $"no form of this tune lasts {Minutes(wanted)} minutes within ten seconds; the nearest lengths are {nearest}";
    }

    public static string Slow(double wanted, double seconds) =>
        $"these hands need so slow a tempo that {Minutes(wanted)} minutes were not met ({Minutes(seconds)}); choose another length or a lower level";

    public static string NoRoom(int bars, int least) =>
        Text($"{bars} bars are too few for this tune: its shortest form has {least}");

    public static string LeftOut(IEnumerable<string> parts) =>
        $"to have the length asked for the form does without {string.Join(", ", parts)}";

    public static string HeardOften(string strain, int times) =>
        Text($"{strain} is heard {times} times: the tune is short for the length asked for");

    private static string Minutes(double seconds)
    {
        var whole = (long)Math.Round(seconds);
        return Text($"{whole / 60}:{whole % 60:00}");
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
