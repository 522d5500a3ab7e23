using System.Globalization;

namespace Stridewright.Hands;

/// <summary>
/// Spans of adult pianists by percentile: a normal model fitted to the means and shares published by Boyle, Boyle and
/// Booker 2015 (473 pianists) and in the keyboard-size research community's notes on them. The spread is derived and not
/// published; the outer twentieths are rough. Written as <c>women 50</c> or <c>men 75</c>.
/// </summary>
public static class UsualSpans
{
    /// <summary>Percentiles taken: the model says nothing of hands further out.</summary>
    public const int LowestPercentile = 1,
        HighestPercentile = 99;

    private const double WomenMeanInches = 7.9,
        WomenSpreadInches = 0.533,
        MenMeanInches = 8.9,
        MenSpreadInches = 0.566;

    public static double WomenMm(double percentile) => Mm(WomenMeanInches, WomenSpreadInches, percentile);

    public static double MenMm(double percentile) => Mm(MenMeanInches, MenSpreadInches, percentile);

    /// <summary>Reads a span such as <c>women 50</c>; when it cannot, <paramref name="problem"/> says why.</summary>
    /// <param name="mm">Whole millimetres, when true is returned.</param>
    public static bool TryRead(string? text, out double mm, out string problem)
    {
        var words = (text ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        mm = 0;
        problem = PlayerMessages.NotUsual(text ?? "", LowestPercentile, HighestPercentile);
        if (
            words.Length != 2
            || !int.TryParse(words[1], NumberStyles.None, CultureInfo.InvariantCulture, out var percentile)
            || percentile is < LowestPercentile or > HighestPercentile
        )
        {
            return false;
        }
        var span = words[0].ToLowerInvariant() switch
        {
            "women" => WomenMm(percentile),
            "men" => MenMm(percentile),
            _ => 0,
        };
        mm = Math.Round(span);
        problem = span > 0 ? "" : problem;
        return span > 0;
    }

    private static double Mm(double mean, double spread, double percentile)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(percentile, LowestPercentile);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(percentile, HighestPercentile);
        return (mean + spread * Deviations(percentile / 100)) * LengthText.MmPerInch;
    }

    /// <summary>Standard deviations below which a share of a normal distribution lies, to 0.0005 (Abramowitz and Stegun
    /// 1964, 26.2.23).</summary>
    private static double Deviations(double share)
    {
        var t = Math.Sqrt(-2 * Math.Log(Math.Min(share, 1 - share)));
        var z = t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
        return share < 0.5 ? -z : z;
    }
}
