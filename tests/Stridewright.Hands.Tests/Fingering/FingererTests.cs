using CsCheck;
using Stridewright.Music;

namespace Stridewright.Hands.Tests;

public sealed class FingererTests
{
    private static readonly PlayerHands Median = new();

    private static FingeredScore Finger(Score score, FingeringOptions? options = null, PlayerHands? hands = null) =>
        Fingerer.Finger(score, hands ?? Median, options);

    private static string Printed(FingeredScore made, Hand hand) =>
        string.Join(
            ' ',
            made.Score.Bars.SelectMany(b => b.Voices.Where(v => v.Hand == hand))
                .SelectMany(v => v.Events)
                .Where(e => e.Notes.Count > 0)
                .Select(e => string.Concat(e.Notes.Select(n => n.Finger?.ToString() ?? "-")))
        );

    [Fact]
    public void Both_hands_are_fingered_into_the_score()
    {
        var made = Finger(Written.Score(Metre.TwoFour, ("C5/8 E5/8 G5/8 C6/8", "C2/8 E3+G3+C4/8 G1/8 E3+G3+C4/8")));
        Assert.Equal("1 2 3 5", Printed(made, Hand.Right));
        Assert.Equal("5 531 5 531", Printed(made, Hand.Left));
        Assert.Empty(made.Remarks);
        Assert.Equal(8, made.Onsets.Count);
        Assert.All(made.Onsets, o => Assert.Equal(o.Cost, o.Terms.Sum(t => t.Points)));
    }

    [Fact]
    public void A_teachers_finger_stays_and_the_rest_is_worked_around_it()
    {
        var score = Fingered.Line(Hand.Right, [60, 62, 64, 65, 67]);
        Assert.Equal("1 2 3 4 5", Printed(Finger(score), Hand.Right));
        var marked = WithFinger(score, 2, 1);
        Assert.Equal("1 2 1 3 4", Printed(Finger(marked), Hand.Right));
        Assert.Equal("1 2 3 4 5", Printed(Finger(marked, new() { Keep = KeptFingers.None }), Hand.Right));
    }

    [Fact]
    public void Of_a_score_that_was_fingered_and_edited_only_the_edited_fingers_stay()
    {
        var ours = Finger(Fingered.Line(Hand.Right, [60, 62, 64, 65, 67])).Score;
        var edited = WithFinger(ours, 2, 1);
        Assert.Equal("1 2 1 4 5", Printed(Finger(edited), Hand.Right));
        Assert.Equal("1 2 1 3 4", Printed(Finger(edited, new() { Keep = KeptFingers.Edited }), Hand.Right));
    }

    [Fact]
    public void A_finger_that_cannot_be_is_reported_with_its_place_and_worked_anew()
    {
        var score = Written.Right(Metre.TwoFour, "r/4 C5+E5+G5/4");
        var made = Finger(WithFinger(score, 1, 5));
        Assert.Equal("135", Printed(made, Hand.Right));
        var remark = Assert.Single(made.Remarks);
        Assert.Equal(
            "bar 1 beat 2: the right hand cannot take C5, E5 and G5 with 5 on C5 as written; fingered anew",
            remark.ToString()
        );
    }

    [Theory]
    [InlineData("C4+E5/4", "15", "the right hand cannot take C4 and E5 in one grasp; roll or thin it")]
    [InlineData("C4+C6/4", "15", "the right hand cannot take C4 and C6 in one grasp; roll or thin it")]
    [InlineData("*C4+G4+E5/4", "125", "")]
    [InlineData("C4+D4+E4+F4+G4+A4/4", "112345", "")]
    [InlineData(
        "C4+D4+E4+F4+G4+A4+B4/4",
        "112-345",
        "the right hand has no finger for F4; leave out, or give to the other hand"
    )]
    public void What_is_beyond_a_hand_is_fingered_and_remarked(string bar, string fingers, string remark)
    {
        var made = Finger(Written.Right(Metre.TwoFour, bar));
        Assert.Equal(fingers, Printed(made, Hand.Right));
        Assert.Equal(remark, string.Join(';', made.Remarks.Select(r => r.Message)));
    }

