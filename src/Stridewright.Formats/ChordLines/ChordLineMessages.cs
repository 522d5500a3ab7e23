using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Formats.ChordLines;

/// <summary>What the reader of chord lines says to its user.</summary>
internal static class ChordLineMessages
{
    private const int LongestQuote = 24;

    public const string NoChords = "there is no chord in the line: write bars such as F | D7 | G7 C7 | F";
    public const string NothingToRepeat = "there is no bar before this one to repeat";
    public const string NothingToHold = "'.' holds the chord before it, and there is none";
    public const string NothingToGoBackTo = "':|' ends a repeat, and no bar stands before it";
    public const string NotClosed = "the repeat that begins here is not closed: write :| where it goes back";
    public const string WithinRepeat = "a repeat begins within a repeat: close the first one with :|";
    public const string RepeatAmongOthers = "'%' repeats the whole bar before: nothing else stands in its bar";

    public static string TooLong(int most) =>
        Text($"the line has more than {most} characters: give the piece in parts");

    public static string TooManyBars(int most) => Text($"the line has more than {most} bars: give the piece in parts");

    public static string TooManyInBar(int entries, int most, Metre metre) =>
        Text($"the bar has {entries} chords: in {metre} there is room for {most}");

    public static string NoChord(string given) =>
        given is "/" or "-"
            ? $"'{given}' is no chord: '.' holds a chord for one more share of the bar"
            : $"'{Quoted(given)}' is no chord: write one such as F, Gm7, Bb7/D or N.C.";

    public static string NoSign(string given) => $"'{Quoted(given)}' is no bar line: write |, ||, |: or :|";

    private static string Quoted(string given) =>
        given.Length > LongestQuote ? string.Concat(given.AsSpan(0, LongestQuote), "…") : given;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
