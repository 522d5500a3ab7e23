using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>One hand as it is measured; nothing is left open. Made by <see cref="PlayerHands.Of"/>.</summary>
public sealed record HandMeasures
{
    /// <summary>Fingers of a whole hand.</summary>
    public const int AllFingers = 5;

    /// <summary>
    /// Second finger to fifth as a share of thumb to fifth: 6.0 in to 8.5 in. Virtually all surveyed pianists below the
    /// one were below the other (the keyboard-size research community's notes on Boyle, Boyle and Booker 2015), so few
    /// hands that reach the one fall short of the other.
    /// </summary>
    public const double IndexShare = 6.0 / 8.5;

    /// <summary>Speed of the weaker hand as a share of the other's: fingers of the hand that is not preferred tap about
    /// a tenth slower (from memory).</summary>
    public const double WeakerSpeed = 0.9;

    // Largest practical stretches in semitones between two fingers (Parncutt et al. 1997, table of spans).
    private static readonly int[,] Practical =
    {
        { 0, 10, 12, 14, 15 },
        { 10, 0, 5, 7, 10 },
        { 12, 5, 0, 4, 7 },
        { 14, 7, 4, 0, 5 },
        { 15, 10, 7, 5, 0 },
    };

    public required Hand Hand { get; init; }

    /// <summary>Thumb to little finger, in millimetres, whether these can be used or not.</summary>
    public required double SpanMm { get; init; }

    /// <summary>Second finger to fifth, in millimetres.</summary>
    public required double IndexSpanMm { get; init; }

    public required double LeapBitsPerSecond { get; init; }

    /// <summary>Strokes per second of one key by one finger.</summary>
    public required double StrokesPerSecond { get; init; }

    /// <summary>Strokes per second of an octave from the wrist.</summary>
    public double OctaveStrokesPerSecond =>
        StrokesPerSecond * LeapRules.OctaveStrokesPerSecond / LeapRules.KeyStrokesPerSecond;

    /// <summary>Fingers that cannot be used, 1 to 5, rising.</summary>
    public required ValueList<int> Without { get; init; }

    /// <summary>Number of fingers that can be used.</summary>
    public int Fingers => AllFingers - Without.Count;

    /// <summary>
    /// The widest that two fingers stretch, in millimetres: measured for the first and fifth and the second and fifth;
    /// of these the same share as in the published table of spans for the others (Parncutt et al. 1997).
    /// </summary>
    /// <param name="lower">1 to 5.</param>
    /// <param name="higher">1 to 5.</param>
    public double SpanBetween(int lower, int higher) =>
        Math.Min(lower, higher) == 1
            ? SpanMm * Practical[lower - 1, higher - 1] / Practical[0, 4]
            : IndexSpanMm * Practical[lower - 1, higher - 1] / Practical[1, 4];

    /// <summary>The widest that the fingers stretch that can be used, in millimetres.</summary>
    public double UsableSpanMm =>
        Without.Count == 0
            ? SpanMm
            : SpanBetween(
                Enumerable.Range(1, AllFingers).First(f => !Without.Contains(f)),
                Enumerable.Range(1, AllFingers).Last(f => !Without.Contains(f))
            );

    /// <summary>Bits per second that this hand may ask for in a metre.</summary>
    public double LeapLimit(Metre metre) => LeapBitsPerSecond * Leap.Factor(metre);
}
