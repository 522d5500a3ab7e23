namespace Stridewright.Hands.Tests;

public sealed class ReachTests
{
    // Worked cases derived from Boyle, Boyle and Booker 2015 and the keyboard-size research community's notes:
    // the median woman's and a wide hand.
    [Theory]
    [InlineData(201, "C3", "C4", Stretch.Possible)]
    [InlineData(201, "C3", "D4", Stretch.Strained)]
    [InlineData(201, "C3", "E4", Stretch.Out)]
    [InlineData(236, "C3", "C4", Stretch.Comfortable)]
    [InlineData(236, "C3", "D4", Stretch.Possible)]
    [InlineData(236, "C3", "E4", Stretch.Strained)]
    [InlineData(236, "Db3", "F4", Stretch.Strained)]
    [InlineData(236, "C3", "F4", Stretch.Out)]
    public void Stretches_of_a_measured_hand_are_the_published_ones(
        double span,
        string low,
        string high,
        Stretch lies
    ) => Assert.Equal(lies, Of(span).Of(Written.Key(low), Written.Key(high)));

    // Zones of the same research, one hand inside each: A barely octaves and no ninths; B ninths with tension, no
    // tenths; C tenths with tension; D tenths without.
    [Theory]
    [InlineData(190, Stretch.Strained, Stretch.Out, Stretch.Out)]
    [InlineData(205, Stretch.Possible, Stretch.Strained, Stretch.Out)]
    [InlineData(228, Stretch.Comfortable, Stretch.Possible, Stretch.Strained)]
    [InlineData(242, Stretch.Comfortable, Stretch.Comfortable, Stretch.Possible)]
    public void Zones_of_hands_reach_what_research_says(double span, Stretch octave, Stretch ninth, Stretch tenth)
    {
        var reach = Of(span);
        var c = Written.Key("C3");
        Assert.Equal((octave, ninth, tenth), (reach.Of(c, c + 12), reach.Of(c, c + 14), reach.Of(c, c + 16)));
    }

    // The same research: a span of 7.0 in on an octave of 5.5 in is as one of 8.27 in on 6.5 in (to the nearest key).
    [Fact]
    public void A_narrower_keyboard_is_as_a_wider_hand()
    {
        var narrow = new Reach(new() { SpanMm = 7.0 * 25.4, OctaveMm = 5.5 * 25.4 });
        var wide = new Reach(new() { SpanMm = 8.27 * 25.4, OctaveMm = 6.5 * 25.4 });
        for (var semitones = 0; semitones <= 24; semitones++)
        {
            Assert.Equal(wide.Of(48, 48 + semitones) == Stretch.Out, narrow.Of(48, 48 + semitones) == Stretch.Out);
        }
    }

    // Common practice: a tenth too wide to strike is rolled, two octaves are not.
    [Fact]
    public void A_tenth_can_be_rolled_and_two_octaves_cannot()
    {
        Assert.True(Of(185).CanRoll(48, 64));
        Assert.False(Of(205).CanRoll(48, 72));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    public void A_hand_without_span_is_refused(double span) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Of(span));

    private static Reach Of(double span) => new(new() { SpanMm = span });
}
