using CsCheck;
using Stridewright.Music;

namespace Stridewright.Hands.Tests;

public sealed class AssessTests
{
    private const string Stride = "C2/8 E3+G3/8 G2/8 E3+G3/8";

    // At an octave of 165.1 mm: out of reach below a span of 169.1, strained below 192.1 (published zones, as derived in Reach).
    [Theory]
    [InlineData("C4+C5/8 D4/8 E4/4", 170, 193)]
    // One strained chord in three is too often: the octaves ask for 193 at once.
    [InlineData("C4+C5/8 C4+E4/8 C4+E4/4", 193, 193)]
    // The tenth C to E is 212.4 mm wide, and a hand rolls over 1.3 spans.
    [InlineData("C4/8 *C4+E5/8 C4/4", 164, 164)]
    public void The_spans_that_a_piece_needs(string bar, int playable, int free)
    {
        // Nineteen easy stretches beside the one allow it to be strained.
        var easy = Enumerable.Repeat(
            "C4+E4/8 C4+E4/8 C4+E4/8 C4+E4/8",
            bar.Contains("D4", StringComparison.Ordinal) ? 10 : 0
        );
        var score = Written.Right(Metre.TwoFour, [bar, .. easy]);
        var assessed = Assess.Of(score, new());
        Assert.Equal(new SpanNeed(playable, free), assessed.Right);
        Assert.Equal(new SpanNeed((int)SpanText.LeastMm, (int)SpanText.LeastMm), assessed.Left);
        foreach (var (span, strain) in new[] { (playable, false), (free, true) })
        {
            var hands = new PlayerHands { NoStrain = strain };
            Assert.Equal([], ReachFaults(Judge.Check(score, hands with { SpanMm = span }, 20)));
            Assert.NotEmpty(ReachFaults(Judge.Check(score, hands with { SpanMm = span - 1 }, 20)));
        }
    }

    private static IEnumerable<FaultKind> ReachFaults(Verdict verdict) =>
        verdict
            .Faults.Select(f => f.Kind)
            .Where(k => k is not (FaultKind.Leap or FaultKind.RepeatedKey or FaultKind.RepeatedOctave));

    [Fact]
    public void The_comfortable_tempo_is_where_leaps_are_as_naive_pointing()
    {
        // C2 to E3 is 4.18 bits on an octave of 165.1 mm (212.4 mm, a key of 23.66); 11 bits a second (Fitts 1954) give it
        // 0.38 s, the eighth of quarter = 79. G2 to E3 is nearer.
        var score = Written.Left(Metre.TwoFour, Stride, Stride, Stride, Stride);
        var comfortable = Assess.Of(score, new(), 100).Comfortable!;
        Assert.Equal((Hand.Left, EffortKind.Leap), (comfortable.Hand, comfortable.Binding));
        Assert.Equal(79, comfortable.QuartersPerMinute, 0.6);
        Assert.Equal(comfortable.QuartersPerMinute / 100, comfortable.Speed, 1e-9);
        // It is the same tempo from wherever it is looked for.
        Assert.Equal(comfortable.QuartersPerMinute, Assess.Of(score, new(), 60).Comfortable!.QuartersPerMinute, 1e-6);
        var slow = new PlayerHands { LeapBitsPerSecond = 8 };
        Assert.Equal(
            comfortable.QuartersPerMinute / 2,
            Assess.Of(score, slow, 60).Comfortable!.QuartersPerMinute,
            1e-6
        );
    }

    [Fact]
    public void Repeated_keys_bind_the_tempo_too()
    {
        // Four fifths of six strokes a second: sixteenths at quarter = 72.
        var score = Written.Right(Metre.TwoFour, "C5/16 C5/16 C5/16 C5/16 C5/4");
        var comfortable = Assess.Of(score, new(), 60).Comfortable!;
        Assert.Equal(EffortKind.Repetition, comfortable.Binding);
        Assert.Equal(72, comfortable.QuartersPerMinute, 1e-6);
        Assert.Null(Assess.Of(Written.Right(Metre.TwoFour, "r/2"), new()).Comfortable);
    }

