using Stridewright.Hands;

namespace Stridewright.Arranging.Tests.Laws;

/// <summary>Bars that end between two places of the grid, as damaged tunes have them: found by changing tunes at random.</summary>
public sealed class OddBarsTests
{
    [Theory]
    [InlineData(
        "M:6/8\nL:1/8\nK:F",
        "\"F\"F2F A2B|\"C7\"c2d c2c|\"F\"F2F A2B E/G|F2F A2B|\"C7\"c2d c3|\"F\"c2d c2B|A2G F3|"
    )]
    [InlineData("M:3/4\nL:1/16\nK:G", "\"D\"f6g2a4|f6g2a4|f6g2a4|[M:27/16]d8ca3b2c2g2g2e2a2c3|[M:3/4]f6g2a4|")]
    public void A_bar_of_an_odd_length_is_stepped_over(string head, string body)
    {
        var tune = Tunes.Abc(head, body);
        for (var seed = 0; seed < 30; seed++)
        {
            foreach (var raggedness in (double[])[0.25, 0.5, 1])
            {
                var brief = new Brief
                {
                    LeftLevel = 5,
                    RightLevel = 5,
                    Raggedness = raggedness,
                    Seed = seed,
                };
                var feel = Feels.For(Feels.MainMetre(tune));
                var lattice = new Setting(tune, brief, feel, Feels.MainMetre(tune), Prices.Standard).Plan().Lattice;
                Assert.Contains(lattice.Bars, bar => bar.Length % Lattice.TicksPerUnit != 0);
                var ticks = Ragging
                    .Solve(lattice, brief, RagWeights.Standard, TestContext.Current.CancellationToken)
                    .Onsets.Select(o => o.Tick)
                    .ToList();
                Assert.Equal(ticks.Distinct().Order(), ticks);
                if (Arranger.Arrange(tune, brief, TestContext.Current.CancellationToken).Arrangement is { } arrangement)
                {
                    Assert.True(Judge.Check(arrangement.Score, new PlayerHands()).IsPlayable);
                }
            }
        }
    }

    // MusicXML 4.0, attribute implicit: numbers never appear for "pickup measures and the last half of mid-measure repeats".
    // The bar that closes a strain with a pick-up is counted (common practice): the strain has its eight bars.
    [Theory]
    [InlineData("\"C\"g|cdef|gage|cdef|gage|\"G\"gfed|\"C\"cdef|\"G\"gfed|\"C\"c3|]", "0 1 2 3 4 5 6 7 8", "0")]
    [InlineData("|:\"C\"g|cdef|gage|cdef|\"G\"g3:||:\"C\"g|cdef|gage|cdef|\"C\"c3:|", "0 1 2 3 4 X5 5 6 7 8", "0 X5")]
    [InlineData("\"C\"g|cdef|gage|cdef|\"G\"g3||\"C\"g|cdef|gage|cdef|\"C\"c3|]", "0 1 2 3 4 X5 5 6 7 8", "0 4 X5")]
    public void A_short_closing_bar_is_counted_and_a_pick_up_is_not(string body, string numbers, string unnumbered)
    {
        var tune = Tunes.Abc("M:2/4\nL:1/8\nK:C", body);
        var result = Arranger.Arrange(tune, new Brief(), TestContext.Current.CancellationToken);
        var bars = result.Arrangement!.Score.Bars;
        Assert.Equal(numbers, string.Join(' ', bars.Select(b => b.Number)));
        Assert.Equal(unnumbered, string.Join(' ', bars.Where(b => b.Implicit).Select(b => b.Number)));
    }

    [Fact]
    public void Where_the_right_hand_leaves_no_key_free_the_left_rests()
    {
        // The tune fills the left hand's window however it is moved: two octaves and a half, up and down.
        var tune = Tunes.Abc("M:2/4\nL:1/8\nK:C", "\"C\"G,CEG|c'gec|G,ceg|c'gG,C|\"F\"A,CFA|c'afc|\"C\"G,CEG|c4|");
        var result = Arranger.Arrange(
            tune,
            new Brief { LeftLevel = 1, RightLevel = 5 },
            TestContext.Current.CancellationToken
        );
        Assert.True(result.Arrangement is not null, result.Refusal?.ToString());
    }

    [Theory]
    [InlineData("cdef|gage|c'''2 C,,,,2|")]
    public void A_tune_wider_than_the_piano_is_refused_with_its_bar(string body)
    {
        var tune = Tunes.Abc("M:2/4\nL:1/8\nK:C", "\"C\"" + body);
        var result = Arranger.Arrange(tune, new Brief(), TestContext.Current.CancellationToken);
        Assert.Equal("3", result.Refusal!.Place.Bar);
        Assert.Contains("octave", result.Refusal.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("C,,,C,,,C,,,C,,,|c'''2 C,,,2|")] // from the lowest C of the piano to its highest
    [InlineData("c'c'c'c'|C,,,2 c'2|")]
    public void A_tune_as_wide_as_the_piano_is_arranged_or_refused(string body)
    {
        for (var level = 1; level <= 6; level++)
        {
            var tune = Tunes.Abc("M:2/4\nL:1/8\nK:C", "\"C\"" + body);
            var brief = new Brief { LeftLevel = level, RightLevel = level };
            var result = Arranger.Arrange(tune, brief, TestContext.Current.CancellationToken);
            Assert.True(result.Arrangement is not null || result.Refusal is not null);
        }
    }

    // Found by damage: a chord that no voicing lies under the hand for.
    [Theory]
    [InlineData(30)]
    [InlineData(60)]
    public void A_chord_beyond_the_hand_is_done_without_or_refused(double span)
    {
        var tune = Tunes.Abc("M:2/4\nL:1/8\nK:C", "\"C\"cdef|\"G7\"gfed|\"C\"c4|");
        var brief = new Brief { Hands = new PlayerHands { SpanMm = span } };
        var result = Arranger.Arrange(tune, brief, TestContext.Current.CancellationToken);
        Assert.True(result.Arrangement is null != result.Refusal is null);
    }

    [Fact]
    public void A_tune_of_a_thousand_bars_without_chords_is_set()
    {
        var tune = Tunes.Abc(
            "M:2/4\nL:1/16\nK:G",
            string.Concat(Enumerable.Repeat("G2A2B2c2|dBGB d4|e2d2c2A2|G8|", 256))
        );
        var result = Arranger.Arrange(tune, new Brief(), TestContext.Current.CancellationToken);
        Assert.NotNull(result.Arrangement);
    }

    [Theory]
    [InlineData("M:4/4\nL:1/16\nK:C", "CDEFGABcdcBAGFED|", 1100, "17600 notes")]
    [InlineData("M:4/4\nL:1/1\nK:C", "C16|", 300, "4800 whole notes")]
    public void More_than_a_tune_can_be_is_refused(string head, string bar, int times, string told)
    {
        var tune = Tunes.Abc(head, string.Concat(Enumerable.Repeat(bar, times)));
        var result = Arranger.Arrange(tune, new Brief(), TestContext.Current.CancellationToken);
        Assert.Contains(told, result.Refusal!.Message, StringComparison.Ordinal);
    }
}
