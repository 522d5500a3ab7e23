using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Every sentence about other ways.</summary>
internal static class WayMessages
{
    public static string Single => "a single note";

    public static string InOctaves => "in octaves";

    public static string Added(ScoreTime at, string what) => $"{what} is struck {Place(at)}";

    public static string Gone(ScoreTime at, string what) => $"{what} {Place(at)} goes";

    public static string Instead(ScoreTime at, string what, string before) => $"{what} for {before} {Place(at)}";

    public static string Inversion(ScoreTime at, string keys, string before) =>
        $"the chord {Place(at)} lies {keys} for {before}: another inversion";

    public static string Lasts(ScoreTime at, string what, ScoreTime length, ScoreTime before) =>
        $"{what} {Place(at)} lasts {length} of a whole note for {before}";

    /// <param name="shift">From its plain place; below zero: early.</param>
    public static string Placed(Pitch note, ScoreTime shift, ScoreTime before) =>
        $"{note} of the tune comes {Shift(shift)}, for {Shift(before)}";

    public static string OfBarBefore(Pitch note, bool isHere) =>
        isHere ? $"{note} of the bar before is held back to this one" : $"{note} of the bar before stays there";

    public static string OfBarAfter(Pitch note, bool isHere) =>
        isHere ? $"{note} of the next bar is taken early" : $"{note} of the next bar stays there";

    public static string OfThisBar(Pitch note, bool isHere) =>
        isHere ? $"{note} of the tune comes back over the bar line" : $"{note} of the tune moves over the bar line";

    public static string Thickness(Pitch note, string now, string before) => $"{note} of the tune {now} for {before}";

    public static string Crushed(Pitch note, bool isNow) =>
        isNow ? $"{note} of the tune with a crushed note" : $"{note} of the tune without its crushed note";

    public static string Fills(IReadOnlyList<string> now, IReadOnlyList<string> before) =>
        (now.Count, before.Count) switch
        {
            (0, _) => $"without the fill {List(before)}",
            (_, 0) => $"filled with {List(now)}",
            _ => $"filled with {List(now)} for {List(before)}",
        };

    public static string At(string keys, ScoreTime at) => $"{keys} {Place(at)}";

    public static string Octave(Pitch low) => $"octave bass {low}";

    public static string Tenth(Pitch low) => $"tenth on {low}";

    public static string Rolled(string keys) => $"rolled {keys}";

    public static string RunOctave(Pitch low) => $"run in octaves {low}";

    public static string FullOctave(string keys) => $"a full octave {keys}";

    public static string Chord(string keys) => $"as {keys}";

    public static string Differs(double motif, double bass) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"differs from each other setting in the rhythm of at least {100 * motif:0} and the basses of {100 * bass:0} of 100 bars"
        );

    private static string Place(ScoreTime at) =>
        at.IsZero ? "at the start" : string.Create(CultureInfo.InvariantCulture, $"at {at}");

    private static string Shift(ScoreTime shift) =>
        shift.IsZero ? "on its place"
        : shift < ScoreTime.Zero ? string.Create(CultureInfo.InvariantCulture, $"{-shift} early")
        : string.Create(CultureInfo.InvariantCulture, $"{shift} late");

    private static string List(IReadOnlyList<string> items) => string.Join(", ", items);
}