    [Theory]
    [InlineData("C3+E4/8 r/8 r/4", "Roll", "roll C3 and E4")]
    [InlineData("C3/2", "", "")]
    [InlineData("C2+C4/8 r/8 r/4", "DropOuter", "leave C4 out of C2 and C4")]
    public void The_smallest_change_removes_the_worst_spot(string left, string kind, string words)
    {
        var score = Written.Score(Metre.TwoFour, ("C5/4 r/4", left));
        var change = Assess.Of(score, new()).Change;
        Assert.Equal(kind, change?.Kind.ToString() ?? "");
        Assert.EndsWith(words, change?.Message ?? "", StringComparison.Ordinal);
    }

    [Fact]
    public void An_inner_note_goes_before_the_octave_and_a_tempo_before_a_stroke()
    {
        var hands = new PlayerHands { Right = new OneHand { Without = [4] } };
        var full = Written.Right(Metre.TwoFour, "C4+E4+G4+Bb4+C5/4 r/4");
        var change = Assess.Of(full, hands).Change!;
        Assert.Equal((ChangeKind.DropInner, "bar 1 beat 1"), (change.Kind, change.Place));
        // 6.13 strokes a second of one key are too many; at 95 % of the tempo they are not.
        var fast = Written.Right(Metre.TwoFour, "C5/16 C5/16 C5/16 C5/16 C5/4");
        var slower = Assess.Of(fast, new(), 92).Change!;
        Assert.Equal((ChangeKind.Slower, 0.95), (slower.Kind, slower.Speed));
    }

    [Fact]
    public void The_change_named_does_what_it_says()
    {
        Gen.Select(Gen.Int[60, 72], Gen.Int[13, 22], Gen.Int[0, 3])
            .Sample(
                (low, wide, bar) =>
                {
                    var bars = Enumerable
                        .Range(0, 4)
                        .Select(i => i == bar ? $"{Name(low)}+{Name(low + wide)}/4 r/4" : "C5/4 E5/4");
                    var score = Written.Right(Metre.TwoFour, [.. bars]);
                    var assessed = Assess.Of(score, new() { SpanMm = 170 });
                    return assessed.Verdict.IsPlayable
                        || assessed.Change is { } change
                            && change.Bar == bar
                            && change.Place == $"bar {bar + 1} beat 1";
                },
                iter: 100
            );
        static string Name(int key) =>
            "C C# D Eb E F F# G Ab A Bb B".Split(' ')[key % 12]
            + (key / 12 - 1).ToString(System.Globalization.CultureInfo.InvariantCulture);
    }

    [Fact]
    public void Cautions_come_where_strain_or_speed_is_high_and_nowhere_else()
    {
        Assert.Empty(Assess.Of(Written.Right(Metre.TwoFour, "C5/4 D5/4", "E5/4 C5/4"), new()).Cautions);
        var strained = Assess.Of(Written.Right(Metre.TwoFour, "C4+C5/4 r/4"), new() { SpanMm = 185 }).Cautions;
        Assert.Equal([EffortKind.Strain, null, null], strained.Select(c => c.Kind));
        Assert.Contains("right hand is strained in bar 1:", strained[0].Sentence, StringComparison.Ordinal);
        Assert.Contains(strained, c => c.Sentence.StartsWith("Pain means stop", StringComparison.Ordinal));
        Assert.All(strained, c => Assert.Contains("Performing Arts Medicine", c.Source, StringComparison.Ordinal));
        var leaps = Assess.Of(Written.Left(Metre.TwoFour, Stride), new(), 110).Cautions;
        Assert.Equal(EffortKind.Leap, leaps[0].Kind);
        var again = Assess.Of(Written.Right(Metre.TwoFour, "C5/16 C5/16 C5/16 C5/16 C5/4"), new(), 80).Cautions;
        Assert.Equal(EffortKind.Repetition, again[0].Kind);
    }

    [Fact]
    public void Hard_bars_say_why()
    {
        var score = Written.Score(
            Metre.TwoFour,
            ("C5/4 D5/4", "C3/4 G3/4"),
            ("C5/8 D5/8 E5/8 D5/8", Stride),
            ("C4+C5/8 E4+E5/8 G4+G5/8 C5+C6/8", "C3/4 G3/4")
        );
        var hard = Assess.Of(score, new()).Hardest;
        Assert.Equal("3", hard[0].Bar.Number);
        Assert.StartsWith("right hand: a wide hand", hard[0].Why, StringComparison.Ordinal);
        Assert.StartsWith("left hand: ", hard[1].Why, StringComparison.Ordinal);
        Assert.Contains("fast leaps", hard[1].Why, StringComparison.Ordinal);
    }
}
