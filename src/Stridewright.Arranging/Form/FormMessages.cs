using System.Globalization;

namespace Stridewright.Arranging;

/// <summary>Sentences about forms.</summary>
internal static class FormMessages
{
    public const string NoStrain = "the form has no strain: name at least one, such as A";

    public static string NoPart(string name, int place) =>
        Text($"'{name}' at character {place} is no part of a form; parts are intro, vamp, A to Z, trio:A, tag and end");

    public static string NotClosed(int place) => Text($"the bracket at character {place} is not closed");

    public static string NoManner(string word, int place) =>
        Text($"'{word}' at character {place} is no way to play a part, such as octaves, stop-time, breaks, high or mf");

    public static string TooMany(int most, int place) =>
        Text($"the form has more than {most} parts, from character {place} on");

    public static string NoSection(char letter, int place, int sections) =>
        Text($"the form asks for {letter} at character {place}, but the tune has {sections} section(s)");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
