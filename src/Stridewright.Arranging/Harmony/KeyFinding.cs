namespace Stridewright.Arranging;

/// <summary>
/// Key finding by correlation of the length-weighted histogram of pitch classes with the key profiles of Krumhansl and
/// Kessler (Krumhansl–Schmuckler method).
/// </summary>
internal static class KeyFinding
{
    // Correlations nearer than this are equal but for rounding.
    private const double Tie = 1e-9;
    private static readonly double[] Major = [6.35, 2.23, 3.48, 2.33, 4.38, 4.09, 2.52, 5.19, 2.39, 3.66, 2.29, 2.88];
    private static readonly double[] Minor = [6.33, 2.68, 3.52, 5.38, 2.60, 3.53, 2.54, 4.75, 3.98, 2.69, 3.34, 3.17];

    /// <summary>The best key and its correlation; null where there is none: an empty or flat histogram has no key, nor
    /// has one that several keys fit equally well, such as a diminished seventh.</summary>
    /// <param name="histogram">Weights of the twelve pitch classes, C first.</param>
    public static (int Tonic, bool IsMinor, double Correlation)? Find(ReadOnlySpan<double> histogram)
    {
        var keys = Correlations(histogram);
        if (keys.Any(k => double.IsNaN(k.Correlation)))
        {
            return null;
        }
        var best = keys.MaxBy(k => k.Correlation);
        return keys.Count(k => best.Correlation - k.Correlation <= Tie) == 1 ? best : null;
    }

    /// <summary>Correlation with each of the 24 keys, C major and C minor first; not a number when the histogram does not
    /// vary.</summary>
    public static (int Tonic, bool IsMinor, double Correlation)[] Correlations(ReadOnlySpan<double> histogram)
    {
        var keys = new (int, bool, double)[24];
        for (var i = 0; i < keys.Length; i++)
        {
            var (tonic, minor) = (i / 2, i % 2 == 1);
            keys[i] = (tonic, minor, Correlation(histogram, minor ? Minor : Major, tonic));
        }
        return keys;
    }

    private static double Correlation(ReadOnlySpan<double> histogram, double[] profile, int tonic)
    {
        double meanX = 0,
            meanY = 0;
        for (var i = 0; i < 12; i++)
        {
            meanX += histogram[i] / 12;
            meanY += profile[i] / 12;
        }
        double xy = 0,
            xx = 0,
            yy = 0,
            size = 0;
        for (var i = 0; i < 12; i++)
        {
            var x = histogram[i] - meanX;
            var y = profile[(i - tonic + 12) % 12] - meanY;
            xy += x * y;
            xx += x * x;
            yy += y * y;
            size += histogram[i] * histogram[i];
        }
        return xx <= 1e-12 * size ? double.NaN : xy / Math.Sqrt(xx * yy);
    }
}
