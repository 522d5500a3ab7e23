using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>Effort, what would ease it, and what health asks for, in words.</summary>
public static class EffortMessages
{
    /// <summary>Who is cited for the cautions: read there, said here in our words.</summary>
    public const string HealthSource =
        "after the British Association for Performing Arts Medicine, Ten top health tips";

    private const int MostBars = 8,
        MostReasons = 3;

    private static readonly (double Below, string Words)[] Scale =
    [
        (12, "lies by itself"),
        (22, "easy going"),
        (32, "asks for some practice"),
        (42, "asks for steady practice"),
        (52, "hard work"),
        (65, "very hard"),
        (double.MaxValue, "at the edge of what can be played"),
    ];

    internal static readonly string[] GeneralCautions =
    [
        "Pain means stop: rest, stretch gently, and see a clinician if it comes back.",
        "Warm up; put the hardest bars in the middle of the session, not where you are most tired; rest five minutes in every half-hour; add at most ten minutes of practice a day.",
    ];

    /// <summary>An effort from 1 to 100 in words.</summary>
    public static string WordsOf(double effort) => Scale.First(s => effort < s.Below).Words;

    /// <summary>A part of effort in words.</summary>
    public static string WordsOf(EffortKind kind) =>
        kind switch
        {
            EffortKind.Reach => "a wide hand",
            EffortKind.Strain => "strained stretches",
            EffortKind.Leap => "fast leaps",
            EffortKind.Density => "many notes",
            EffortKind.Repetition => "repeated keys",
            EffortKind.Independence => "rhythm against the beat",
            EffortKind.Reading => "much to read",
            _ => throw new ArgumentOutOfRangeException(nameof(kind)),
        };

    /// <summary>What makes a bar harder than the piece: the parts of its harder hand that stand out most.</summary>
    internal static string Why(BarEffort bar, Effort effort)
    {
        var isRight = bar.Right >= bar.Left;
        var (parts, whole) = isRight ? (bar.RightParts, effort.Right.Parts) : (bar.LeftParts, effort.Left.Parts);
        var words = parts
            .Select((part, i) => (part.Kind, part.Points, Over: part.Points - (i < whole.Count ? whole[i].Points : 0)))
            .OrderByDescending(p => p.Over)
            .ThenByDescending(p => p.Points)
            .Where((p, i) => i == 0 || p.Over > 0.5)
            .Take(MostReasons)
            .Select(p => WordsOf(p.Kind));
        return $"{Hand(isRight ? Music.Hand.Right : Music.Hand.Left)}: {string.Join(", ", words)}";
    }

    internal static string Change(ChangeKind kind, Onset onset, string place, int? key)
    {
        var keys = HandsMessages.Keys(onset.Struck);
        var what = kind switch
        {
            ChangeKind.Roll => $"roll {keys}",
            ChangeKind.Rest => $"leave out {keys}",
            _ => $"leave {HandsMessages.KeyName(key!.Value)} out of {keys}",
        };
        return $"{place}, {Hand(onset.Hand)}: {what}";
    }

    internal static string Slower(string place, double speed) =>
        Text($"{place}: play the piece at {100 * speed:0} % of its tempo");

    internal static string Caution(EffortKind kind, Hand hand, List<string> bars)
    {
        var where = Text(
            $"bar{(bars.Count > 1 ? "s" : "")} {string.Join(", ", bars.Take(MostBars))}{(bars.Count > MostBars ? Text($" and {bars.Count - MostBars} more") : "")}"
        );
        return kind switch
        {
            EffortKind.Strain =>
                $"The {Name(hand)} hand is strained in {where}: take these bars a few minutes at a time, and roll or thin a chord rather than force it.",
            EffortKind.Leap =>
                $"The {Name(hand)} hand leaps fast in {where}: begin slower, and raise the tempo by degrees.",
            EffortKind.Density =>
                $"The {Name(hand)} hand has fast passages in {where}: begin slower, and raise the tempo by degrees.",
            _ =>
                $"The {Name(hand)} hand strikes the same keys fast in {where}: a few tries at a time; leave a passage that will not come, and return to it rested.",
        };
    }

    private static string Hand(Hand hand) => Name(hand) + " hand";

    private static string Name(Hand hand) => hand == Music.Hand.Left ? "left" : "right";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
