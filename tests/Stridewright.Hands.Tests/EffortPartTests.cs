using Stridewright.Music;

namespace Stridewright.Hands.Tests;

/// <summary>Each part of effort answers to what it is about; common practice.</summary>
public sealed class EffortPartTests
{
    [Theory]
    [InlineData(EffortKind.Reach, "C5/8 D5/8 E5/8 F5/8", "C4+C5/8 D4+D5/8 E4+E5/8 F4+F5/8")]
    [InlineData(EffortKind.Strain, "C4+C5/8 D4/8 E4/8 F4/8", "C4+D5/8 D4/8 E4/8 F4/8")]
    [InlineData(EffortKind.Leap, "C5/8 D5/8 E5/8 F5/8", "C4/8 D6/8 E4/8 F6/8")]
    [InlineData(EffortKind.Density, "C5/4 E5/4", "C5/8 D5/8 E5/8 F5/8")]
    [InlineData(EffortKind.Density, "C4+E4/4 C4+E4/4", "C4+E4+G4/4 C4+E4+G4/4")]
    [InlineData(EffortKind.Repetition, "C5/8 D5/8 C5/8 D5/8", "C5/8 C5/8 C5/8 C5/8")]
    [InlineData(EffortKind.Repetition, "C5/8 C5/8 C5/8 C5/8", "C5/16 C5/16 C5/16 C5/16 C5/16 C5/16 C5/16 C5/16")]
    [InlineData(EffortKind.Independence, "C5/8 D5/8 E5/8 F5/8", "C5/16 D5/8 E5/16 F5/4")]
    [InlineData(EffortKind.Reading, "C5/8 D5/8 E5/8 F5/8", "C5/8 D#5/8 E5/8 F#5/8")]
    [InlineData(EffortKind.Reading, "C5/8 D5/8 E5/8~ E5/8", "C5/8~ C5/8~ C5/8~ C5/8")]
    [InlineData(EffortKind.Reading, "C4/8 D5/8 E4/8 F5/8", "C2/8 D5/8 E2/8 F5/8")] // no octave sign takes these lines away
    public void A_part_rises_with_what_it_is_about(EffortKind kind, string less, string more)
    {
        Assert.True(Amount(kind, less) < Amount(kind, more));
        static double Amount(EffortKind kind, string bar) =>
            Judge
                .Check(Written.Right(Metre.TwoFour, bar, bar), new())
                .Effort.Right.Parts.Single(p => p.Kind == kind)
                .Amount;
    }

    [Fact]
    public void The_other_hand_marking_the_beat_and_dividing_it_otherwise_is_harder()
    {
        const string held = "C5/16 D5/8 E5/16~ E5/16 F5/8.";
        Assert.True(Independence(held, "r/2") < Independence(held, "C3/8 G3/8 C3/8 G3/8"));
        const string even = "C3/16 D3/16 E3/16 D3/16 C3/4";
        Assert.True(Independence("C5/8 D5/8 E5/4", even) < Independence(Triplet, even));
        static double Independence(string right, string left)
        {
            var score = right == Triplet ? WithTriplet(left) : Written.Score(Metre.TwoFour, (right, left));
            return Judge.Check(score, new()).Effort.Right.Parts.Single(p => p.Kind == EffortKind.Independence).Amount;
        }
    }

    private const string Triplet = "triplet";

    // Three eighths in the time of two, then a quarter, over a left hand.
    private static Score WithTriplet(string left)
    {
        var score = Written.Score(Metre.TwoFour, ("C5/8 D5/8 E5/4", left));
        var third = new NoteValue(8, 0, 3, 2);
        ScoreEvent Note(int place, string pitch) =>
            new(new ScoreTime(place, 12), third.Length, third) { Notes = [new(Pitch.Parse(pitch))] };
        var last = score.Bars[0].Voices[0].Events[^1];
        var voice = score.Bars[0].Voices[0] with { Events = [Note(0, "C5"), Note(1, "D5"), Note(2, "E5"), last] };
        return score with { Bars = [score.Bars[0] with { Voices = [voice, score.Bars[0].Voices[1]] }] };
    }

    [Fact]
    public void Parts_and_one_add_up_to_the_value()
    {
        var effort = Judge
            .Check(
                Written.Score(Metre.TwoFour, ("C4+C5/8 D5/8 E5/4", "C2/8 E3+G3/8 G2/8 E3+G3/8"), ("C5/2", "r/2")),
                new()
            )
            .Effort;
        Assert.Equal(effort.Right.Value, 1 + effort.Right.Parts.Sum(p => p.Points), 1e-9);
        Assert.Equal(effort.Bars[0].Left, 1 + effort.Bars[0].LeftParts.Sum(p => p.Points), 1e-9);
        Assert.Equal(Enum.GetValues<EffortKind>(), effort.Left.Parts.Select(p => p.Kind));
        Assert.Equal((1.0, 0), (effort.Bars[1].Left, effort.Bars[1].LeftParts.Count));
    }
}
