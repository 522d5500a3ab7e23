using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>One part of the leap test, played at one tempo.</summary>
/// <param name="IsLeaps">Leaps out and back, growing wider; else one key again and again.</param>
/// <param name="QuartersPerMinute">The click.</param>
/// <param name="Keys">MIDI numbers in order.</param>
/// <param name="Seconds">From one stroke to the next.</param>
public sealed record LeapTestPart(bool IsLeaps, double QuartersPerMinute, ValueList<int> Keys, double Seconds);

/// <summary>
/// A short test of one hand: leaps that grow from an octave to two, in eighths to a click that is faster in each part; then
/// one key with one finger, in sixteenths. What is landed gives the hand's limits (docs/leap-test.md).
/// </summary>
public static class LeapTest
{
    private const int BarsOfLeaps = 4,
        LeapsInBar = 4,
        BarsOfStrokes = 2,
        StrokesInBar = 8;

    // About a quarter faster each: at the middle width from 7 to 18 bits a second, below naive pointing (Fitts 1954) to above
    // the limit of practised leaps. Strokes from 4 to 8 a second: one finger taps 6 to 7 times (from memory).
    private static readonly double[] LeapTempi = [50, 63, 79, 100, 126],
        StrokeTempi = [60, 75, 90, 105, 120];

    private static readonly int[] Widths = [12, 16, 19, 24];

    /// <summary>The parts for a hand: the left one leaps up from C2, the right one down from C6.</summary>
    public static ValueList<LeapTestPart> Parts(Hand hand)
    {
        var (home, way) = hand == Hand.Left ? (36, 1) : (84, -1);
        var leaps = Widths.SelectMany(w => new[] { home, home + way * w, home, home + way * w }).ToValueList();
        var strokes = Enumerable.Repeat(home + 12 * way, BarsOfStrokes * StrokesInBar).ToValueList();
        return
        [
            .. LeapTempi.Select(tempo => new LeapTestPart(true, tempo, leaps, 30 / tempo)),
            .. StrokeTempi.Select(tempo => new LeapTestPart(false, tempo, strokes, 15 / tempo)),
        ];
    }

    /// <summary>The test as a score: each part with its tempo, and a bar of rest before the next.</summary>
    public static Score Write(Hand hand)
    {
        var bars = new List<DraftBar>();
        var parts = Parts(hand);
        for (var p = 0; p < parts.Count; p++)
        {
            var (part, unit) = (parts[p], parts[p].IsLeaps ? ScoreTime.Eighth : ScoreTime.Sixteenth);
            var (count, inBar) = part.IsLeaps ? (BarsOfLeaps, LeapsInBar) : (BarsOfStrokes, StrokesInBar);
            for (var b = 0; b <= count; b++)
            {
                var strokes = Enumerable
                    .Range(0, b < count ? inBar : 0)
                    .Select(i => new Stroke(hand, 1, unit * i, unit, [Named(part.Keys[b * inBar + i])], "test"));
                bars.Add(
                    new DraftBar
                    {
                        Number = (bars.Count + 1).ToString(System.Globalization.CultureInfo.InvariantCulture),
                        Metre = Metre.TwoFour,
                        Key = default,
                        Length = Metre.TwoFour.BarLength,
                        Strokes = strokes.ToValueList(),
                        Directions =
                            b > 0
                                ? []
                                :
                                [
                                    new Direction(ScoreTime.Zero)
                                    {
                                        BeatsPerMinute = part.QuartersPerMinute,
                                        Words = PlayerMessages.PartOfTest(p + 1, part.IsLeaps),
                                    },
                                ],
                        Marks = new BarMarks { FinalBarAfter = p == parts.Count - 1 && b == count },
                    }
                );
            }
        }
        return Notator.Write(
            new Draft
            {
                Title = PlayerMessages.TestTitle(hand),
                Subtitle = PlayerMessages.TestSubtitle,
                Bars = bars.ToValueList(),
            }
        );
    }

    private static Pitch Named(int key) => Pitch.At(key, default(Key).Spell(key));
}
