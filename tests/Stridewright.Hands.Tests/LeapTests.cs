namespace Stridewright.Hands.Tests;

public sealed class LeapTests
{
    private static readonly Keyboard Reference = new(164);

    // Fitts 1954, log2(2D/W) with W a white key of 23.5 mm; D from the key centres after Jacobs 2001.
    [Theory]
    [InlineData("G2", "F3", 140.5, 3.58)]
    [InlineData("C2", "C3", 164.0, 3.80)]
    [InlineData("F2", "G3", 187.5, 4.00)]
    [InlineData("C2", "E3", 211.0, 4.17)]
    [InlineData("C2", "G3", 258.0, 4.46)]
    [InlineData("F1", "A3", 374.5, 4.99)]
    public void Jumps_have_the_published_distance_and_difficulty(string from, string to, double mm, double bits)
    {
        var distance = Reference.Distance(Written.Key(from), Written.Key(to));
        Assert.Equal(mm, distance, 1e-9);
        Assert.Equal(bits, Leap.Bits(distance, Reference), 0.0051);
    }

    // The same measure over one eighth at a tempo in quarters per minute.
    [Theory]
    [InlineData(60, 8.3)]
    [InlineData(72, 10.0)]
    [InlineData(80, 11.1)]
    [InlineData(100, 13.9)]
    [InlineData(120, 16.7)]
    public void A_bass_to_chord_jump_asks_the_published_rate(double tempo, double rate) =>
        Assert.Equal(rate, Leap.Rate(211, 30 / tempo, Reference), 0.051);

    // Fitts's index is 0 at half a target's width.
    [Fact]
    public void A_move_within_half_a_key_is_no_leap()
    {
        Assert.Equal(0, Leap.Bits(0, Reference));
        Assert.Equal(0, Leap.Bits(11.75, Reference), 1e-9);
        Assert.True(Leap.Bits(12, Reference) > 0);
    }

    // Common practice: what lies under the hand needs no leap; an octave hand moves as far as its keys.
    [Theory]
    [InlineData("C4", "C4", "G4", "G4", 0)]
    [InlineData("C4", "C5", "D4", "D5", 23.5)]
    [InlineData("D4", "D5", "C4", "C5", 23.5)]
    [InlineData("C4", "C4", "C6", "C6", 178)]
    [InlineData("C4", "G4", "E4", "C5", 14)]
    public void A_hand_shifts_no_further_than_it_must(string a, string b, string c, string d, double mm)
    {
        var reach = new Reach(new() { SpanMm = 200, OctaveMm = 164 });
        var shift = Leap.Shift(reach, Written.Key(a), Written.Key(b), Written.Key(c), Written.Key(d));
        Assert.Equal(mm, shift, 1e-9);
    }

    // Printed two-steps reach 22 bits per second in compound time (common practice).
    [Theory]
    [InlineData(6, 8, 22)]
    [InlineData(9, 8, 22)]
    [InlineData(12, 8, 22)]
    [InlineData(3, 8, 16)]
    [InlineData(6, 4, 16)]
    [InlineData(2, 4, 16)]
    public void Compound_time_allows_a_faster_leap(int count, int unit, double limit) =>
        Assert.Equal(limit, Leap.Limit(new(count, unit)), 1e-9);
}
