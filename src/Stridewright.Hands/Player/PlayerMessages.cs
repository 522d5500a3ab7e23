using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>Sentences about players and their files.</summary>
internal static class PlayerMessages
{
    public const string OutsideSection =
        "this line belongs to nothing: begin with name NAME, hands (its lines indented below) or notes";

    public const string TestSubtitle =
        "each part to its click, with a bar of rest before the next; stop where it will not go";

    public static string TestTitle(Hand hand) => $"Leap test, {(hand == Hand.Left ? "left" : "right")} hand";

    public static string PartOfTest(int part, bool isLeaps) =>
        isLeaps ? Text($"{part}: leaps") : Text($"{part}: one finger");

    public static string TakeTooLong(int most) =>
        Text($"the take has more than {most} strokes: record the leap test alone (--write-leap-test writes it)");

    public static string NoTakeOfTest(int found, int all) =>
        Text(
            $"this is no take of the leap test: {found} of the {all} strokes of its first part are in it; play what --write-leap-test writes, from its beginning"
        );

    public static string FirstPartMissed(int landed, int moves) =>
        Text(
            $"the first part was not landed: {landed} of its {moves} leaps, and nine in ten must be, each on its key, in time and with no other between; practise it slower, and play it again"
        );

    public static string Landed(int part, bool isLeaps, int landed, int moves, double rate) =>
        Text(
            $"part {part}: {landed} of {moves} {(isLeaps ? "leaps" : "strokes")} landed{(landed == 0 ? "" : Text($", {rate:0.0} {(isLeaps ? "bits" : "strokes")} a second"))}"
        );

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
