using Stridewright.Music;
using Stridewright.Practice.Tests.Takes;

namespace Stridewright.Practice.Tests;

public sealed class AlignmentAccuracyTests(ITestOutputHelper output)
{
    private static readonly (string Name, TakeWishes Wishes)[] Faults =
    [
        ("as written", new()),
        ("tempo curve", new() { Curve = 0.5 }),
        ("jitter 30 ms", new() { Jitter = 0.03 }),
        ("chords spread 60 ms a note", new() { Spread = 0.06, Jitter = 0.01 }),
        (
            "hands apart 200 ms",
            new()
            {
                HandsApart = 0.2,
                Jitter = 0.01,
                Curve = 0.3,
            }
        ),
        (
            "wrong 5 %",
            new()
            {
                Wrong = 0.05,
                Jitter = 0.015,
                Curve = 0.2,
            }
        ),
        (
            "wrong octaves 5 %",
            new()
            {
                Wrong = 0.05,
                WrongOctave = 1,
                Jitter = 0.015,
                Curve = 0.2,
            }
        ),
        (
            "missing 5 %",
            new()
            {
                Missing = 0.05,
                Jitter = 0.015,
                Curve = 0.2,
            }
        ),
        (
            "extra 5 %",
            new()
            {
                Extra = 0.05,
                Jitter = 0.015,
                Curve = 0.2,
            }
        ),
        (
            "hesitations",
            new()
            {
                Hesitations = 8,
                Jitter = 0.02,
                Curve = 0.2,
            }
        ),
        (
            "trills",
            new()
            {
                Trills = 0.3,
                Jitter = 0.02,
                Curve = 0.2,
            }
        ),
        (
            "left hand alone",
            new()
            {
                Alone = Hand.Left,
                Jitter = 0.02,
                Missing = 0.02,
                Extra = 0.02,
            }
        ),
        (
            "right hand alone",
            new()
            {
                Alone = Hand.Right,
                Jitter = 0.02,
                Missing = 0.02,
                Extra = 0.02,
            }
        ),
        (
            "a quarter of it",
            new()
            {
                Part = 0.25,
                Jitter = 0.02,
                Missing = 0.02,
                Extra = 0.02,
            }
        ),
        (
            "slow",
            new()
            {
                Quarter = 1.5,
                Curve = 0.3,
                Jitter = 0.04,
                Missing = 0.03,
                Wrong = 0.03,
                Extra = 0.03,
            }
        ),
        (
            "all of it",
            new()
            {
                Curve = 0.4,
                Jitter = 0.03,
                Spread = 0.04,
                HandsApart = 0.08,
                Missing = 0.03,
                Wrong = 0.03,
                Extra = 0.03,
                Hesitations = 4,
            }
        ),
        (
            "restarts",
            new()
            {
                Restarts = 4,
                Jitter = 0.02,
                Curve = 0.2,
            }
        ),
        (
            "skips",
            new()
            {
                Skips = 2,
                Jitter = 0.02,
                Curve = 0.2,
            }
        ),
        (
            "jumps back",
            new()
            {
                JumpsBack = 2,
                Jitter = 0.02,
                Curve = 0.2,
            }
        ),
        (
            "all of it and jumps",
            new()
            {
                Curve = 0.3,
                Jitter = 0.02,
                Spread = 0.03,
                HandsApart = 0.05,
                Missing = 0.02,
                Wrong = 0.02,
                Extra = 0.02,
                Hesitations = 3,
                Restarts = 3,
                Skips = 1,
                JumpsBack = 1,
            }
        ),
    ];

    private static readonly (string Name, TakeWishes Wishes)[] Expressive =
    [
        ("study, steady", new() { Quarter = 0.8, Jitter = 0.01 }),
        (
            "study, rubato",
            new()
            {
                Quarter = 0.8,
                Curve = 0.7,
                Jitter = 0.015,
            }
        ),
        (
            "study, hands apart 150 ms",
            new()
            {
                Quarter = 0.8,
                Curve = 0.3,
                Jitter = 0.015,
                HandsApart = 0.15,
            }
        ),
        (
            "study, rolled 100 ms",
            new()
            {
                Quarter = 0.8,
                Curve = 0.3,
                Jitter = 0.015,
                Spread = 0.1,
            }
        ),
        (
            "study, trills",
            new()
            {
                Quarter = 0.8,
                Curve = 0.3,
                Jitter = 0.015,
                Trills = 0.4,
            }
        ),
        (
            "study, expressive",
            new()
            {
                Quarter = 0.8,
                Curve = 0.6,
                Jitter = 0.02,
                HandsApart = 0.08,
                Spread = 0.05,
                Trills = 0.1,
                Missing = 0.01,
                Wrong = 0.01,
                Extra = 0.01,
                Hesitations = 3,
            }
        ),
        (
            "study, brisk",
            new()
            {
                Quarter = 0.45,
                Curve = 0.5,
                Jitter = 0.012,
                HandsApart = 0.04,
                Spread = 0.03,
                Trills = 0.1,
                Missing = 0.02,
                Wrong = 0.01,
                Extra = 0.02,
            }
        ),
        (
            "study, jumps",
            new()
            {
                Quarter = 0.8,
                Curve = 0.3,
                Jitter = 0.015,
                Restarts = 3,
                Skips = 1,
            }
        ),
    ];

    internal static TakeWishes FaultsFor(string name) => Faults.Concat(Expressive).First(f => f.Name == name).Wishes;

    [Fact]
    public void Notes_are_found_in_takes_with_known_faults()
    {
        var clock = System.Diagnostics.Stopwatch.StartNew();
        output.WriteLine(TakeScorer.Head);
        foreach (var (name, wishes) in Faults)
        {
            var scorer = new TakeScorer();
            for (var seed = 0; seed < 52; seed++)
            {
                scorer.Add(MadeTake.Of(Pieces.Samples[seed % Pieces.Samples.Count], wishes, seed));
            }
            output.WriteLine(scorer.Row(name));
        }
        foreach (var (name, wishes) in Expressive)
        {
            var scorer = new TakeScorer();
            for (var seed = 0; seed < 48; seed++)
            {
                scorer.Add(MadeTake.Of(Studies.All[seed % Studies.All.Count], wishes, seed));
            }
            output.WriteLine(scorer.Row(name));
        }
        output.WriteLine(clock.Elapsed.ToString());
    }
}
