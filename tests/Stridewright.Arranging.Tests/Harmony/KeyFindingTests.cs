namespace Stridewright.Arranging.Tests.Harmony;

/// <summary>
/// Values computed from the published Krumhansl–Kessler profiles (Pearson correlation, count-weighted histograms).
/// </summary>
public sealed class KeyFindingTests
{
    [Theory]
    [InlineData("0 2 4 5 7 9 11", 0, false, 0.7564)] // C major scale
    [InlineData("9 11 0 2 4 5 8", 9, true, 0.6872)] // A harmonic minor
    [InlineData("0 4 7", 0, false, 0.8338)] // C E G
    [InlineData("9 11 0 2 4 5 7 9 4", 9, true, 0.8526)] // A natural minor, A and E doubled
    [InlineData("5 7 9 10 0 2 4", 5, false, 0.7564)] // F major scale
    public void Best_key_and_its_correlation(string pitchClasses, int tonic, bool isMinor, double correlation)
    {
        var found = KeyFinding.Find(Histogram(pitchClasses))!.Value;
        Assert.Equal((tonic, isMinor), (found.Tonic, found.IsMinor));
        Assert.Equal(correlation, found.Correlation, 4);
    }

    [Fact]
    public void A_flat_histogram_has_no_key() => Assert.Null(KeyFinding.Find(Histogram("0 1 2 3 4 5 6 7 8 9 10 11")));

    private static double[] Histogram(string pitchClasses)
    {
        var histogram = new double[12];
        foreach (var word in pitchClasses.Split(' '))
        {
            histogram[int.Parse(word, System.Globalization.CultureInfo.InvariantCulture)]++;
        }
        return histogram;
    }
}
