using Stridewright.Music;

namespace Stridewright.Hands.Tests;

/// <summary>Limits: stretches derived from Boyle, Boyle and Booker 2015; the rest is common practice.</summary>
public sealed class JudgeReachTests
{
    private static readonly PlayerHands Median = new() { SpanMm = 205 };

    [Fact]
    public void A_tenth_is_out_of_a_median_hand_and_the_fault_says_what_to_do()
    {
        var fault = Assert.Single(Judge.Check(Written.Left(Metre.FourFour, "C2/4 r/4. C2+E3/8 r/4"), Median).Faults);
        Assert.Equal(
            (FaultKind.Reach, Hand.Left, 0, "bar 1 beat 3.5"),
            (fault.Kind, fault.Hand, fault.Bar, fault.Place)
        );
        Assert.Equal((212.4, 201.0), (Math.Round(fault.Need, 1), fault.Limit));
        Assert.Equal("the left hand needs 212 mm for C2 and E3 and has 201; roll it or take the octave", fault.Message);
    }

    [Theory]
    [InlineData("*C2+E3/4 C3/4", "")]
    [InlineData("*C2+C4/4 C3/4", "RolledTooWide")]
    [InlineData("*C2+E3/4 *D2+F#3/4", "RolledTwice")]
    [InlineData("*C2+E3/4 C3/4 *D2+F#3/4", "")]
    [InlineData("C2+D3/4 r/4", "StrainedOften")]
    [InlineData("C3+C#3+D3+D#3+E3/4 r/4", "")]
    [InlineData("C3+C#3+D3+D#3+E3+F3/4 r/4", "TooManyKeys")]
    public void One_hand_holds(string bar, string kinds) =>
        Assert.Equal(kinds, Kinds(Judge.Check(Written.Left(Metre.FourFour, bar), Median)));

    [Fact]
    public void A_key_held_in_another_voice_counts_with_what_is_struck()
    {
        Assert.Equal("Reach", Kinds(Judge.Check(TwoVoices("C5/2", "r/4 A3/4"), Median)));
        Assert.Equal("", Kinds(Judge.Check(TwoVoices("C5/4 r/4", "r/4 A3/4"), Median)));
    }

    [Fact]
    public void A_rolled_chord_wider_than_the_hand_is_left_to_the_pedal()
    {
        Assert.Equal("", Kinds(Judge.Check(TwoVoices("*A3+C5/2", "r/4 C5/4"), Median)));
        Assert.Equal("Reach", Kinds(Judge.Check(TwoVoices("*C4+C5/2", "r/4 A3/4"), Median)));
    }

    [Fact]
    public void A_tied_key_is_struck_once()
    {
        var score = Written.Left(Metre.TwoFour, "r/4 *C2+E3/4~", "~C2+E3/4 C3/4");
        Assert.Empty(Judge.Check(score, Median).Faults);
    }

    // One stretch in twenty may be strained: C3-D4 needs 188.8 mm of 178 without strain.
    [Fact]
    public void One_strained_stretch_in_twenty_is_allowed_and_two_are_not()
    {
        var plain = "C3+C4/4 C3+C4/4 C3+C4/4 C3+C4/4";
        var strained = "C3+C4/4 C3+D4/4 C3+C4/4 C3+C4/4";
        var once = Written.Left(Metre.FourFour, strained, plain, plain, plain, plain);
        var twice = Written.Left(Metre.FourFour, strained, plain, plain, plain, strained);
        Assert.Empty(Judge.Check(once, Median).Faults);
        var faults = Judge.Check(twice, Median).Faults;
        Assert.Equal(["bar 1 beat 2", "bar 5 beat 2"], faults.Select(f => f.Place));
        Assert.All(faults, f => Assert.Equal((FaultKind.StrainedOften, 0.1, 0.05), (f.Kind, f.Need, f.Limit)));
        Assert.Contains("none is wanted", Judge.Check(once, Median with { NoStrain = true }).Faults[0].Message);
    }

