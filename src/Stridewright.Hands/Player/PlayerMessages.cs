using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>Sentences about players and their files.</summary>
internal static class PlayerMessages
{
    public const string OutsideSection =
        "this line belongs to nothing: begin with name NAME, hands (its lines indented below) or notes";

    public static string NoName(int most) =>
        Text($"the player needs a name: a line 'name Ada', of at most {most} characters");

    public static string TooLong(int most) =>
        Text($"the file has more than {most} characters: it is no player file of this program");

    /// <summary>Why a first line is not one that can be read.</summary>
    public static string NotOurs(TextLine first, int ours) =>
        first.VersionBehind(PlayerText.FirstWords) is { } version && version > ours
            ? Text($"the file is of version {version}, and this program reads version {ours}: use a newer program")
            : $"this is no player file: its first line is '{Quoted.Short(first.Text)}', not {PlayerText.FirstWords} {ours}";

    public static string Twice(string word) => $"{word} stands here a second time";

    public static string NoWord(string word, string all) =>
        $"'{Quoted.Short(word)}' is nothing that is said of hands; there are {all}";

    public static string BadValue(string word, string given, string expected) =>
        given.Length == 0 ? $"{word} needs a value: {expected}"
        : expected.Length == 0 ? $"{word} stands alone on its line: take '{Quoted.Short(given)}' out"
        : $"'{Quoted.Short(given)}' is no value for {word}: {expected}";

    public static string NotUsual(string given, int lowest, int highest) =>
        Text(
            $"'{Quoted.Short(given)}' is no usual hand: write women or men and how many of a hundred have no wider one, {lowest} to {highest}, such as women 50"
        );

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
