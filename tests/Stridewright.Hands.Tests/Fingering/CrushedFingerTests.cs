using CsCheck;
using Stridewright.Music;

namespace Stridewright.Hands.Tests;

/// <summary>Fingers of crushed notes.</summary>
public sealed class CrushedFingerTests
{
    [Theory]
    // A black key a semitone below slides into the white one with one finger (trade.md 3: black to white preferred).
    [InlineData("D#5", "E5")]
    [InlineData("F#5", "G5")]
    [InlineData("A#4", "B4")]
    [InlineData("Eb5", "C5+E5")]
    [InlineData("F#5", "G4+G5")]
    public void A_black_key_slides_into_the_white_one_beside_it(string crushed, string keys)
    {
        var (own, goal) = Fingers(Score(Hand.Right, [crushed], keys.Split('+')));
        Assert.Equal(goal[^1], own.Single());
    }

    [Theory]
    [InlineData("E5", "F5")]
    [InlineData("B4", "C5")]
    [InlineData("F5", "F#5")]
    public void Other_neighbours_take_another_finger(string crushed, string key)
    {
        var (own, goal) = Fingers(Score(Hand.Right, [crushed], [key]));
        Assert.NotEqual(goal.Single(), own.Single());
    }

    [Fact]
    public void Crushed_notes_before_a_chord_leave_the_fingers_that_lie_ready()
    {
        var (own, goal) = Fingers(Score(Hand.Right, ["D5"], ["C4", "E4", "C5"]));
        Assert.DoesNotContain(own.Single(), goal[..2]);
    }

    [Fact]
    public void A_written_finger_holds_and_the_others_are_worked_around_it()
    {
        var score = Score(Hand.Right, ["D5", "E5"], ["F5"], finger: 4);
        Assert.Equal(4, Fingers(score).Crushed[0]);
        Assert.NotEqual(4, Fingers(score, KeptFingers.None).Crushed[0]);
        Assert.Equal(4, Fingers(score, KeptFingers.Edited).Crushed[0]);
    }

    /// <summary>The rules summed by hand over every choice of fingers, against the search's own choice.</summary>
    [Fact]
    public void No_other_fingers_are_cheaper() =>
        Gen.Select(Gen.Bool, Gen.Int[60, 72].Array[1, 4], Gen.Int[60, 72])
            .Sample(
                (isRight, crushed, goal) =>
                {
                    var side = isRight ? Hand.Right : Hand.Left;
                    string[] names = [.. crushed.Select(NameOf)];
                    var (own, strokes) = Fingers(Score(side, names, [NameOf(goal)]));
                    var line = new LineCosts(CostTable.Shipped, FingerHand.Of(Fingered.Usual, side));
                    var cheapest = Every(crushed.Length).Min(f => Cost(line, crushed, f, goal, strokes.Single()));
                    Assert.Equal(cheapest, Cost(line, crushed, own, goal, strokes.Single()));
                },
                iter: 500
            );

    private static int Cost(LineCosts line, int[] crushed, int[] fingers, int goal, int goalFinger)
    {
        var total = 0;
        for (var i = 0; i < crushed.Length; i++)
        {
            var (to, toFinger) = i + 1 < crushed.Length ? (crushed[i + 1], fingers[i + 1]) : (goal, goalFinger);
            var isSlide =
                fingers[i] == toFinger
                && Math.Abs(crushed[i] - to) == 1
                && Keyboard.IsBlack(crushed[i])
                && !Keyboard.IsBlack(to);
            var sum = new CostSum();
            if (!isSlide)
            {
                line.AddWeak(ref sum, fingers[i], isSingle: true);
                line.AddColour(ref sum, -1, crushed[i], fingers[i], -1, 1);
                line.AddPair(ref sum, crushed[i], fingers[i], to, toFinger, line.Table.Hop, 1);
            }
            total += sum.Total - (isSlide ? 1 : 0);
        }
        return total;
    }

    private static IEnumerable<int[]> Every(int count) =>
        count == 0
            ?
            [
                [],
            ]
            : Every(count - 1).SelectMany(f => Enumerable.Range(1, 5).Select(finger => (int[])[.. f, finger]));

    private static (int[] Crushed, int[] Stroke) Fingers(Score score, KeptFingers keep = KeptFingers.All)
    {
        var options = new FingeringOptions { Keep = keep };
        var fingered = Fingerer.Finger(score, Fingered.Usual, options, TestContext.Current.CancellationToken).Score;
        var e = fingered.Bars[0].Voices[0].Events[0];
        return ([.. e.Graces.Select(n => n.Finger!.Value)], [.. e.Notes.Select(n => n.Finger!.Value)]);
    }

    private static string NameOf(int key) => "C C# D D# E F F# G G# A A# B".Split(' ')[key % 12] + (key / 12 - 1);

    private static Score Score(Hand side, string[] crushed, string[] keys, int? finger = null) =>
        new()
        {
            Title = "crushed",
            Bars =
            [
                new()
                {
                    Number = "1",
                    Metre = Metre.FourFour,
                    Key = default,
                    Length = ScoreTime.Whole,
                    Voices =
                    [
                        new(
                            side,
                            1,
                            [
                                new(ScoreTime.Zero, ScoreTime.Whole, new NoteValue(1))
                                {
                                    Notes = keys.Select(k => new ScoreNote(Pitch.Parse(k))).ToValueList(),
                                    Graces = crushed
                                        .Select(
                                            (k, i) => new ScoreNote(Pitch.Parse(k)) { Finger = i == 0 ? finger : null }
                                        )
                                        .ToValueList(),
                                },
                            ]
                        ),
                    ],
                },
            ],
        };
}
