using Stridewright.Music;

namespace Stridewright.Hands.Tests;

/// <summary>What is harder for any pianist must measure so (common practice).</summary>
public sealed class EffortTests
{
    private const string Stride = "C2/8 E3+G3/8 G2/8 E3+G3/8";

    [Theory]
    [InlineData("C5/8 D5/8 E5/8 F5/8", "C4+C5/8 D4+D5/8 E4+E5/8 F4+F5/8")] // octaves
    [InlineData("C5/8 D5/8 E5/8 F5/8", "A4+C5/8 B4+D5/8 C5+E5/8 D5+F5/8")] // thirds
    [InlineData("C4+C5/8 D4+D5/8 E4+E5/8 F4+F5/8", "C4+E4+C5/8 D4+G4+D5/8 E4+G4+E5/8 F4+A4+F5/8")] // inner notes
    [InlineData("C5/4 E5/4", "C5/8 D5/8 E5/8 F5/8")] // more strokes
    [InlineData("C5/8 D5/8 E5/8 F5/8", "C4/8 D6/8 E4/8 F6/8")] // leaps
    [InlineData("C5/8 D5/8 E5/8 F5/8", "C5/16 D5/8 E5/16 E5/16 F5/8 G5/16")] // untied figures
    [InlineData("C5/8 D5/8 E5/16 E5/8 F5/16", "C5/8 D5/16 E5/16~ E5/16 E5/8 F5/16")] // tied over the beat
    public void The_right_hand_has_more_to_do(string easy, string hard) =>
        Assert.True(
            Judged(Written.Right(Metre.TwoFour, easy, easy)).Right.Value
                < Judged(Written.Right(Metre.TwoFour, hard, hard)).Right.Value
        );

    [Theory]
    [InlineData("C3/8 E3+G3/8 C3/8 E3+G3/8", Stride)] // no leaps
    [InlineData(Stride, "C1+C2/8 E3+G3/8 G1+G2/8 E3+G3/8")] // octave basses
    [InlineData(Stride, "C2/8 E3+G3+Bb3+C4/8 G2/8 E3+G3+Bb3+C4/8")] // fuller chords
    [InlineData("C3/8 E3+G3+E4/8 G2/8 E3+G3+E4/8", "C3/8 E3+G3+F4/8 G2/8 E3+G3+F4/8")] // strain
    public void The_left_hand_has_more_to_do(string easy, string hard) =>
        Assert.True(
            Judged(Written.Left(Metre.TwoFour, easy, easy)).Left.Value
                < Judged(Written.Left(Metre.TwoFour, hard, hard)).Left.Value
        );

    // The same four bars set six times, each with what teachers of the style bring in next (common practice): root
    // position, untied figures, stride with ties over mid-bar, octaves on first beats, octaves throughout, tenths.
    [Fact]
    public void Each_step_of_the_style_is_more_effort_than_the_one_before()
    {
        (string Right, string Left)[] steps =
        [
            ("E5/8 G5/8 E5/8 C5/8", "C3/8 E3+G3/8 C3/8 E3+G3/8"),
            ("E5/16 G5/8 E5/16 E5/8 C5/8", "C3/8 E3+G3+C4/8 G2/8 E3+G3+C4/8"),
            ("E5/16 G5/8 E5/16~ E5/16 E5/8 C5/16", "C2/8 E3+G3+C4/8 G2/8 E3+G3+C4/8"),
            ("G4+E5/16 G5/8 E5/16~ E5/16 E5/8 E4+C5/16", "C2+C3/8 E3+G3+C4/8 G2/8 E3+G3+C4/8"),
            ("E4+E5/16 G4+G5/8 E4+E5/16~ E4+E5/16 E4+E5/8 C4+C5/16", "C2+C3/8 E3+G3+C4/8 G1+G2/8 E3+G3+C4/8"),
            (
                "E4+G4+E5/16 G4+C5+G5/8 E4+G4+E5/16~ E4+G4+E5/16 E4+G4+E5/8 C4+E4+C5/16",
                "*C2+E3/8 G3+C4+E4/8 G1+G2/8 G3+C4+E4/8"
            ),
        ];
        var efforts = steps.Select(s => Judged(Written.Score(Metre.TwoFour, s, s, s, s))).ToList();
        for (var i = 1; i < efforts.Count; i++)
        {
            Assert.True(
                efforts[i - 1].Right.Value < efforts[i].Right.Value,
                $"right {i}: {efforts[i - 1].Right.Value} < {efforts[i].Right.Value}"
            );
            Assert.True(
                efforts[i - 1].Left.Value < efforts[i].Left.Value,
                $"left {i}: {efforts[i - 1].Left.Value} < {efforts[i].Left.Value}"
            );
        }
        Assert.True(efforts[^1].Overall > 1.5 * efforts[0].Overall);
    }