    [Fact]
    public void Two_strained_stretches_running_are_a_fault_whatever_the_share()
    {
        var plain = "C3+C4/4 C3+C4/4 C3+C4/4 C3+C4/4";
        string[] bars = ["C3+C4/4 C3+D4/4 C3+D4/4 C3+C4/4", .. Enumerable.Repeat(plain, 10)];
        var fault = Assert.Single(Judge.Check(Written.Left(Metre.FourFour, bars), Median).Faults);
        Assert.Equal((FaultKind.StrainedTwice, "bar 1 beat 3"), (fault.Kind, fault.Place));
        bars[0] = "C3+D4/4 C3/8 r/8 C3+D4/4 C3+C4/4";
        Assert.Empty(Judge.Check(Written.Left(Metre.FourFour, bars), Median).Faults);
    }

    [Theory]
    [InlineData("C4+B4/4", "")]
    [InlineData("C4+C5/4", "OctaveUnwanted")]
    [InlineData("C4+E4+C5/4", "OctaveUnwanted")]
    [InlineData("*C4+E5/4", "OctaveUnwanted")]
    public void A_player_who_wants_no_octaves_gets_none(string bar, string kinds) =>
        Assert.Equal(
            kinds,
            Kinds(Judge.Check(Written.Right(Metre.FourFour, bar), new() { SpanMm = 260, NoOctaves = true }))
        );

    [Theory]
    [InlineData("C4/4 E4/4", "C4/2", "SharedKey", "bar 1 beat 1")]
    [InlineData("C4/2", "r/4 C4/4", "SharedKey", "bar 1 beat 2")]
    [InlineData("r/4 C4/4", "C4/2", "SharedKey", "bar 1 beat 2")]
    [InlineData("C4/4 r/4", "r/4 C4/4", "", "")]
    [InlineData("C9/4", "", "OffKeyboard", "bar 1 beat 1")]
    [InlineData("C4/4", "G0/4", "OffKeyboard", "bar 1 beat 1")]
    [InlineData("C12/4", "C-2/4", "OffKeyboard OffKeyboard", "bar 1 beat 1")]
    public void Both_hands_share_one_keyboard(string right, string left, string kinds, string place)
    {
        var verdict = Judge.Check(Written.Score(Metre.FourFour, (right, left)), Median);
        Assert.Equal(kinds, Kinds(verdict));
        Assert.All(verdict.Faults, f => Assert.Equal(place, f.Place));
    }

    [Fact]
    public void Crossing_hands_are_remarked_and_no_fault()
    {
        var verdict = Judge.Check(Written.Score(Metre.TwoFour, ("C4/4 C5/4", "E4/4 C3/4")), Median);
        Assert.True(verdict.IsPlayable);
        Assert.Equal(
            "bar 1: the left hand crosses the right: E4 lies above C4",
            Assert.Single(verdict.Remarks).ToString()
        );
    }

    // Common practice: in 6/8 a beat is a dotted quarter.
    [Theory]
    [InlineData(2, 4, "r/8 C9/8", "bar 1 beat 1.5")]
    [InlineData(2, 2, "r/4 C9/4", "bar 1 beat 1.5")]
    [InlineData(6, 8, "r/4. C9/8", "bar 1 beat 2")]
    [InlineData(6, 8, "r/8 C9/8", "bar 1 beat 1.333")]
    public void Places_count_the_beats_of_the_metre(int count, int unit, string bar, string place) =>
        Assert.Equal(place, Judge.Check(Written.Right(new(count, unit), bar), Median).Faults[0].Place);

    [Fact]
    public void A_score_of_nothing_is_playable_and_no_effort()
    {
        foreach (var score in (Score[])[Written.Score(Metre.TwoFour), Written.Right(Metre.TwoFour, "r/2", "")])
        {
            var verdict = Judge.Check(score, Median);
            Assert.True(verdict.IsPlayable);
            Assert.Equal(1, verdict.Effort.Overall);
            Assert.Empty(verdict.HardestBars(3));
        }
    }

    internal static string Kinds(Verdict verdict) => string.Join(' ', verdict.Faults.Select(f => f.Kind));

    private static Score TwoVoices(string upper, string lower)
    {
        var score = Written.Right(Metre.TwoFour, upper);
        var second = Written.Right(Metre.TwoFour, lower).Bars[0].Voices[0] with { Number = 2 };
        return score with { Bars = [score.Bars[0] with { Voices = [score.Bars[0].Voices[0], second] }] };
    }
}
