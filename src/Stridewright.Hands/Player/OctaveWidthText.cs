namespace Stridewright.Hands;

/// <summary>The width of an octave as a player types it, such as <c>165.1</c> or <c>6.5in</c>.</summary>
public static class OctaveWidthText
{
    /// <summary>Widths taken, in millimetres: from below the children's size of 5.1 in up to above old wide keyboards.</summary>
    public const double LeastMm = 120,
        MostMm = 180;

    /// <summary>Reads a width; when it cannot, <paramref name="problem"/> says why in a sentence.</summary>
    /// <param name="mm">Millimetres, <see cref="LeastMm"/> to <see cref="MostMm"/>, when true is returned.</param>
    public static bool TryRead(string? text, out double mm, out string problem) =>
        LengthText.TryRead(text, "octave width", "165.1, 16.51cm or 6.5in", (LeastMm, MostMm), out mm, out problem);
}
