using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Ways;

public sealed class SeveralSettingsTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    // All samples at level 1, where a setting has the least to vary; above it every third, each level others.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(6)]
    public void Three_settings_differ_in_motif_and_bass_plan(int level)
    {
        foreach (var tune in Tunes.Samples.Where((_, i) => level == 1 || i % 3 == level % 3))
        {
            var brief = new Brief { LeftLevel = level, RightLevel = level };
            var settings = SeveralSettings.Of(tune, brief, 3, Cancel).Select(r => r.Arrangement!).ToList();
            Assert.Equal(3, settings.Count);
            Assert.Equal(Arranger.Arrange(tune, brief, Cancel).Arrangement!.Score, settings[0].Score);
            foreach (var (a, b) in new[] { (0, 1), (0, 2), (1, 2) })
            {
                var (motif, bass) = Difference(settings[a].Score, settings[b].Score);
                Assert.True(
                    motif >= SeveralSettings.Wanted && bass >= SeveralSettings.Wanted,
                    $"{tune.Title}, settings {a + 1} and {b + 1}: {motif:0.00} {bass:0.00}"
                );
            }
            Assert.All(settings, s => Assert.Equal(s.Tune.Notes, s.Tune.Kept));
        }
    }

    // Anew from the scores: when the right hand strikes; the lowest key of the left where it lies under the tenor.
    private static (double Motif, double Bass) Difference(Score a, Score b)
    {
        var (first, second) = (Timeline.Of(a), Timeline.Of(b));
        var bars = Enumerable.Range(0, a.Bars.Count).ToList();
        return (
            (double)bars.Count(bar => !Onsets(first, bar).SequenceEqual(Onsets(second, bar))) / bars.Count,
            (double)bars.Count(bar => !Basses(first, bar).SequenceEqual(Basses(second, bar))) / bars.Count
        );
    }

    private static IEnumerable<ScoreTime> Onsets(IEnumerable<Sounding> soundings, int bar) =>
        soundings.Where(s => s.Bar == bar && s.Hand == Hand.Right).Select(s => s.At).Distinct().Order();

    private static IEnumerable<(ScoreTime At, int Key)> Basses(IEnumerable<Sounding> soundings, int bar) =>
        soundings
            .Where(s => s.Bar == bar && s.Hand == Hand.Left)
            .GroupBy(s => s.At)
            .Where(g => g.Count() < 3)
            .Select(g => (g.Key, g.Min(s => s.Key)))
            .OrderBy(g => g.Key);
}
