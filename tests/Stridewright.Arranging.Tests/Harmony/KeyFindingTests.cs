using CsCheck;

namespace Stridewright.Arranging.Tests.Harmony;

/// <summary>
/// Values computed from the published Krumhansl–Kessler profiles (Pearson correlation, count-weighted histograms).
/// </summary>
public sealed class KeyFindingTests
{
    [Theory]
    [InlineData("0 2 4 5 7 9 11", 0, false, 0.7564, 9, true, 0.7121)] // C major scale; then A minor
    [InlineData("9 11 0 2 4 5 8", 9, true, 0.6872, 5, false, 0.3924)] // A harmonic minor; then F major
    [InlineData("0 4 7", 0, false, 0.8338, 4, true, 0.7602)] // C E G; then E minor
    [InlineData("9 11 0 2 4 5 7 9 4", 9, true, 0.8526, 4, true, 0.6466)] // A natural minor, A and E doubled; then E minor
    [InlineData("5 7 9 10 0 2 4", 5, false, 0.7564, 2, true, 0.7121)] // F major scale; then D minor
    [InlineData("1 3 5 6 8 10 0 1", 1, false, 0.9014, 10, true, 0.7563)] // C sharp major up to its octave
    public void Best_key_and_the_next_with_their_correlations(
        string pitchClasses,
        int tonic,
        bool isMinor,
        double correlation,
        int next,
        bool nextIsMinor,
        double nextCorrelation
    )
    {
        var ranking = KeyFinding.Correlations(Histogram(pitchClasses)).OrderByDescending(k => k.Correlation).ToList();
        Assert.Equal(ranking[0], KeyFinding.Find(Histogram(pitchClasses)));
        Assert.Equal((tonic, isMinor), (ranking[0].Tonic, ranking[0].IsMinor));
        Assert.Equal(correlation, ranking[0].Correlation, 4);
        Assert.Equal((next, nextIsMinor), (ranking[1].Tonic, ranking[1].IsMinor));
        Assert.Equal(nextCorrelation, ranking[1].Correlation, 4);
    }

    /// <summary>Zero variance leaves the correlation undefined; what divides the octave evenly fits several keys.</summary>
    [Theory]
    [InlineData("")]
    [InlineData("0 1 2 3 4 5 6 7 8 9 10 11")]
    [InlineData("0 3 6 9")]
    [InlineData("1 4 7 10")]
    [InlineData("0 4 8")]
    [InlineData("3 7 11")]
    [InlineData("0 2 4 6 8 10")]
    [InlineData("0 6")]
    public void Where_no_key_fits_best_none_is_guessed(string pitchClasses) =>
        Assert.Null(KeyFinding.Find(Histogram(pitchClasses)));

    [Fact]
    public void Weights_that_are_no_numbers_have_no_key()
    {
        Assert.Null(KeyFinding.Find([double.NaN, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]));
        Assert.Null(KeyFinding.Find([double.PositiveInfinity, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]));
    }

    [Fact]
    public void The_key_moves_with_the_notes_and_does_not_depend_on_the_unit_of_their_lengths() =>
        Gen.Select(Gen.Int[0, 40].Array[12], Gen.Int[0, 11], Gen.Int[-9, 9])
            .Sample(
                (weights, by, exponent) =>
                {
                    var moved = Enumerable
                        .Range(0, 12)
                        .Select(i => weights[(i - by + 12) % 12] * Math.Pow(10, exponent))
                        .ToArray();
                    var (before, after) = (
                        KeyFinding.Find([.. weights.Select(w => (double)w)]),
                        KeyFinding.Find(moved)
                    );
                    Assert.Equal(
                        before is { } b ? ((b.Tonic + by) % 12, b.IsMinor) : null,
                        after is { } a ? (a.Tonic, a.IsMinor) : ((int, bool)?)null
                    );
                },
                iter: 5000
            );

    private static double[] Histogram(string pitchClasses)
    {
        var histogram = new double[12];
        foreach (var word in pitchClasses.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            histogram[int.Parse(word, System.Globalization.CultureInfo.InvariantCulture)]++;
        }
        return histogram;
    }
}
