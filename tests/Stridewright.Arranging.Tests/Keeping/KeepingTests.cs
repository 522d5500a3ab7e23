using CsCheck;
using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Keeping;

public sealed class KeepingTests
{
    private static readonly Hand[] BothHands = [Hand.Left, Hand.Right];

    public static TheoryData<int> Levels => [1, 2, 3, 4, 5, 6];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    // What is cheapest stays cheapest when all else in its place is forbidden. The levels together take every bar.
    [Theory]
    [MemberData(nameof(Levels))]
    public void Keeping_a_spot_of_a_sample_as_it_is_changes_nothing(int level) => KeepAsItIs(level, level - 1, 6);

    /// <summary>Every bar at every level; takes minutes, so it is run on request.</summary>
    [Theory(Explicit = true)]
    [MemberData(nameof(Levels))]
    public void Keeping_any_spot_of_a_sample_as_it_is_changes_nothing(int level) => KeepAsItIs(level, 0, 1);

    private static void KeepAsItIs(int level, int first, int step)
    {
        foreach (var tune in Tunes.Samples)
        {
            var before = Arranged(tune, new Brief { LeftLevel = level, RightLevel = level });
            for (var bar = first; bar < before.Score.Bars.Count; bar += step)
            {
                foreach (var hand in BothHands)
                {
                    var after = Reworking.Rework(before, [Reworking.Spot(before, bar, hand)], Cancel);
                    Assert.True(after.Arrangement is not null, $"{tune.Title}, bar {bar}, {hand}: {after.Refusal}");
                    Assert.True(before.Score == after.Arrangement.Score, $"{tune.Title}, bar {bar}, {hand}");
                }
            }
        }
    }

    [Fact]
    public void Keeping_all_bars_of_a_random_tune_changes_nothing() =>
        Gen.Select(Tunes.Any, Gen.Int[1, 6])
            .Sample(
                (tune, level) =>
                {
                    var brief = new Brief { LeftLevel = level, RightLevel = level };
                    if (Arranger.Arrange(tune, brief, Cancel).Arrangement is not { } before)
                    {
                        return;
                    }
                    var kept = Enumerable
                        .Range(0, before.Score.Bars.Count)
                        .SelectMany(bar => BothHands.Select(hand => Reworking.Spot(before, bar, hand)))
                        .ToValueList();
                    var after = Reworking.Rework(before, kept, Cancel);
                    Assert.True(after.Arrangement is not null, $"{after.Refusal}");
                    Assert.Equal(before.Score, after.Arrangement.Score);
                },
                iter: 60
            );

    // A spot of one setting is kept in another, made with another seed, at another level or for other hands.
    [Fact]
    public void A_spot_of_another_setting_is_taken_as_it_is_or_refused_with_its_bar_and_why() => TakeFromAnother(3);

    /// <summary>Every bar; takes minutes, so it is run on request.</summary>
    [Fact(Explicit = true)]
    public void Any_spot_of_another_setting_is_taken_as_it_is_or_refused_with_its_bar_and_why() => TakeFromAnother(1);

    private static void TakeFromAnother(int step)
    {
        int taken = 0,
            refused = 0;
        foreach (var tune in Tunes.Samples)
        {
            var other = Arranged(
                tune,
                new Brief
                {
                    Seed = 7,
                    LeftLevel = 5,
                    RightLevel = 5,
                }
            );
            var mine = Arranged(
                tune,
                new Brief
                {
                    Seed = 2,
                    LeftLevel = 4,
                    RightLevel = 4,
                    Tonic = other.Key.Tonic,
                }
            );
            if (other.Score.Bars.Count != mine.Score.Bars.Count)
            {
                continue;
            }
            for (var bar = 0; bar < mine.Score.Bars.Count; bar += step)
            {
                foreach (var hand in BothHands)
                {
                    var spot = Reworking.Spot(other, bar, hand);
                    var result = Reworking.Rework(mine, [spot], Cancel);
                    if (result.Refusal is { } refusal)
                    {
                        refused++;
                        Assert.NotNull(refusal.Place.Bar);
                        Assert.Contains("the bar is kept: release it", refusal.Message, StringComparison.Ordinal);
                        continue;
                    }
                    taken++;
                    Assert.True(result.Arrangement!.Verdict.IsPlayable);
                    var again = Reworking.Spot(result.Arrangement, bar, hand);
                    Assert.True(
                        spot.Strokes.Select(s => (s.At, s.Pitches))
                            .SequenceEqual(again.Strokes.Select(s => (s.At, s.Pitches))),
                        $"{tune.Title}, bar {bar}, {hand}"
                    );
                }
            }
        }
        Assert.True(taken > 100, $"{taken} taken, {refused} refused");
    }

    private static Arrangement Arranged(Tune tune, Brief brief) =>
        Arranger.Arrange(tune, brief, Cancel).Arrangement ?? throw new InvalidOperationException("refused");
}
