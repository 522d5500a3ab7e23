using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Easing;

public sealed class ConcessionsTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    // Both sides derived anew from the scores: the octaves are there at the usual hands and gone at these.
    [Theory]
    [InlineData(185)]
    [InlineData(175)]
    public void Octaves_that_small_hands_go_without_are_named_with_their_bars(double span)
    {
        var named = 0;
        foreach (var tune in Tunes.Samples.Where((_, i) => i % 4 == 1))
        {
            var brief = new Brief
            {
                LeftLevel = 5,
                RightLevel = 5,
                Hands = new PlayerHands { SpanMm = span },
            };
            var arrangement = Arranger.Arrange(tune, brief, Cancel).Arrangement!;
            var usual = Arranger
                .Arrange(tune, arrangement.Brief with { Hands = new PlayerHands(), Settled = null }, Cancel)
                .Arrangement!;
            var said = Concessions
                .ForHands(tune, arrangement, Arranging.Reasons.Of(arrangement), Cancel)
                .Select(d => d.Message)
                .SingleOrDefault(m => m.StartsWith("octaves the right hand", StringComparison.Ordinal));
            var bars = said is null ? [] : Bars(said);
            Assert.Equal(
                arrangement
                    .Score.Bars.Select((b, i) => (b.Number, i))
                    .Where(b => Octaves(arrangement.Score, b.i) < Octaves(usual.Score, b.i))
                    .Select(b => b.Number),
                bars
            );
            named += bars.Length;
        }
        Assert.True(named > 0);
    }

    [Fact]
    public void A_bar_that_somebody_keeps_is_given_up_for_no_hands()
    {
        var tune = Tunes.Samples[1];
        var brief = new Brief
        {
            LeftLevel = 5,
            RightLevel = 5,
            Hands = new PlayerHands { SpanMm = 185 },
        };
        var arrangement = Arranger.Arrange(tune, brief, Cancel).Arrangement!;
        var bar = Enumerable
            .Range(0, arrangement.Score.Bars.Count)
            .First(b => Said(arrangement).Any(s => Bars(s).Contains(arrangement.Score.Bars[b].Number)));
        var kept = Reworking.Rework(arrangement, [Reworking.Spot(arrangement, bar, Hand.Right)], Cancel).Arrangement!;
        Assert.DoesNotContain(Said(kept), s => Bars(s).Contains(arrangement.Score.Bars[bar].Number));

        IEnumerable<string> Said(Arrangement made) =>
            Concessions
                .ForHands(tune, made, Arranging.Reasons.Of(made), Cancel)
                .Select(d => d.Message)
                .Where(m => m.Contains("right hand would have", StringComparison.Ordinal));
    }

    [Fact]
    public void Usual_hands_go_without_nothing()
    {
        var arrangement = Arranger
            .Arrange(Tunes.Samples[1], new Brief { LeftLevel = 3, RightLevel = 5 }, Cancel)
            .Arrangement!;
        Assert.DoesNotContain(
            Concessions.ForHands(Tunes.Samples[1], arrangement, Arranging.Reasons.Of(arrangement), Cancel),
            d => d.Message.Contains("right hand", StringComparison.Ordinal)
        );
    }

    private static string[] Bars(string said) =>
        said[(said.IndexOf(": bar", StringComparison.Ordinal) + 2)..].Split(' ', 2)[1].Split(", ");

    private static int Octaves(Score score, int bar) =>
        score
            .Bars[bar]
            .Voices.Where(v => v.Hand == Hand.Right)
            .SelectMany(v => v.Events)
            .Count(e =>
                e.Notes.Count > 0
                && !e.Notes[^1].TieStop
                && e.Notes.Any(n => e.Notes[^1].Pitch.Midi - n.Pitch.Midi == 12)
            );
}