    [Fact]
    public void Faster_is_harder_and_a_larger_hand_finds_it_easier()
    {
        var score = Written.Score(Metre.TwoFour, ("C4+C5/8 E4+E5/8 G4+G5/8 r/8", Stride));
        Assert.True(Judged(score, 70).Overall < Judged(score, 90).Overall);
        var hands = new PlayerHands { SpanMm = 185 };
        Assert.True(
            Judge.Check(score, hands with { SpanMm = 230 }).Effort.Overall < Judge.Check(score, hands).Effort.Overall
        );
    }

    [Fact]
    public void Effort_stays_between_1_and_100()
    {
        var wild = Written.Score(Metre.TwoFour, ("A0+C8/64 C4+D4/64 A0+C8/64", "A0+C8/64 C4/64 A0+C8/64"));
        Assert.InRange(Judged(wild, 400).Overall, 60, 100);
        var still = Written.Right(Metre.TwoFour, "C4/2", "r/2", "r/2", "r/2");
        Assert.InRange(Judged(still).Overall, 1, 5);
        Assert.Equal(1, Judged(still).Left.Value);
    }

    [Fact]
    public void The_hardest_bars_are_named_in_order()
    {
        var score = Written.Right(
            Metre.TwoFour,
            "C5/4 D5/4",
            "C4+C5/8 E4+E5/8 G4+G5/8 C5+C6/8",
            "r/2",
            "C5/8 D5/8 E5/8 F5/8",
            "C5/4 D5/4"
        );
        var bars = Judge.Check(score, new()).HardestBars(9);
        Assert.Equal(["2", "4", "1", "5"], bars.Select(b => b.Number));
        Assert.Equal(2, Judge.Check(score, new()).HardestBars(2).Count);
    }

    [Fact]
    public void The_parts_are_told()
    {
        var left = Judged(Written.Left(Metre.TwoFour, "C2+C3/8 E3+G3/8 G2/8 E3+G3+C4/8"), 60).Left;
        Assert.Equal(2, left.StrokesPerSecond, 1e-9);
        Assert.Equal(2, left.KeysPerStroke, 1e-9);
        Assert.Equal(0.75, left.StretchedShare, 1e-9);
        Assert.Equal(0, left.StrainedShare);
        var keys = new Keyboard(165.1); // stretches of the octave, the third and the sixth, in spans
        var mm = keys.OctaveMm + keys.Distance(52, 55) + keys.Distance(52, 60);
        Assert.Equal(mm / 3 / 205, left.MeanStretch, 1e-9);
    }

    // Syncopation as Longuet-Higgins and Lee 1984 have it: a weak place sounding through a stronger one.
    [Theory]
    [InlineData(2, 4, "C5/8 D5/8 E5/8 F5/8", 0)]
    [InlineData(2, 4, "C5/8. D5/16 E5/8. F5/16", 0)]
    [InlineData(2, 4, "C5/16 D5/8 E5/16 F5/4", 0.25)]
    [InlineData(2, 4, "C5/8 D5/4 E5/8", 1 / 3.0)]
    [InlineData(2, 4, "C5/4 r/8 D5/8", 0)]
    [InlineData(2, 2, "C5/4 D5/2 E5/4", 1 / 3.0)]
    [InlineData(6, 8, "C5/4 D5/8 E5/4 F5/8", 0)]
    [InlineData(6, 8, "C5/8 D5/4 E5/4.", 0)]
    [InlineData(6, 8, "C5/4 D5/4 E5/4", 1 / 3.0)]
    public void Syncopated_strokes_are_those_held_through_a_stronger_place(
        int count,
        int unit,
        string bar,
        double share
    ) => Assert.Equal(share, Judged(Written.Right(new(count, unit), bar)).Right.SyncopatedShare, 1e-9);

    [Fact]
    public void A_pick_up_is_counted_from_the_bar_line_it_leads_to()
    {
        var score = Written.Right(Metre.TwoFour, "B4/16 C5/8~", "~C5/4 D5/4");
        Assert.Equal(1 / 3.0, Judged(score).Right.SyncopatedShare, 1e-9); // C5: half a beat early, tied over
    }

    private static Effort Judged(Score score, double? tempo = null) => Judge.Check(score, new(), tempo).Effort;
}
