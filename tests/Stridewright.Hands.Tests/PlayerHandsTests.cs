using Stridewright.Music;

namespace Stridewright.Hands.Tests;

public sealed class PlayerHandsTests
{
    // Normal model fitted to the shares published with Boyle, Boyle and Booker 2015 (computed table, whole millimetres).
    [Theory]
    [InlineData("women 5", 178)]
    [InlineData("women 25", 192)]
    [InlineData("women 50", 201)]
    [InlineData("women 75", 210)]
    [InlineData("women 95", 223)]
    [InlineData("men 5", 202)]
    [InlineData("men 25", 216)]
    [InlineData("Men 50", 226)]
    [InlineData("men  75", 236)]
    [InlineData("men 95", 250)]
    public void Usual_spans_by_percentile(string text, double mm)
    {
        Assert.True(UsualSpans.TryRead(text, out var read, out var problem));
        Assert.Equal((mm, ""), (read, problem));
    }

    // 76 % of men reach 8.5 in, 87 % of women do not (same source).
    [Fact]
    public void The_published_shares_come_back()
    {
        Assert.Equal(8.5 * 25.4, UsualSpans.MenMm(24), 1.0);
        Assert.Equal(8.5 * 25.4, UsualSpans.WomenMm(87), 1.0);
    }

    [Theory]
    [InlineData("women")]
    [InlineData("women 0")]
    [InlineData("women 100")]
    [InlineData("children 50")]
    [InlineData("men 50.5")]
    [InlineData("")]
    [InlineData(null)]
    public void What_is_no_usual_hand_is_told(string? text)
    {
        Assert.False(UsualSpans.TryRead(text, out _, out var problem));
        Assert.Contains("such as women 50", problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_hand_has_its_own_or_what_both_have()
    {
        var hands = new PlayerHands
        {
            SpanMm = 8.5 * 25.4,
            Weaker = Hand.Left,
            Left = new OneHand { SpanMm = 200, StrokesPerSecond = 4 },
        };
        var (right, left) = (hands.Of(Hand.Right), hands.Of(Hand.Left));
        // An inner span of 6.0 in goes with 8.5 in (notes on Boyle, Boyle and Booker 2015).
        Assert.Equal(8.5 * 25.4, right.SpanMm);
        Assert.Equal(6.0 * 25.4, right.IndexSpanMm, 1e-9);
        Assert.Equal((200, 200 * 6 / 8.5), (left.SpanMm, left.IndexSpanMm));
        Assert.Equal((16, 6, 5), (right.LeapBitsPerSecond, right.StrokesPerSecond, right.OctaveStrokesPerSecond));
        Assert.Equal((14.4, 4), (left.LeapBitsPerSecond, left.StrokesPerSecond));
        Assert.Equal(200, new Reach(hands).SpanMm);
        Assert.Equal(8.5 * 25.4, new Reach(hands, Hand.Right).SpanMm);
    }

    // Parncutt et al. 1997: practical maxima of 15, 14, 12, 10 (from the thumb) and 10, 7, 5 semitones (from the second).
    [Theory]
    [InlineData(1, 5, 210)]
    [InlineData(5, 1, 210)]
    [InlineData(1, 4, 196)]
    [InlineData(1, 3, 168)]
    [InlineData(1, 2, 140)]
    [InlineData(2, 5, 150)]
    [InlineData(2, 4, 105)]
    [InlineData(3, 4, 60)]
    public void Two_fingers_stretch_as_the_published_table_has_them(int a, int b, double mm) =>
        Assert.Equal(
            mm,
            new PlayerHands { SpanMm = 210, IndexSpanMm = 150 }
                .Of(Hand.Right)
                .SpanBetween(a, b),
            1e-9
        );

    [Fact]
    public void A_finger_that_is_missing_is_missed()
    {
        var hands = new PlayerHands
        {
            SpanMm = 210,
            Right = new OneHand { Without = [3, 5] },
        };
        Assert.Equal((3, 196.0), (hands.Of(Hand.Right).Fingers, hands.Of(Hand.Right).UsableSpanMm));
        var score = Written.Score(Metre.TwoFour, ("C5+E5+G5+Bb5/4 r/4", "C3+E3+G3+Bb3/4 r/4"));
        var fault = Assert.Single(Judge.Check(score, hands).Faults);
        Assert.Equal((FaultKind.TooManyKeys, Hand.Right, 4, 3), (fault.Kind, fault.Hand, fault.Need, fault.Limit));
        Assert.Contains("three fingers", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_judge_measures_each_hand_by_itself()
    {
        var hands = new PlayerHands
        {
            SpanMm = 230,
            Left = new OneHand { SpanMm = 195 },
        };
        var score = Written.Score(Metre.TwoFour, ("C5+E6/4 r/4", "C3+E4/4 r/4"));
        var fault = Assert.Single(Judge.Check(score, hands).Faults, f => f.Kind == FaultKind.Reach);
        Assert.Equal((Hand.Left, 191), (fault.Hand, fault.Limit));
    }

    [Theory]
    [InlineData("C4+Eb5/4", true)]
    [InlineData("*C4+E5/4", true)]
    [InlineData("C4+D5/4", false)]
    [InlineData("C4/8 E5/8", false)]
    public void No_tenths_means_none_in_one_hand(string bar, bool isUnwanted)
    {
        var faults = Judge.Check(Written.Right(Metre.TwoFour, bar), new() { SpanMm = 260, NoTenths = true }).Faults;
        Assert.Equal(isUnwanted ? [FaultKind.TenthUnwanted] : [], faults.Select(f => f.Kind));
    }

    [Fact]
    public void Leaps_and_strokes_are_held_against_what_was_measured()
    {
        // C2 to E3, 211 mm on the 164 mm octave: 4.17 bits; an eighth at 88 lasts 0.341 s: 12.2 bits a second.
        var stride = Written.Left(Metre.TwoFour, "C2/8 E3+G3/8 C2/8 E3+G3/8");
        Assert.True(Judge.Check(stride, new(), 88).IsPlayable);
        var slow = new PlayerHands { Left = new OneHand { LeapBitsPerSecond = 10 } };
        Assert.All(Judge.Check(stride, slow, 88).Faults, f => Assert.Equal((FaultKind.Leap, 10), (f.Kind, f.Limit)));
        Assert.NotEmpty(Judge.Check(stride, slow, 88).Faults);
        Assert.True(Judge.Check(stride, slow with { Left = new OneHand { LeapBitsPerSecond = 12.5 } }, 88).IsPlayable);
        // Sixteenths at 80: 5.33 strokes a second of one key.
        var repeated = Written.Right(Metre.TwoFour, "C5/16 C5/16 C5/16 C5/16 C5/4");
        Assert.True(Judge.Check(repeated, new(), 80).IsPlayable);
        Assert.Equal(
            FaultKind.RepeatedKey,
            Assert.Single(Judge.Check(repeated, new() { StrokesPerSecond = 5 }, 80).Faults).Kind
        );
    }
}
