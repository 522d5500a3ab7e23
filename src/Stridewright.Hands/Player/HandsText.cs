using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>
/// One thing that can be said of a pair of hands: a word and its value, as a person writes them in a file or on the
/// command line.
/// </summary>
/// <param name="Word">Small letters and hyphens.</param>
/// <param name="Expected">What its value is, in a few words; empty for a word that stands alone.</param>
/// <param name="Value">What is written behind the word; null: nothing is said.</param>
/// <param name="Read">The hands with a value read; null, with a sentence, when it cannot be.</param>
public sealed record HandsWord(
    string Word,
    string Expected,
    Func<PlayerHands, string?> Value,
    Func<PlayerHands, string, (PlayerHands? Hands, string Problem)> Read
)
{
    public bool StandsAlone => Expected.Length == 0;
}

/// <summary>All that can be said of a pair of hands, in words.</summary>
public static class HandsText
{
    // Inner spans in millimetres; bits a second from slower than any pointing to faster than any leap known; strokes a
    // second.
    private static readonly (double Least, double Most) IndexSpans = (80, 240),
        LeapRates = (3, 40),
        StrokeRates = (1, 15);

    private static readonly (string Word, Hand Hand)[] Hands = [("left", Hand.Left), ("right", Hand.Right)];

    /// <summary>In the order in which they are written and are to be read: the keyboard before the span, which may be an
    /// interval on it, and both hands before one. A word for both takes back what was said of one.</summary>
    public static IReadOnlyList<HandsWord> Words { get; } =
    [
        new("octave-width", "millimetres", h => Written(h.OctaveMm), WithOctaveWidth),
        .. Measured(
            "span",
            "millimetres",
            (h, text) => (SpanText.TryRead(text, h.OctaveMm, out var mm, out var problem), mm, problem),
            h => h.SpanMm,
            (h, mm) => h.WithSpan(mm),
            one => one.SpanMm,
            (one, mm) => one with { SpanMm = mm, IndexSpanMm = null }
        ),
        .. Measured(
            "index-span",
            "millimetres",
            (_, text) => IndexSpan(text),
            h => h.IndexSpanMm,
            (h, mm) => h with { IndexSpanMm = mm },
            one => one.IndexSpanMm,
            (one, mm) => one with { IndexSpanMm = mm }
        ),
        .. Measured(
            "leaps",
            FormattableString.Invariant($"{LeapRates.Least} to {LeapRates.Most} bits a second"),
            (_, text) => Rate(text, LeapRates),
            h => h.LeapBitsPerSecond,
            (h, rate) => h with { LeapBitsPerSecond = rate },
            one => one.LeapBitsPerSecond,
            (one, rate) => one with { LeapBitsPerSecond = rate }
        ),
        .. Measured(
            "strokes",
            FormattableString.Invariant($"{StrokeRates.Least} to {StrokeRates.Most} strokes a second"),
            (_, text) => Rate(text, StrokeRates),
            h => h.StrokesPerSecond,
            (h, rate) => h with { StrokesPerSecond = rate },
            one => one.StrokesPerSecond,
            (one, rate) => one with { StrokesPerSecond = rate }
        ),
        .. Hands.Select(hand => Fingers(hand.Word, hand.Hand)),
        Plain("weaker", "left or right", h => h.Weaker is { } hand ? WordOf(hand) : null, WithWeaker),
        Alone("no-octaves", h => h.NoOctaves, h => h with { NoOctaves = true }),
        Alone("no-tenths", h => h.NoTenths, h => h with { NoTenths = true }),
        Alone("no-strain", h => h.NoStrain, h => h with { NoStrain = true }),
    ];

    /// <summary>Own to one of the hands, and set in it.</summary>
    internal static OneHand Own(this PlayerHands hands, Hand hand) => hand == Hand.Left ? hands.Left : hands.Right;

    internal static PlayerHands With(this PlayerHands hands, Hand hand, OneHand own) =>
        hand == Hand.Left ? hands with { Left = own } : hands with { Right = own };

