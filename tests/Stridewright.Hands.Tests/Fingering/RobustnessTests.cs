using CsCheck;
using Stridewright.Music;

namespace Stridewright.Hands.Tests;

/// <summary>Scores that nobody would write: three voices a hand, clusters, keys far apart, fingers written at random, hands of
/// any size with fingers missing.</summary>
public sealed class RobustnessTests
{
    private static readonly Gen<int[]> Chords = Gen.OneOf(
        Gen.Int[0, 127].Array[1, 3],
        Gen.Select(Gen.Int[30, 90], Gen.Int[1, 8]).Select((low, n) => Enumerable.Range(low, n).ToArray()),
        Gen.Int[48, 72].Array[1, 9]
    );

    private static readonly Gen<ScoreEvent> Events = Gen.Select(
            Chords,
            Gen.Int[1, 16],
            Gen.Int[0, 9],
            Gen.Bool,
            Gen.Int[0, 9]
        )
        .Select(
            (keys, length, finger, rolled, kind) =>
                new ScoreEvent(ScoreTime.Zero, ScoreTime.Sixteenth * length, new NoteValue(16))
                {
                    Rolled = rolled,
                    Notes =
                        kind == 0
                            ? []
                            : keys.Distinct()
                                .Order()
                                .Select(
                                    (k, i) =>
                                        new ScoreNote(Fingered.PitchOf(k))
                                        {
                                            Finger =
                                                finger is >= 1 and <= 5 && i == length % keys.Length ? finger : null,
                                            TieStart = kind == 1,
                                            TieStop = kind == 2,
                                        }
                                )
                                .ToValueList(),
                }
        );

    private static readonly Gen<Score> Scores = Gen.Select(Events.Array[1, 8], Gen.Bool)
        .Array[2, 6]
        .Select(voices =>
        {
            var made = voices.Select((v, i) => Voice(v.Item2 ? Hand.Right : Hand.Left, i + 1, v.Item1)).ToValueList();
            return new Score
            {
                Title = "random",
                Bars =
                [
                    new()
                    {
                        Number = "1",
                        Metre = Metre.FourFour,
                        Key = default,
                        Length = made.Select(v => v.Events[^1].At + v.Events[^1].Length).Max(),
                        Voices = made,
                    },
                ],
            };
        });

    [Fact]
    public void Any_score_is_fingered_for_any_hands_without_a_crossing_and_what_stays_without_is_told()
    {
        var (keysLeft, beyond) = (0, 0);
        Gen.Select(
                Scores,
                Gen.Double[100, 300],
                Gen.Int[1, 5].Array[0, 3],
                Gen.Enum<FingerDensity>(),
                Gen.Enum<KeptFingers>()
            )
            .Sample(
                (score, span, without, density, keep) =>
                {
                    var hands = new PlayerHands
                    {
                        SpanMm = span,
                        Right = new() { Without = without.Distinct().Order().ToValueList() },
                    };
                    var options = new FingeringOptions { Density = density, Keep = keep };
                    var made = Fingerer.Finger(score, hands, options);
                    var missing = made.Onsets.Any(o => o.Keys.Any(k => k.Finger is null));
                    var told = made.Remarks.Any(r => r.Message.Contains("no finger for", StringComparison.Ordinal));
                    _ = missing ? Interlocked.Increment(ref keysLeft) : 0;
                    _ = made.Onsets.Any(o => o.IsBeyondReach) ? Interlocked.Increment(ref beyond) : 0;
                    return missing == told
                        && made.Onsets.All(o => !IsCrossed(o))
                        && made.Onsets.All(o =>
                            o.Hand == Hand.Left || o.Keys.All(k => !without.Contains(k.Finger ?? 0))
                        )
                        && made.Score.Equals(Fingerer.Finger(score, hands, options).Score);
                },
                iter: 400
            );
        Assert.True(keysLeft > 40 && beyond > 40, $"{keysLeft} with keys left, {beyond} beyond: too few were tried");
    }

    private static bool IsCrossed(FingeredOnset onset)
    {
        var fingers = onset.Keys.Where(k => k is { IsHeld: false, Finger: not null }).Select(k => k.Finger!.Value);
        var rising = (onset.Hand == Hand.Right ? fingers : fingers.Reverse()).ToList();
        return rising.Zip(rising.Skip(1)).Any(f => f.First > f.Second || (f.First == f.Second && f.First != 1));
    }

    private static ScoreVoice Voice(Hand hand, int number, ScoreEvent[] events)
    {
        var time = ScoreTime.Zero;
        var placed = new List<ScoreEvent>();
        foreach (var e in events)
        {
            placed.Add(e with { At = time });
            time += e.Length;
        }
        return new(hand, number, placed.ToValueList());
    }
}
