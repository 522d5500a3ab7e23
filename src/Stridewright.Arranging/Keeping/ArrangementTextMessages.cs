using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Sentences about the text of arrangement files.</summary>
internal static class ArrangementTextMessages
{
    public const string NoTune = "the file has no tune: a line 'tune' and the tune in ABC belong at its end";
    public const string OutsideSection =
        "this line belongs to no section: begin one with brief, kept, settled, figures or tune";
    public const string BothLevels = "give one level for both hands, or left and right ones, not both";
    public const string NoStrokePlace =
        "a kept note begins with its place and length in whole notes, such as 1/8+1/16: the place from 0, the length more than 0";
    public const string NoRole = "what the notes are for stands here, such as bass, chord, fill or tune:12";
    public const string NoPitches = "the keys are missing: name them behind what they are for, such as bass F2 F3";
    public const string GracesOpen = "the bracket { of the crushed notes is not closed";
    public const string NoVoice = "the voice is 1 or 2";
    public const string StrokeOutsideBar = "these notes belong to no bar: put a line such as 'bar 5 left' before them";
    public const string NoOmitted =
        "omits names notes of the tune by their number from 1, each once, such as omits 12 13";
    public const string FigureWithoutName = "a figure begins with its name: figure NAME";
    public const string LineOutsideFigure =
        "this line belongs to no figure: put a line such as 'figure NAME' before it";

    public static string NotSettled(string line) =>
        $"'{Short(line)}' is nothing that a setting settles; release it: without the section settled all is found anew";

    public static string TooLong(int most) =>
        Text($"the file has more than {most} characters: it is no arrangement file of this program");

    public static string NotOurs(string firstLine) =>
        $"this is no arrangement file: its first line is '{Short(firstLine)}', not stridewright arrangement 1";

    public static string Newer(int version, int ours) =>
        Text($"the file is of version {version}, and this program reads version {ours}: use a newer program");

    public static string SectionTwice(string name) => $"the section {name} stands here a second time";

    public static string NoSetting(string word, string all) =>
        $"'{Short(word)}' is no word of a brief; there are {all}";

    public static string SettingTwice(string word) => $"{word} stands here a second time";

    public static string BadValue(string word, string given, string expected) =>
        given.Length == 0 ? $"{word} needs a value: {expected}"
        : expected.Length == 0 ? $"{word} stands alone on its line: take '{Short(given)}' out"
        : $"'{Short(given)}' is no value for {word}: {expected}";

    public static string NoBar(string given, int most) =>
        Text($"'{Short(given)}' names no bar of one hand: write such as 'bar 5 left', the bar from 1 to {most}");

    public static string BarTwice(int bar, string hand) => Text($"bar {bar} {hand} is kept twice");

    public static string NoPitch(string given) =>
        $"'{Short(given)}' is no key of the piano: write keys as F#3 or Bb4, from A0 to C8";

    public static string PitchTwice(string given) => $"{Short(given)} is struck twice at once";

    public static string AfterKeys(string given) =>
        $"'{Short(given)}' cannot stand behind the keys; only rolled and voice 2 can";

    public static string TooMany(string what, int most) =>
        Text($"more than {most} {what}: that is more than any piece has");

    public static string TooLongName(int most) => Text($"the name has more than {most} characters");

    public static string FigureTwice(string name) => $"there are two figures named {Short(name)}";

    private static string Short(string text) => Quoted.Short(text);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    public static string NotShown(string word, IEnumerable<string> words) =>
        $"'{Quoted.Short(word)}' is nothing that is shown: write {string.Join(", ", words)}";
}
