using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>How a stretch lies under a hand.</summary>
public enum Stretch
{
    Comfortable,
    Possible,
    Strained,
    Out,
}

/// <summary>
/// What one hand can hold at once. A stretch is comfortable up to span − 50 mm, possible up to span − 27, strained up
/// to span − 4, and out beyond: derived from the published spans and zones (Boyle, Boyle and Booker 2015 and the
/// keyboard-size research community's notes).
/// </summary>
public sealed class Reach
{
    public const double ComfortableBelowSpanMm = 50,
        PossibleBelowSpanMm = 27,
        OutBelowSpanMm = 4;

    /// <summary>Widest rolled chord, in spans: common practice.</summary>
    public const double RolledSpans = 1.3;

    /// <summary>Share of a hand's stretches that may be strained (a working limit, common practice).</summary>
    public const double StrainedShareLimit = 0.05;

    private const double Tolerance = 1e-9;

    /// <summary>What either hand can hold: the narrower one's.</summary>
    public Reach(PlayerHands hands)
        : this(hands, Narrower(hands)) { }

    /// <summary>What one of the hands can hold.</summary>
    public Reach(PlayerHands hands, Hand hand)
    {
        ArgumentNullException.ThrowIfNull(hands);
        var own = hands.Of(hand);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(own.UsableSpanMm, nameof(hands));
        SpanMm = own.UsableSpanMm;
        Fingers = own.Fingers;
        Keyboard = new Keyboard(hands.OctaveMm);
    }

    /// <summary>Between the outermost fingers that can be used, in millimetres.</summary>
    public double SpanMm { get; }

    /// <summary>Keys that the hand can hold.</summary>
    public int Fingers { get; }

    public Keyboard Keyboard { get; }

    /// <summary>How the keys from the lowest to the highest lie when held together.</summary>
    public Stretch Of(int lowest, int highest) => OfMm(Keyboard.Distance(lowest, highest));

    public Stretch OfMm(double mm) =>
        mm <= SpanMm - ComfortableBelowSpanMm + Tolerance ? Stretch.Comfortable
        : mm <= SpanMm - PossibleBelowSpanMm + Tolerance ? Stretch.Possible
        : mm <= SpanMm - OutBelowSpanMm + Tolerance ? Stretch.Strained
        : Stretch.Out;

    /// <summary>Widest stretch that can be held, in millimetres.</summary>
    public double WidestMm => SpanMm - OutBelowSpanMm;

    /// <summary>True when the keys can be struck one after the other from one place of the arm.</summary>
    public bool CanRoll(int lowest, int highest) => Keyboard.Distance(lowest, highest) <= RolledSpans * SpanMm;

    private static Hand Narrower(PlayerHands hands)
    {
        ArgumentNullException.ThrowIfNull(hands);
        var isLeft = hands.Of(Hand.Left).UsableSpanMm < hands.Of(Hand.Right).UsableSpanMm;
        return isLeft ? Hand.Left : Hand.Right;
    }
}