    [Fact]
    public void A_key_that_cannot_be_held_is_left_to_the_pedal()
    {
        var score = Written.Score(Metre.TwoFour, ("", "C2/2"), ("", "r/4"));
        var bar = score.Bars[0];
        var second = new ScoreVoice(
            Hand.Left,
            2,
            [
                new(ScoreTime.Quarter, ScoreTime.Quarter, new NoteValue(4))
                {
                    Notes = [new(Pitch.Parse("C4")), new(Pitch.Parse("E4"))],
                },
            ]
        );
        var made = Finger(score with { Bars = [bar with { Voices = [.. bar.Voices, second] }] });
        Assert.Equal(
            "bar 1 beat 2: the left hand cannot hold C2 and take C4 and E4; fingered as if held by the pedal",
            Assert.Single(made.Remarks).ToString()
        );
    }

    // Common practice: 2 on a held key gives way to 5 when its octave is struck below.
    [Fact]
    public void A_finger_that_takes_over_on_a_held_key_is_printed_beside_the_first()
    {
        var score = WithFinger(Written.Right(Metre.FourFour, "C6/1"), 0, 2);
        var below = new ScoreVoice(
            Hand.Right,
            2,
            [new(ScoreTime.Half, ScoreTime.Half, new NoteValue(2)) { Notes = [new(Pitch.Parse("C5"))] }]
        );
        var bar = score.Bars[0];
        var made = Finger(score with { Bars = [bar with { Voices = [.. bar.Voices, below] }] });
        var held = made.Score.Bars[0].Voices[0].Events[0].Notes[0];
        Assert.Equal((2, 5), (held.Finger, held.NextFinger));
        Assert.Empty(made.Remarks);
        var free = Finger(
            score with
            {
                Bars = [bar with { Voices = [.. bar.Voices, below] }],
            },
            new() { Keep = KeptFingers.None }
        );
        var usual = free.Score.Bars[0].Voices[0].Events[0].Notes[0];
        Assert.Equal((5, null), (usual.Finger, usual.NextFinger));
    }

    [Fact]
    public void A_held_key_keeps_its_finger()
    {
        var score = Written.Right(Metre.FourFour, "G5/1");
        var inner = new ScoreVoice(
            Hand.Right,
            2,
            new[] { "C5", "D5", "E5", "D5" }
                .Select(
                    (name, i) =>
                        new ScoreEvent(ScoreTime.Quarter * i, ScoreTime.Quarter, new NoteValue(4))
                        {
                            Notes = [new(Pitch.Parse(name))],
                        }
                )
                .ToValueList()
        );
        var bar = score.Bars[0];
        var made = Finger(score with { Bars = [bar with { Voices = [.. bar.Voices, inner] }] });
        Assert.Equal("5 1 2 3 2", Printed(made, Hand.Right));
        Assert.All(made.Onsets.Skip(1), o => Assert.Equal(new FingeredKey(79, 5, true), o.Keys[^1]));
    }

    [Fact]
    public void A_key_repeated_too_fast_for_one_finger_changes_fingers()
    {
        var line = Fingered.Line(Hand.Right, [72, 72, 72, 72]);
        var slow = Printed(Finger(line, new() { QuartersPerMinute = 60 }), Hand.Right).Split(' ');
        var fast = Printed(Finger(line, new() { QuartersPerMinute = 120 }), Hand.Right).Split(' ');
        Assert.Single(slow.Distinct());
        Assert.All(fast.Zip(fast.Skip(1)), f => Assert.NotEqual(f.First, f.Second));
    }

