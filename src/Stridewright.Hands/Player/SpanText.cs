namespace Stridewright.Hands;

/// <summary>
/// A hand's span as a player types it: a length such as <c>205</c>, <c>20.5cm</c> or <c>8.1in</c>, or the largest
/// interval that the hand just reaches: <c>octave</c>, <c>ninth</c>, <c>tenth</c>, <c>eleventh</c>.
/// </summary>
public static class SpanText
{
    /// <summary>Spans taken, in millimetres: a child's to one well beyond the widest published.</summary>
    public const double LeastMm = 120,
        MostMm = 300;

    private const string Examples = "205, 20.5cm, 8.1in, octave, ninth, tenth or eleventh";
    private static readonly string[] Words = ["octave", "ninth", "tenth", "eleventh"];
    private static readonly int[] WhiteKeys = [0, 2, 4, 5, 7, 9, 11];

    /// <summary>Reads a span; when it cannot, <paramref name="problem"/> says why in a sentence.</summary>
    /// <param name="octaveMm">Octave width of the keyboard on which the interval is reached.</param>
    /// <param name="mm">Millimetres, <see cref="LeastMm"/> to <see cref="MostMm"/>, when true is returned.</param>
    public static bool TryRead(string? text, double octaveMm, out double mm, out string problem)
    {
        var word = Array.FindIndex(Words, w => w.Equals(text?.Trim(), StringComparison.OrdinalIgnoreCase));
        if (word < 0)
        {
            return LengthText.TryRead(text, "span", Examples, (LeastMm, MostMm), out mm, out problem);
        }
        mm = Widest(7 + word, new Keyboard(octaveMm)) + Reach.OutBelowSpanMm;
        problem = mm is >= LeastMm and <= MostMm
            ? ""
            : HandsMessages.LengthOutOfRange(Words[word], mm, "span", LeastMm, MostMm);
        return problem.Length == 0;
    }

    /// <summary>Widest stretch between two white keys so many white keys apart.</summary>
    private static double Widest(int steps, Keyboard keyboard) =>
        Enumerable
            .Range(0, 7)
            .Max(i => keyboard.Distance(WhiteKeys[i], WhiteKeys[(i + steps) % 7] + 12 * ((i + steps) / 7)));
}
