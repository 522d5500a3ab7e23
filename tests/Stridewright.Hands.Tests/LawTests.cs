using CsCheck;
using Stridewright.Music;

namespace Stridewright.Hands.Tests;

/// <summary>Laws that follow from the definitions, on random hands and scores.</summary>
public sealed class LawTests
{
    private static readonly Gen<double> Spans = Gen.Double[150, 280];
    private static readonly Gen<int> Keys = Gen.Int[Keyboard.LowestKey, Keyboard.HighestKey];

    /// <summary>A bar of eighths, one in five a rest: singles, close chords and some octaves and ninths.</summary>
    private static Gen<string> Bar(int low, int high) =>
        Gen.Select(Gen.Int[low, high], Gen.Int[0, 24])
            .Select(
                (key, shape) =>
                    shape switch
                    {
                        < 5 => "r",
                        < 14 => Name(key),
                        < 20 => $"{Name(key)}+{Name(key + 4)}+{Name(key + 7)}",
                        < 24 => $"{Name(key)}+{Name(key + 12)}",
                        _ => $"{Name(key)}+{Name(key + 14)}",
                    } + "/8"
            )
            .Array[4]
            .Select(strokes => string.Join(' ', strokes));

    private static readonly Gen<Score> Scores = Gen.Select(Bar(72, 78), Bar(40, 48))
        .Array[1, 6]
        .Select(bars => Written.Score(Metre.TwoFour, bars));

    [Fact]
    public void A_larger_span_never_lies_worse() =>
        Gen.Select(Spans, Gen.Double[0, 60], Keys, Keys)
            .Sample(
                (span, more, a, b) =>
                    new Reach(new() { SpanMm = span + more }).Of(a, b) <= new Reach(new() { SpanMm = span }).Of(a, b)
            );

    [Fact]
    public void A_larger_span_never_shifts_further_and_a_shift_is_never_more_than_the_keys_move() =>
        Gen.Select(Spans, Gen.Double[0, 60], Keys, Keys, Gen.Int[0, 16], Gen.Int[0, 16])
            .Sample(
                (span, more, a, b, wideA, wideB) =>
                {
                    var reach = new Reach(new() { SpanMm = span });
                    var (highA, highB) = (Math.Min(a + wideA, 127), Math.Min(b + wideB, 127));
                    var shift = Leap.Shift(reach, a, highA, b, highB);
                    var larger = Leap.Shift(new(new() { SpanMm = span + more }), a, highA, b, highB);
                    return larger <= shift + 1e-9 && shift <= reach.Keyboard.Distance(a, b) + 1e-9;
                }
            );

    // True of scores without rolled chords. A rolled chord wider than the hand is left to the pedal, and a larger hand
    // that can hold it may have to hold it with what follows.
    [Fact]
    public void What_is_playable_stays_so_for_a_larger_hand_and_a_slower_tempo()
    {
        var (playable, unplayable) = (0, 0);
        Gen.Select(Scores, Gen.Double[185, 240], Gen.Double[0, 40], Gen.Double[50, 120], Gen.Double[0.5, 1])
            .Sample(
                (score, span, more, tempo, slower) =>
                {
                    if (!Judge.Check(score, new() { SpanMm = span }, tempo).IsPlayable)
                    {
                        Interlocked.Increment(ref unplayable);
                        return true;
                    }
                    Interlocked.Increment(ref playable);
                    return Judge.Check(score, new() { SpanMm = span + more }, tempo).IsPlayable
                        && Judge.Check(score, new() { SpanMm = span }, tempo * slower).IsPlayable;
                },
                iter: 3000
            );
        Assert.True(
            playable > 300 && unplayable > 300,
            $"{playable} playable, {unplayable} not: the law was not tried"
        );
    }

    [Fact]
    public void Moving_by_an_octave_changes_no_stretch_no_fault_and_no_effort() =>
        Gen.Select(Scores, Spans)
            .Sample(
                (score, span) =>
                {
                    var here = Judge.Check(score, new() { SpanMm = span });
                    var there = Judge.Check(score.MovedByOctaves(1), new() { SpanMm = span });
                    return here.Faults.Select(f => (f.Kind, f.Hand, f.Place))
                            .SequenceEqual(there.Faults.Select(f => (f.Kind, f.Hand, f.Place)))
                        && Math.Abs(here.Effort.Overall - there.Effort.Overall) < 1e-6;
                },
                iter: 500
            );

    [Fact]
    public void Faster_is_never_less_effort() =>
        Gen.Select(Scores, Gen.Double[40, 200], Gen.Double[1, 2])
            .Sample(
                (score, tempo, faster) =>
                    Judge.Check(score, new(), tempo).Effort.Overall
                    <= Judge.Check(score, new(), tempo * faster).Effort.Overall + 1e-9,
                iter: 500
            );

    [Fact]
    public void The_same_score_gives_the_same_verdict() =>
        Scores.Sample(score => Judge.Check(score, new()).Equals(Judge.Check(score, new())), iter: 200);

    private static string Name(int key) =>
        "C C# D Eb E F F# G Ab A Bb B".Split(' ')[key % 12]
        + (key / 12 - 1).ToString(System.Globalization.CultureInfo.InvariantCulture);
}