    [Fact]
    public void Fewer_fingers_are_printed_when_fewer_are_wanted()
    {
        var bars = Enumerable.Repeat(("C5/8 D5/8 E5/8 F5/8", "C2/8 E3+G3+C4/8 G1/8 E3+G3+C4/8"), 6).ToArray();
        var score = Written.Score(Metre.TwoFour, bars);
        var (all, changes, hard) = (
            Count(Finger(score)),
            Count(Finger(score, new() { Density = FingerDensity.Changes })),
            Count(Finger(score, new() { Density = FingerDensity.Hard }))
        );
        Assert.Equal(72, all);
        Assert.True(changes is > 4 and < 36, $"{changes} of {all}");
        Assert.True(hard < all / 2, $"{hard} of {all}");
        Assert.Equal("1 - - -", Printed(Finger(score, new() { Density = FingerDensity.Changes }), Hand.Right)[..7]);
        Assert.Equal(
            Finger(score).Onsets.Select(o => o.Keys),
            Finger(score, new() { Density = FingerDensity.Hard }).Onsets.Select(o => o.Keys)
        );
    }

    [Fact]
    public void A_finger_that_cannot_be_used_is_not_taken()
    {
        var hands = new PlayerHands { Right = new() { Without = [3] } };
        var score = Written.Right(Metre.FourFour, "C5/8 D5/8 E5/8 F5/8 G5/8 C5+E5+G5/8 C5+E5+G5+C6/4");
        var made = Finger(score, hands: hands);
        Assert.Empty(made.Remarks);
        Assert.DoesNotContain('3', Printed(made, Hand.Right));
        Assert.DoesNotContain('0', Printed(made, Hand.Right));
    }

    [Fact]
    public void Nothing_to_play_is_no_fingering()
    {
        var made = Finger(Written.Right(Metre.TwoFour, "r/2", ""));
        Assert.Empty(made.Onsets);
        Assert.Empty(made.Remarks);
    }

    // Chords within a hand's reach, of any size of hand: never crossed, never beyond the span of a pair of fingers.
    [Fact]
    public void No_chord_is_crossed_or_wider_than_the_hand() =>
        Gen.Select(Gen.Int[40, 80], Gen.Int[1, 6].Array[0, 5], Gen.Double[150, 260], Gen.Bool)
            .Sample(
                (low, steps, span, right) =>
                {
                    var keys = steps.Aggregate(new List<int> { low }, (list, step) => [.. list, list[^1] + step]);
                    var side = right ? Hand.Right : Hand.Left;
                    var text = string.Join('+', keys.Select(k => Fingered.PitchOf(k).ToString())) + "/4";
                    var score = right ? Written.Right(Metre.TwoFour, text) : Written.Left(Metre.TwoFour, text);
                    var made = Finger(score, hands: new() { SpanMm = span });
                    var onset = Assert.Single(made.Onsets);
                    var fingers = onset.Keys.Select(k => k.Finger ?? 0).ToArray();
                    if (onset.IsBeyondReach)
                    {
                        return made.Remarks.Count > 0 && fingers.Count(f => f > 0) == Math.Min(5, keys.Count);
                    }
                    var grasp = new Grasp
                    {
                        Onset = null!,
                        Keys = Grasp.FromThumb([.. keys], side),
                        IsStruck = [.. keys.Select(_ => true)],
                        Fingerings = [],
                    };
                    byte[] fromThumb = [.. (right ? fingers : fingers.Reverse()).Select(f => (byte)f)];
                    return Enumerable
                        .Range(0, keys.Count)
                        .All(j => Enumerable.Range(0, j).All(i => HandLimits.Fits(grasp, fromThumb, i, j, side, span)));
                },
                iter: 2000
            );

    private static int Count(FingeredScore made) =>
        made.Score.Bars.SelectMany(b => b.Voices).SelectMany(v => v.Events).Sum(e => e.Notes.Count(n => n.Finger > 0));

    /// <summary>The score with a finger at the lowest note of one event of its first voice.</summary>
    private static Score WithFinger(Score score, int at, int finger)
    {
        var bar = score.Bars[0];
        var voice = bar.Voices[0];
        var events = voice.Events.Select(
            (e, i) =>
                i != at
                    ? e
                    : e with
                    {
                        Notes = e.Notes.Select((n, k) => k == 0 ? n with { Finger = finger } : n).ToValueList(),
                    }
        );
        var marked = voice with { Events = events.ToValueList() };
        return score with { Bars = [bar with { Voices = [marked, .. bar.Voices.Skip(1)] }] };
    }
}
