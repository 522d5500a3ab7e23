using CsCheck;
using Stridewright.Music;

namespace Stridewright.Hands.Tests;

public sealed class LeapTestTests
{
    // Bits of the leaps of 12, 16, 19 and 24 semitones from C: log2(2D/W) with D 164, 211, 258, 328 and W 23.5 mm
    // (Fitts 1954; the first three as in the table of jumps); fifteen leaps, of the first width three, else four: and one
    // home from the width before, which is that width's.
    private static double Bits(Hand hand)
    {
        var (keyboard, keys) = (new Keyboard(164), LeapTest.Parts(hand)[0].Keys);
        return Enumerable
            .Range(1, keys.Count - 1)
            .Sum(i => Math.Log2(2 * keyboard.Distance(keys[i - 1], keys[i]) / 23.5));
    }

    [Fact]
    public void The_widths_are_those_of_the_table_of_jumps()
    {
        var keys = LeapTest.Parts(Hand.Left)[0].Keys;
        var keyboard = new Keyboard(164);
        Assert.Equal(
            [3.80, 4.17, 4.46],
            new[] { 1, 5, 9 }.Select(i => Math.Round(Leap.Bits(keyboard.Distance(keys[i - 1], keys[i]), keyboard), 2))
        );
    }

    [Theory]
    [InlineData(Hand.Left)]
    [InlineData(Hand.Right)]
    public void A_perfect_take_gives_the_rate_of_the_last_part(Hand hand)
    {
        var result = LeapTestReading.Measure(Take(hand), 164).Value!;
        Assert.Equal(hand, result.Hand);
        Assert.Equal(Bits(hand) / (15 * 30 / 126.0), result.LeapBitsPerSecond, 1e-6);
        Assert.Equal(8, result.StrokesPerSecond!.Value, 1e-6); // sixteenths at 120
        Assert.Equal(10, result.Sentences.Count);
    }

    [Fact]
    public void The_row_of_landed_parts_ends_where_leaps_are_missed()
    {
        // In the fourth part each fourth stroke is a key beside; the fifth is well played and does not count.
        var take = Take(Hand.Left, (part, i, key) => part == 3 && i % 4 == 1 ? key + 1 : key);
        var result = LeapTestReading.Measure(take, 164).Value!;
        Assert.Equal(Bits(Hand.Left) / (15 * 30 / 79.0), result.LeapBitsPerSecond, 1e-6);
        Assert.Equal(8, result.StrokesPerSecond!.Value, 1e-6); // strokes are a row of their own
    }

    [Fact]
    public void A_part_that_is_left_out_ends_the_row_and_a_slower_one_counts_with_its_own_time()
    {
        var three = Take(Hand.Left, parts: 3);
        Assert.Equal(
            Bits(Hand.Left) / (15 * 30 / 79.0),
            LeapTestReading.Measure(three, 164).Value!.LeapBitsPerSecond,
            1e-6
        );
        Assert.Null(LeapTestReading.Measure(three, 164).Value!.StrokesPerSecond);
        var slow = Take(Hand.Left, stretch: 1.2);
        Assert.Equal(
            Bits(Hand.Left) / (15 * 1.2 * 30 / 126),
            LeapTestReading.Measure(slow, 164).Value!.LeapBitsPerSecond,
            1e-6
        );
    }

    [Fact]
    public void What_is_no_take_of_the_test_is_refused_with_a_reason()
    {
        Assert.Contains("no take of the leap test", Message([]), StringComparison.Ordinal);
        Assert.Contains(
            "no take of the leap test",
            Message([.. Enumerable.Range(60, 20).Select(k => new StruckKey(k, k))]),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "the first part was not landed: 0 of its 15",
            Message(Take(Hand.Left, stretch: 2)),
            StringComparison.Ordinal
        );
        var many = Enumerable.Repeat(new StruckKey(0, 36), LeapTestReading.MostStrokes + 1).ToList();
        Assert.Contains("more than 5000 strokes", Message(many), StringComparison.Ordinal);
        static string Message(IReadOnlyList<StruckKey> take)
        {
            var reading = LeapTestReading.Measure(take, 164);
            Assert.Null(reading.Value);
            return reading.Diagnostics[0].Message;
        }
    }

    [Fact]
    public void No_take_breaks_the_reading_and_wrong_keys_never_help() =>
        Gen.Select(Gen.Int[0, 159], Gen.Int[0, 127], Gen.Double[0, 0.2])
            .Array[0, 30]
            .Sample(
                slips =>
                {
                    var take = Take(Hand.Left).ToList();
                    foreach (var (at, key, late) in slips)
                    {
                        take.Insert(at, new StruckKey(take[at].Seconds - late / 1000, key));
                    }
                    var reading = LeapTestReading.Measure(take, 164);
                    Assert.True(
                        reading.Value is null
                            || reading.Value.LeapBitsPerSecond <= Bits(Hand.Left) / (15 * 30 / 126.0) * 1.05
                    );
                },
                iter: 200
            );

    [Fact]
    public void The_score_of_the_test_is_its_parts()
    {
        foreach (var hand in new[] { Hand.Left, Hand.Right })
        {
            var struck = Timeline.Of(LeapTest.Write(hand));
            Assert.Equal(LeapTest.Parts(hand).SelectMany(p => p.Keys), struck.Select(s => s.Key));
            Assert.All(struck, s => Assert.Equal(hand, s.Hand));
        }
    }

    private static List<StruckKey> Take(
        Hand hand,
        Func<int, int, int, int>? played = null,
        int parts = 10,
        double stretch = 1
    )
    {
        var (take, time) = (new List<StruckKey>(), 0.0);
        foreach (var (part, p) in LeapTest.Parts(hand).Take(parts).Select((part, p) => (part, p)))
        {
            for (var i = 0; i < part.Keys.Count; i++)
            {
                take.Add(new StruckKey(time, played?.Invoke(p, i, part.Keys[i]) ?? part.Keys[i]));
                time += stretch * part.Seconds;
            }
            time += 3;
        }
        return take;
    }
}
