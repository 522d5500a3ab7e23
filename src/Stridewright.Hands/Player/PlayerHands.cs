using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>
/// A player's hands, keyboard and wishes. What is said of the hands holds for both alike; <see cref="Right"/> and
/// <see cref="Left"/> say where one of them differs.
/// </summary>
public sealed record PlayerHands
{
    /// <summary>Thumb to little finger, flat hand, in millimetres.</summary>
    public double SpanMm { get; init; } = 205;

    /// <summary>Second finger to fifth, flat hand, in millimetres; null: derived from the span.</summary>
    public double? IndexSpanMm { get; init; }

    /// <summary>Leaps that the player lands, in bits per second (<see cref="Leap"/>); null: the usual limit.</summary>
    public double? LeapBitsPerSecond { get; init; }

    /// <summary>Strokes per second of one key that the player keeps up; null: the usual limit.</summary>
    public double? StrokesPerSecond { get; init; }

    /// <summary>What the right hand has of its own.</summary>
    public OneHand Right { get; init; } = OneHand.LikeTheOther;

    /// <summary>What the left hand has of its own.</summary>
    public OneHand Left { get; init; } = OneHand.LikeTheOther;

    /// <summary>The hand that is slower than the other; null: neither.</summary>
    public Hand? Weaker { get; init; }

    /// <summary>Width of an octave on the player's keyboard, in millimetres.</summary>
    public double OctaveMm { get; init; } = 165.1;

    /// <summary>The player wants nothing of an octave or more struck by one hand.</summary>
    public bool NoOctaves { get; init; }

    /// <summary>The player wants nothing of a tenth or more struck by one hand, rolled or not.</summary>
    public bool NoTenths { get; init; }

    /// <summary>The player wants no strained stretch at all.</summary>
    public bool NoStrain { get; init; }

    /// <summary>One hand with everything filled in.</summary>
    public HandMeasures Of(Hand hand)
    {
        var own = hand == Hand.Right ? Right : Left;
        var speed = Weaker == hand ? HandMeasures.WeakerSpeed : 1;
        var span = own.SpanMm ?? SpanMm;
        // A span of the hand's own goes before an inner span of both.
        var index = own.IndexSpanMm ?? (own.SpanMm is null ? IndexSpanMm : null);
        return new()
        {
            Hand = hand,
            SpanMm = span,
            IndexSpanMm = index ?? span * HandMeasures.IndexShare,
            LeapBitsPerSecond = own.LeapBitsPerSecond ?? speed * (LeapBitsPerSecond ?? Leap.LimitBitsPerSecond),
            StrokesPerSecond = own.StrokesPerSecond ?? speed * (StrokesPerSecond ?? LeapRules.KeyStrokesPerSecond),
            Without = own.Without,
        };
    }

    /// <summary>True unless so many keys, struck by one hand, are further apart than the player wishes.</summary>
    /// <param name="semitones">From the lowest to the highest key.</param>
    public bool Wants(int semitones) =>
        semitones
        < (
            NoOctaves ? 12
            : NoTenths ? 15
            : int.MaxValue
        );

    /// <summary>The same hands with one span for both, and nothing else said of how wide they are.</summary>
    public PlayerHands WithSpan(double mm) =>
        this with
        {
            SpanMm = mm,
            IndexSpanMm = null,
            Right = Right with { SpanMm = null, IndexSpanMm = null },
            Left = Left with { SpanMm = null, IndexSpanMm = null },
        };
}

/// <summary>What one hand has of its own; null: as both.</summary>
public sealed record OneHand
{
    public static readonly OneHand LikeTheOther = new();

    /// <summary>Thumb to little finger, in millimetres.</summary>
    public double? SpanMm { get; init; }

    /// <summary>Second finger to fifth, in millimetres.</summary>
    public double? IndexSpanMm { get; init; }

    /// <summary>Leaps that it lands, in bits per second.</summary>
    public double? LeapBitsPerSecond { get; init; }

    /// <summary>Strokes per second of one key.</summary>
    public double? StrokesPerSecond { get; init; }

    /// <summary>Fingers, 1 (thumb) to 5, that cannot be used; rising, each once, at least two are left.</summary>
    public ValueList<int> Without { get; init; } = [];
}
