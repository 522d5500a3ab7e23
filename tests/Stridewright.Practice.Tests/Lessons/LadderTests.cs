using Stridewright.Practice.Lessons;

namespace Stridewright.Practice.Tests.Lessons;

public sealed class LadderTests
{
    // Begin at half the goal, 4 to 6 % more after three correct passes: common practice; for a goal of 96 the rungs of 5 %
    // rounded are these.
    [Fact]
    public void The_ladder_from_48_to_96_has_the_usual_rungs() =>
        Assert.Equal(
            [48, 50, 53, 56, 58, 61, 64, 68, 71, 74, 78, 82, 86, 91, 95, 96],
            TempoLadder.Of(48, 96).Select(r => (int)r)
        );

    [Fact]
    public void A_ladder_of_one_rung_stays() => Assert.Equal([60.0], TempoLadder.Of(60, 60));

    [Fact]
    public void Every_ladder_rises_by_whole_beats_and_no_more_than_six_in_a_hundred_or_one()
    {
        for (var to = 20; to < 300; to += 7)
        {
            var rungs = TempoLadder.Of(to / 2.0, to).ToList();
            Assert.Equal(to, rungs[^1]);
            foreach (var (low, high) in rungs.Zip(rungs.Skip(1)))
            {
                Assert.True(high > low && high == Math.Round(high));
                // Rounding to whole beats adds up to one on either side.
                Assert.True(high <= low * 1.05 + 1.05, $"{low} to {high}");
            }
        }
    }

    [Fact]
    public void Every_limit_names_its_source() =>
        Assert.All(LessonLimits.All, limit => Assert.False(string.IsNullOrWhiteSpace(limit.Source), limit.Words));
}
