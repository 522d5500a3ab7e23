namespace Stridewright.Hands;

/// <summary>
/// Where the keys lie, in millimetres. Key centres of a 164 mm octave after a research re-implementation of
/// Jacobs 2001 (Music Perception 18(4)), scaled to the octave width given.
/// </summary>
public sealed class Keyboard
{
    /// <summary>Lowest and highest key of a piano of 88 keys, as MIDI numbers.</summary>
    public const int LowestKey = 21,
        HighestKey = 108;

    private const double ReferenceOctaveMm = 164.0;
    private const double ReferenceWhiteKeyMm = 23.5;
    private static readonly double[] CentreMm = [0, 9.5, 23.5, 37.5, 47, 70.5, 78.5, 94, 105.5, 117, 132.5, 140.5];
    private readonly double[] _x = new double[128];

    /// <param name="octaveMm">Width of an octave, 165.1 on a standard keyboard.</param>
    public Keyboard(double octaveMm)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(octaveMm);
        OctaveMm = octaveMm;
        WhiteKeyMm = ReferenceWhiteKeyMm * octaveMm / ReferenceOctaveMm;
        for (var key = 0; key < _x.Length; key++)
        {
            _x[key] = octaveMm * (key / 12) + CentreMm[key % 12] * octaveMm / ReferenceOctaveMm;
        }
    }

    public double OctaveMm { get; }

    public double WhiteKeyMm { get; }

    /// <summary>Centre of a key (MIDI number 0–127) from a fixed origin.</summary>
    public double X(int key) => _x[key];

    /// <summary>Distance of two keys' centres.</summary>
    public double Distance(int a, int b) => Math.Abs(_x[a] - _x[b]);

    public static bool IsBlack(int key) => (key % 12) is 1 or 3 or 6 or 8 or 10;
}
