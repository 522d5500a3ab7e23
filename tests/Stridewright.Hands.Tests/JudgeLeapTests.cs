using Stridewright.Music;

namespace Stridewright.Hands.Tests;

/// <summary>Rates after Fitts 1954 over key centres after Jacobs 2001; limits are common practice.</summary>
public sealed class JudgeLeapTests
{
    private static readonly PlayerHands Median = new() { SpanMm = 205 };

    // C4-D6 asks a shift of 199 mm, 4.07 bits; over an eighth at 120 that is 16.3 bits a second.
    [Theory]
    [InlineData(13, true)]
    [InlineData(12, false)]
    public void One_leap_in_a_hundred_may_be_over_the_limit(int bars, bool playable)
    {
        const string Plain = "C4/8 D4/8 C4/8 D4/8 C4/8 D4/8 C4/8 D4/8";
        const string Last = "C4/8 D4/8 C4/8 D4/8 C4/8 D4/8 C4/8 D6/8";
        var score = Written.Right(Metre.FourFour, [.. Enumerable.Repeat(Plain, bars - 1), Last]);
        var verdict = Judge.Check(score, Median, 120);
        Assert.Equal(playable, verdict.IsPlayable);
        if (!playable)
        {
            var fault = Assert.Single(verdict.Faults);
            Assert.Equal((FaultKind.Leap, "bar 12 beat 4.5", 16), (fault.Kind, fault.Place, fault.Limit));
            Assert.Equal(16.3, fault.Need, 0.05);
            Assert.Equal(
                "the right hand moves 199 mm from C4 to D6 in 250 ms, 16.3 bits a second, one of 1 in 95 over 16, "
                    + "where one in 100 may be; play slower or come closer",
                fault.Message
            );
        }
    }

    // The same leap over a sixteenth asks 32.5 bits a second, more than one and a half times the limit.
    [Fact]
    public void No_leap_may_be_half_as_fast_again_as_the_limit()
    {
        string[] bars = [.. Enumerable.Repeat("C4/4 D4/4 C4/4 D4/4", 50), "C4/16 D6/16"];
        var fault = Assert.Single(Judge.Check(Written.Right(Metre.FourFour, bars), Median, 120).Faults);
        Assert.Equal((FaultKind.Leap, 24), (fault.Kind, fault.Limit));
        Assert.EndsWith("and 24 is the most for any leap; play slower or come closer", fault.Message);
    }

    // C2 to E3 in one eighth of 2/4: 11.1 bits a second at 80, 16.7 at 120 (164 mm octave: the rate does not depend on
    // the octave's width, a white key being scaled with it).
    [Theory]
    [InlineData(80, true)]
    [InlineData(114, true)]
    [InlineData(120, false)]
    public void A_stride_is_playable_up_to_its_tempo(double tempo, bool playable)
    {
        var score = Written.Left(Metre.TwoFour, Enumerable.Repeat("C2/8 E3+G3/8 C2/8 E3+G3/8", 8).ToArray());
        Assert.Equal(playable, Judge.Check(score, Median, tempo).IsPlayable);
        Assert.Equal(playable, Judge.Check(score.At(0, tempo), Median).IsPlayable);
    }

    // A bass and its chord are measured by the little finger's way; the same keys not in that pattern by the shift.
    [Fact]
    public void What_lies_under_the_hand_is_no_leap_but_for_bass_and_chord()
    {
        double Fastest(string bar) =>
            Judge.Check(Written.Left(Metre.TwoFour, bar, bar), Median, 88).Effort.Left.LeapBitsPerSecond;
        Assert.True(Fastest("C3/8 E3+G3/8 C3/8 E3+G3/8") > 5); // on the beats: bass and chord
        Assert.Equal(0, Fastest("E3+G3/8 C3/8 E3+G3/8 C3/8")); // off the beats
        Assert.Equal(0, Fastest("C3/8 E3/8 C3/8 E3/8")); // no chord
    }