    internal static string Written(double number) => number.ToString(CultureInfo.InvariantCulture);

    // A measure of both hands, of the left one and of the right one.
    private static IEnumerable<HandsWord> Measured(
        string word,
        string expected,
        Func<PlayerHands, string, (bool Read, double Value, string Problem)> read,
        Func<PlayerHands, double?> both,
        Func<PlayerHands, double, PlayerHands> withBoth,
        Func<OneHand, double?> own,
        Func<OneHand, double?, OneHand> withOwn
    )
    {
        yield return new(
            word,
            expected,
            h => both(h) is { } value ? Written(value) : null,
            (h, text) =>
                Reading(
                    h,
                    text,
                    value =>
                        Hands.Aggregate(
                            withBoth(h, value),
                            (set, one) => set.With(one.Hand, withOwn(set.Own(one.Hand), null))
                        )
                )
        );
        foreach (var (side, hand) in Hands)
        {
            yield return new(
                $"{side}-{word}",
                expected,
                h => own(h.Own(hand)) is { } value ? Written(value) : null,
                (h, text) => Reading(h, text, value => h.With(hand, withOwn(h.Own(hand), value)))
            );
        }
        (PlayerHands?, string) Reading(PlayerHands h, string text, Func<double, PlayerHands> with)
        {
            var (isRead, value, problem) = read(h, text);
            problem = problem.Length > 0 ? problem : PlayerMessages.BadValue(word, text, expected);
            return isRead ? (with(value), "") : (null, problem);
        }
    }

    private static (PlayerHands?, string) WithOctaveWidth(PlayerHands hands, string text) =>
        OctaveWidthText.TryRead(text, out var mm, out var problem)
            ? (hands with { OctaveMm = mm }, "")
            : (null, problem);

    private static (bool, double, string) IndexSpan(string text)
    {
        var read = LengthText.TryRead(
            text,
            "index-span",
            "145, 14.5cm or 5.7in",
            IndexSpans,
            out var mm,
            out var problem
        );
        return (read, mm, problem);
    }

    private static (bool, double, string) Rate(string text, (double Least, double Most) range)
    {
        var read = double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var rate);
        return (read && rate >= range.Least && rate <= range.Most, rate, "");
    }

    private static HandsWord Fingers(string side, Hand hand) =>
        Plain(
            side + "-without",
            "fingers such as 4 5, of which at least two are left",
            h => h.Own(hand).Without is { Count: > 0 } without ? string.Join(' ', without) : null,
            (h, text) =>
            {
                var words = text.Split((char[])[' ', ','], StringSplitOptions.RemoveEmptyEntries);
                var fingers = words
                    .Select(w => w is [>= '1' and <= '5'] ? w[0] - '0' : 0)
                    .Distinct()
                    .Order()
                    .ToValueList();
                return fingers.Count is > 0 and <= HandMeasures.AllFingers - 2 && fingers[0] > 0
                    ? h.With(hand, h.Own(hand) with { Without = fingers })
                    : null;
            }
        );

    private static PlayerHands? WithWeaker(PlayerHands hands, string text) =>
        Array.Find(Hands, h => h.Word.Equals(text, StringComparison.OrdinalIgnoreCase)) is { Word: not null } found
            ? hands with
            {
                Weaker = found.Hand,
            }
            : null;

    private static string WordOf(Hand hand) => hand == Hand.Left ? "left" : "right";

    private static HandsWord Alone(string word, Func<PlayerHands, bool> value, Func<PlayerHands, PlayerHands> with) =>
        Plain(word, "", h => value(h) ? "" : null, (h, text) => text.Length == 0 ? with(h) : null);

    private static HandsWord Plain(
        string word,
        string expected,
        Func<PlayerHands, string?> value,
        Func<PlayerHands, string, PlayerHands?> read
    ) =>
        new(
            word,
            expected,
            value,
            (h, text) =>
                read(h, text) is { } hands ? (hands, "") : (null, PlayerMessages.BadValue(word, text, expected))
        );
}
