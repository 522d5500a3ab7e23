using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Easing;

/// <summary>A ceiling on effort in place of a level: kept, the tune whole, and what is said to be given up is gone. The order
/// of what goes first, tenths, inner notes, octaves: common practice.</summary>
public sealed class EffortCeilingTests
{
    private const int EachOf = 3;

    public static TheoryData<double> Ceilings => [24, 28, 32, 36, 100];

    private static IEnumerable<Tune> Some => Tunes.Samples.Where((t, i) => i % EachOf == 0 && t.Bars.Count <= 40);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [MemberData(nameof(Ceilings))]
    public void A_setting_stays_within_its_effort_and_keeps_the_tune(double ceiling)
    {
        foreach (var tune in Some)
        {
            var result = Arranger.Arrange(tune, new Brief { MostEffort = ceiling }, Cancel);
            if (result.Arrangement is not { } made)
            {
                // Only where the easiest level asks more.
                Assert.Contains("too little", result.Refusal!.Message, StringComparison.Ordinal);
                Assert.True(AtLevel(tune, 1).Verdict.Effort.Overall > ceiling);
                continue;
            }
            Assert.InRange(made.Verdict.Effort.Overall, 1, ceiling);
            Assert.True(made.Verdict.IsPlayable);
            Assert.Equal(made.Tune.Notes, made.Tune.Kept);
            var level = made.Brief.RightLevel;
            var next = Math.Min(level + (made.Conceded.Count > 0 ? 0 : 1), Brief.HighestLevel);
            var isHighest = next == level && made.Conceded.Count == 0;
            // No level beyond it would have done as it is.
            Assert.True(isHighest || AtLevel(tune, next).Verdict.Effort.Overall > ceiling, tune.Title);
        }
    }

    [Fact]
    public void What_is_given_up_was_there_and_is_gone()
    {
        var found = new HashSet<Ease>();
        foreach (var (tune, ceiling) in Some.SelectMany(t => new[] { 26, 29, 31, 34, 36 }.Select(c => (t, c))))
        {
            var made = Arranger.Arrange(tune, new Brief { MostEffort = ceiling }, Cancel).Arrangement;
            foreach (var (ease, bars) in made?.Conceded ?? [])
            {
                found.Add(ease);
                var full = AtLevel(tune, made!.Brief.RightLevel);
                Assert.All(
                    bars,
                    bar =>
                        Assert.True(Count(made, bar, ease) < Count(full, bar, ease), $"{tune.Title}, bar {bar}: {ease}")
                );
            }
        }
        // Inner notes and octaves go on these samples; tenths are few there.
        Assert.Superset(new HashSet<Ease> { Ease.InnerNotes, Ease.Octaves }, found);
    }

    [Fact]
    public void What_was_settled_under_a_ceiling_is_made_again_from_its_text()
    {
        var tune = Tunes.Samples[0];
        var made = Arranger.Arrange(tune, new Brief { MostEffort = 30 }, Cancel).Arrangement!;
        Assert.NotEmpty(made.Conceded);
        var lines = SettledText.Write(Reworking.Settled(made)).ToList();
        Assert.Contains(lines, l => l.StartsWith("without-", StringComparison.Ordinal));
        var faults = new TextFaults();
        var read = SettledText.Read(lines.Select((l, i) => TextLine.Of(l, i + 1)), faults);
        Assert.Equal(Reworking.Settled(made), read);
        var again = Arranger.Arrange(tune, made.Brief with { Settled = read }, Cancel).Arrangement!;
        Assert.Equal(made.Score, again.Score);
    }

    private static Arrangement AtLevel(Tune tune, int level) =>
        Arranger.Arrange(tune, new Brief { LeftLevel = level, RightLevel = level }, Cancel).Arrangement!;

    // Of the strokes of a bar, by their keys in the score alone.
    private static int Count(Arrangement arrangement, string bar, Ease ease)
    {
        var strokes = Timeline
            .Of(arrangement.Score)
            .Where(s => arrangement.Score.Bars[s.Bar].Number == bar)
            .GroupBy(s => (s.Hand, s.At))
            .Select(g => (g.Key.Hand, Keys: g.Select(s => s.Key).Order().ToArray()))
            .ToList();
        return ease switch
        {
            Ease.Tenths => strokes.Count(s => s.Hand == Hand.Left && s.Keys[^1] - s.Keys[0] is 15 or 16),
            Ease.InnerNotes => strokes.Count(s => s.Hand == Hand.Right && s.Keys.Length > 2),
            Ease.Octaves => strokes.Count(s => s.Keys[^1] - s.Keys[0] == 12),
            _ => strokes.Count(s => s.Hand == Hand.Right && s.Keys.Length > 1),
        };
    }
}