    [Theory]
    [InlineData("C2/8 E3+G3/8 E3+G3/8 C2/8 E3+G3/8 E3+G3/8", "bass-chord other bass-chord bass-chord other")]
    [InlineData("C2/4 E3+G3/8 C2/4 E3+G3/8", "bass-chord bass-chord bass-chord")]
    [InlineData("C2/4. E3+G3/4.", "bass-chord")] // one to the bar
    [InlineData("C2/4 E3+G3/8 E3+G3/4.", "bass-chord other")] // else the second beat takes a bass
    [InlineData("E3+G3/8 C2/8", "bass-chord")] // a short bar goes by the shapes alone
    public void Six_eight_has_its_own_basses(string bar, string groups)
    {
        var passage = new Passage(Written.Left(Metre.SixEight, bar), null);
        var moves = HandPart.Of(passage, Median, Hand.Left).Moves;
        Assert.Equal(
            groups,
            string.Join(' ', moves.Select(m => m.Group == MoveGroup.BassAndChord ? "bass-chord" : "other"))
        );
    }

    // 4.17 bits over an eighth at 150: 20.9 bits a second, over 16 and under the 22 of compound time.
    [Fact]
    public void A_two_step_leaves_its_chord_faster_than_a_rag()
    {
        string[] bars = [.. Enumerable.Repeat("C2/4 E3+G3/8 C2/4 E3+G3/8", 8)];
        Assert.True(Judge.Check(Written.Left(Metre.SixEight, bars), Median).IsPlayable);
        Assert.False(Judge.Check(Written.Left(Metre.ThreeFour, bars), Median, 150).IsPlayable);
    }

    // A sixteenth lasts 5.87 to the second at 88 and 6.67 at 100; a finger repeats 6 times, a wrist 5.
    [Theory]
    [InlineData("C5/16 C5/16 C5/16 r/16", 100, "RepeatedKey")]
    [InlineData("C5/16 C5/16 C5/16 r/16", 88, "")]
    [InlineData("C5/16 C5/16 D5/16 C5/16 C5/16", 100, "")]
    [InlineData("C5/16 C5/16 C5/16 C5/16 C5/16 C5/16", 100, "RepeatedKey")]
    [InlineData("C4+C5/16 C4+C5/16 C4+C5/16 r/16", 100, "")]
    [InlineData("C4+C5/16 C4+C5/16 C4+C5/16 C4+C5/16", 100, "RepeatedOctave")]
    [InlineData("C4+C5/16 C4+E4+C5/16 C4+C5/16 C4+G4+C5/16", 88, "RepeatedOctave")]
    [InlineData("C4+C5/16 C4+C5/16 C4+C5/16 C4+C5/16", 70, "")]
    [InlineData("C4+C5/8 C4+C5/8 C4+C5/8 C4+C5/8", 100, "")]
    public void Repetition_has_its_limit(string bar, double tempo, string kinds) =>
        Assert.Equal(kinds, JudgeReachTests.Kinds(Judge.Check(Written.Right(Metre.TwoFour, bar), Median, tempo)));

    [Theory]
    [InlineData(2, 4, 88)]
    [InlineData(4, 4, 160)]
    [InlineData(2, 2, 160)]
    [InlineData(3, 4, 132)]
    [InlineData(6, 8, 150)]
    [InlineData(5, 4, 120)]
    public void A_score_without_a_tempo_is_judged_at_the_usual_one(int count, int unit, double tempo)
    {
        var passage = new Passage(Written.Right(new(count, unit), "C5/4 D5/4"), null);
        Assert.Equal(tempo, passage.TempoAt(ScoreTime.Eighth));
        Assert.Equal(120 / tempo, passage.TotalSeconds, 1e-9);
    }

    [Fact]
    public void A_printed_tempo_holds_from_its_place_and_an_asked_one_throughout()
    {
        var score = Written.Right(Metre.TwoFour, "C5/2", "C5/2", "C5/2").At(1, 60).At(2, double.NaN);
        var printed = new Passage(score, null);
        Assert.Equal([88, 60, 60], [printed.TempoAt(default), printed.TempoAt(new(1, 2)), printed.TempoAt(new(3, 2))]);
        Assert.Equal(2 * 60.0 / 88 + 4, printed.TotalSeconds, 1e-9);
        Assert.Equal(60.0 / 88 + 1, printed.Seconds(ScoreTime.Quarter, new(3, 4)), 1e-9);
        Assert.Equal(3, new Passage(score, 120).TotalSeconds, 1e-9);
    }

    [Fact]
    public void A_tempo_of_nothing_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Judge.Check(Written.Score(Metre.TwoFour), Median, 0));
}
