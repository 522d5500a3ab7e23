using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Practice.Listening.Reporting;

/// <summary>What is said of a take.</summary>
internal static class ListeningMessages
{
    private static readonly string[] Names = ["C", "C#", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B"];

    public static string Leap(string where, Hand hand, int asked, int steps) =>
        Text(
            $"{where}, {HandOf(hand)}: the leap to {NameOf(asked)} lands {Distance(steps)} {(steps < 0 ? "too low" : "too high")}; land on it without sounding it, from both sides, and only then play it"
        );

    public static string Wrong(string where, Hand? hand, IReadOnlyList<(int Asked, int Struck)> notes) =>
        Text(
            $"{where}{Of(hand)}: {Count(notes.Count, "wrong note", "wrong notes")} ({string.Join(", ", notes.Take(3).Select(n => $"{NameOf(n.Struck)} for {NameOf(n.Asked)}"))}{(notes.Count > 3 ? " and others" : "")}); play it slowly, naming what comes next"
        );

    public static string WrongOctave(string where, Hand? hand, int count) =>
        Text($"{where}{Of(hand)}: {Count(count, "note lies", "notes lie")} an octave away from where it is written");

    public static string Missing(string where, Hand? hand, int count) =>
        Text($"{where}{Of(hand)}: {Count(count, "note does", "notes do")} not sound; hear it through once slowly");

    public static string Extra(string where, int count) =>
        Text($"{where}: {Count(count, "key is", "keys are")} struck that {(count == 1 ? "is" : "are")} not written");

    public static string Uneven(string where, double share) =>
        Text(
            $"{where}, left hand: its strokes vary by {Percent(share)} ({Percent(Thresholds.Unevenness.Value)} passes unnoticed); play it alone, counting aloud"
        );

    public static string Drift(double drift, double first, double last) =>
        Text(
            $"the tempo {(drift > 0 ? "runs ahead" : "drags")}: quarter = {first:0} at first, {last:0} towards the end ({Percent(Math.Abs(drift))}); let the left hand alone keep the first tempo throughout"
        );

    public static string Flattened(string where, int count, int of) =>
        Text(
            $"{where}, right hand: {count} of {Count(of, "anticipation falls", "anticipations fall")} onto the beat; tap it against the left hand, then play it"
        );

    public static string TooEarly(string where, int count, int of) =>
        Text($"{where}, right hand: {count} of {Count(of, "anticipation comes", "anticipations come")} too early");

    public static string Swing(double played, double asked) =>
        Text($"the eighths swing {played:0.0#} to 1 where {asked:0.0#} to 1 is asked for");

    public static string Spread(string where, Hand hand, int count, double seconds) =>
        Text(
            $"{where}, {HandOf(hand)}: {Count(count, "chord is", "chords are")} not together, by up to {1000 * seconds:0} ms; set the fingers on the keys before they go down"
        );

    public static string Hesitation(string where, double beats, string before) =>
        Text($"{where}: {Beats(beats)} lost{before}; practise over this join, from the beat before it");

    public static string BeforeLeap(Hand hand, int key) => $" before the {HandOf(hand)}'s leap to {NameOf(key)}";

    public static string Balance(double chords, double tune) =>
        Text($"the off-beat chords (velocity {chords:0}) cover the tune ({tune:0}); play them from the key, lighter");

    public static string Blurred(IReadOnlyCollection<string> bars) =>
        Text(
            $"{(bars.Count == 1 ? "bar" : "bars")} {string.Join(", ", bars.Take(6))}{(bars.Count > 6 ? " and others" : "")}: the pedal is held over into a new bass; let it up as the bass goes down"
        );

    public static string PedalAsked(int asked, int answered) =>
        Text($"the score asks for pedal at {Count(asked, "place", "places")}; it is down at {answered} of them");

    public const string OntoTheBeat = "falls onto the beat";
    public const string ComesTooEarly = "comes too early";

    public static string NotPlayed(int key) => $"{NameOf(key)} does not sound";

    public static string ForNote(int struck, int asked) => $"{NameOf(struck)} for {NameOf(asked)}";

    public static string ExtraKeys(int count) => Count(count, "key is not written", "keys are not written");

    public static string Lost(double beats) => Beats(beats) + " lost before it";

    public static string NotTogether(double seconds) => Text($"not together, by {1000 * seconds:0} ms");

    public static string Bar(string first, string last) => first == last ? "bar " + first : $"bars {first} to {last}";

    private static string Of(Hand? hand) => hand is { } one ? ", " + HandOf(one) : "";

    private static string HandOf(Hand hand) => hand == Hand.Right ? "right hand" : "left hand";

    private static string NameOf(int key) => Text($"{Names[key % 12]}{key / 12 - 1}");

    private static string Distance(int steps) =>
        Math.Abs(steps) switch
        {
            1 => "a semitone",
            2 => "a whole tone",
            12 => "an octave",
            24 => "two octaves",
            var n => Text($"{n} semitones"),
        };

    private static string Beats(double beats) =>
        beats < 0.75 ? Text($"{beats:0.0} of a beat is") : Text($"{beats:0.0} beats are");

    private static string Count(int count, string one, string more) => Text($"{count} {(count == 1 ? one : more)}");

    private static string Percent(double share) => Text($"{100 * share:0} %");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
