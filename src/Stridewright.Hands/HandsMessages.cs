using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>Every sentence of this project: what is the matter, and what to do.</summary>
internal static class HandsMessages
{
    private static readonly string[] KeyNames = ["C", "C#", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B"];

    private static readonly string[] IntervalNames =
    [
        "unison",
        "minor second",
        "major second",
        "minor third",
        "major third",
        "fourth",
        "tritone",
        "fifth",
        "minor sixth",
        "major sixth",
        "minor seventh",
        "major seventh",
        "octave",
        "minor ninth",
        "major ninth",
        "minor tenth",
        "major tenth",
        "eleventh",
        "octave and tritone",
        "twelfth",
        "minor thirteenth",
        "major thirteenth",
        "minor fourteenth",
        "major fourteenth",
        "double octave",
    ];

    public static string TooWide(Onset onset, double need, double limit, bool canRoll)
    {
        var held = onset.Keys.Length > onset.Struck.Length;
        var advice =
            held ? "let go of what is held, or take fewer keys"
            : canRoll && onset.Keys.Length == 2 && onset.High - onset.Low > 12 ? "roll it or take the octave"
            : canRoll ? "roll it or take fewer keys"
            : "bring the keys closer together";
        return Text($"{Hand(onset.Hand)} needs {need:0} mm for {Keys(onset.Keys)} and has {limit:0}; {advice}");
    }

    public static string TooManyKeys(Onset onset, int fingers) =>
        Text(
            $"{Hand(onset.Hand)} has {onset.Keys.Length} keys to hold, {Keys(onset.Keys)}, and {Number(fingers)} fingers; leave some out"
        );

    public static string Unwanted(Onset onset, bool octaves) =>
        Text(
            $"{Hand(onset.Hand)} strikes {Keys(onset.Struck)}, and no {(octaves ? "octaves" : "tenths")} are wanted; keep one of the outer keys"
        );

    public static string RolledTooWide(Onset onset, double need, double limit) =>
        Text(
            $"{Hand(onset.Hand)} rolls over {need:0} mm for {Keys(onset.Keys)}, and {limit:0} is the most; close it up"
        );

    public static string RolledTwice(Onset onset) =>
        Text($"{Hand(onset.Hand)} rolls two chords running, here {Keys(onset.Keys)}; close up one of them");

    public static string StrainedOften(Onset onset, double width, double share, double limit)
    {
        var allowed = limit > 0 ? Text($"{100 * limit:0.#} % may be") : "none is wanted";
        return Text(
            $"{Hand(onset.Hand)} is strained by {width:0} mm for {Keys(onset.Keys)}, as by {100 * share:0.#} % of its chords, where {allowed}; leave out an inner or outer key"
        );
    }

    public static string StrainedTwice(Onset onset, double width, double limit) =>
        Text(
            $"{Hand(onset.Hand)} is strained twice running, here by {width:0} mm for {Keys(onset.Keys)} where {limit:0} lie without strain; ease one of the two"
        );

    public static string LeapTooFast(Move move, double limit) =>
        Text($"{Leaps(move)}, and {limit:0.#} is the most for any leap; {LeapAdvice}");

    public static string LeapsOftenTooFast(Move move, int fast, int all) =>
        Text(
            $"{Leaps(move)}, one of {fast} in {all} over {move.Limit:0.#}, where one in {1 / Leap.ShareOverLimit:0} may be; {LeapAdvice}"
        );

    public static string Repeated(Onset onset, double rate, double limit, int strokes) =>
        Text(
            $"{Hand(onset.Hand)} strikes {Keys(onset.Struck)} {strokes} times running at {rate:0.0} a second, and {limit:0.#} is the most; play slower or change the key between"
        );

    public static string SharedKey(Sounding sounding) =>
        Text($"{KeyName(sounding.Key)} is wanted by both hands at once; leave it to one of them");

    public static string OffKeyboard(Sounding sounding) =>
        Text($"{KeyName(sounding.Key)} is not on a piano of 88 keys (A0 to C8); move it by an octave");

    public static string Crossing(Onset left, Onset right) =>
        Text($"the left hand crosses the right: {KeyName(left.High)} lies above {KeyName(right.Low)}");

    public static string FingerImpossible(Onset onset, IEnumerable<(int Key, int Finger)> written)
    {
        var fingers = string.Join(", ", written.Select(w => Text($"{w.Finger} on {KeyName(w.Key)}")));
        return Text($"{Hand(onset.Hand)} cannot take {Keys(onset.Struck)} with {fingers} as written; fingered anew");
    }

    public static string HeldLetGo(Onset onset, int[] held) =>
        Text(
            $"{Hand(onset.Hand)} cannot hold {Keys(held)} and take {Keys(onset.Struck)}; fingered as if held by the pedal"
        );

    public static string WithoutFinger(Onset onset, int[] keys) =>
        Text($"{Hand(onset.Hand)} has no finger for {Keys(keys)}; leave out, or give to the other hand");

    public static string NotInOneGrasp(Onset onset) =>
        Text($"{Hand(onset.Hand)} cannot take {Keys(onset.Struck)} in one grasp; roll or thin it");

    public static string NotALength(string text, string what, string examples) =>
        Text($"'{text}' is no {what}; write {examples}");

    public static string LengthOutOfRange(string text, double mm, string what, double least, double most)
    {
        var inches = mm * LengthText.MmPerInch;
        var meant = !LengthText.HasUnit(text) && inches >= least && inches <= most;
        var hint = meant ? Text($"; did you mean {text}in?") : "";
        return Text($"{what} must lie between {least:0} and {most:0} mm, and '{text}' is {mm:0.#} mm{hint}");
    }

    /// <summary>A key's name without its octave.</summary>
    public static string NoteName(int key) => KeyNames[((key % 12) + 12) % 12];

    public static string IntervalName(int semitones) =>
        semitones >= 0 && semitones < IntervalNames.Length ? IntervalNames[semitones] : Text($"{semitones} semitones");

    /// <summary>A key's name with its octave, C4 = 60.</summary>
    public static string KeyName(int key) => Text($"{NoteName(key)}{(int)Math.Floor(key / 12.0) - 1}");

    private const string LeapAdvice = "play slower or come closer";

    private static string Leaps(Move move) =>
        Text(
            $"{Hand(move.To.Hand)} moves {move.Mm:0} mm from {Keys(move.From.Struck)} to {Keys(move.To.Struck)} in {1000 * move.Seconds:0} ms, {move.Rate:0.0} bits a second"
        );

    private static string Number(int fingers) =>
        fingers switch
        {
            2 => "two",
            3 => "three",
            4 => "four",
            _ => "five",
        };

    private static string Hand(Hand hand) => hand == Music.Hand.Left ? "the left hand" : "the right hand";

    public static string Keys(int[] keys) =>
        keys.Length == 1
            ? KeyName(keys[0])
            : string.Join(", ", keys[..^1].Select(KeyName)) + " and " + KeyName(keys[^1]);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
