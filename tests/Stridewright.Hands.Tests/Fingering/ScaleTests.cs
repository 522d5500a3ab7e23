using Stridewright.Music;

namespace Stridewright.Hands.Tests;

/// <summary>The twelve major scales as handbooks finger them (standard handbooks).</summary>
public sealed class ScaleTests
{
    private static readonly int[] Steps = [0, 2, 4, 5, 7, 9, 11, 12];

    public static TheoryData<string, int, string, string> Scales =>
        new()
        {
            { "C", 60, "12312345", "54321321" },
            { "G", 55, "12312345", "54321321" },
            { "D", 62, "12312345", "54321321" },
            { "A", 57, "12312345", "54321321" },
            { "E", 64, "12312345", "54321321" },
            { "F", 65, "12341234", "54321321" },
            { "Bb", 58, "41231234", "32143213" },
            { "Eb", 63, "31234123", "32143213" },
            { "Ab", 56, "34123123", "32143213" },
            { "Db", 61, "23123412", "32143213" },
            { "Gb", 66, "23412312", "43213214" },
            { "B", 59, "12312345", "43214321" },
        };

    [Theory]
    [MemberData(nameof(Scales))]
    public void A_major_scale_through_an_octave(string key, int tonic, string right, string left)
    {
        foreach (var (side, fingers) in ((Hand, string)[])[(Hand.Right, right), (Hand.Left, left)])
        {
            var scale = Fingered.Line(side, Steps.Select(s => tonic + s));
            Assert.Equal($"{key} {side} {fingers}", $"{key} {side} {Text(scale, side)}");
        }
    }

    // Handbooks take the same fingers down as up.
    [Theory]
    [MemberData(nameof(Scales))]
    public void A_major_scale_downwards_takes_the_same_fingers(string key, int tonic, string right, string left)
    {
        foreach (var (side, fingers) in ((Hand, string)[])[(Hand.Right, right), (Hand.Left, left)])
        {
            var scale = Fingered.Line(side, Steps.Reverse().Select(s => tonic + s));
            Assert.Equal($"{key} {side} {string.Concat(fingers.Reverse())}", $"{key} {side} {Text(scale, side)}");
        }
    }

    // Standard handbooks: the fingers come again every octave; only the first or last key takes an outer finger.
    [Theory]
    [MemberData(nameof(Scales))]
    public void A_major_scale_through_two_octaves_repeats_its_fingers(string key, int tonic, string right, string left)
    {
        int[] keys = [.. Steps.Select(s => tonic + s), .. Steps.Skip(1).Select(s => tonic + 12 + s)];
        var twice = right[0] == right[7] ? right + right[1..] : right[..7] + Again(right) + right[1..];
        Assert.Equal($"{key} right {twice}", $"{key} right {Text(Fingered.Line(Hand.Right, keys), Hand.Right)}");
        var twiceLeft = left[0] == left[7] ? left + left[1..] : left + Again(left) + left[2..];
        Assert.Equal($"{key} left {twiceLeft}", $"{key} left {Text(Fingered.Line(Hand.Left, keys), Hand.Left)}");

        // Right: the eighth key begins anew with the thumb. Left: the ninth takes what passes over it.
        static string Again(string fingers) => fingers[0] == '1' ? "1" : PassedOver(fingers);
        static string PassedOver(string fingers) => fingers[0] == '5' ? "4" : "3";
    }

    // The table holds for hands of any usual size.
    [Theory]
    [InlineData(175)]
    [InlineData(185)]
    [InlineData(230)]
    [InlineData(250)]
    public void Hands_of_other_sizes_take_the_same_fingers(double span)
    {
        var hands = new PlayerHands { SpanMm = span };
        foreach (var row in Scales)
        {
            var (key, tonic, right, left) = row.Data;
            foreach (var (side, fingers) in ((Hand, string)[])[(Hand.Right, right), (Hand.Left, left)])
            {
                var scale = Fingered.Line(side, Steps.Select(s => tonic + s));
                var found = Fingered.Text(Fingered.Hand(scale, side, hands: hands)).Replace(" ", "");
                Assert.Equal($"{key} {side} {fingers}", $"{key} {side} {found}");
            }
        }
    }

    private static string Text(Score scale, Hand side) => Fingered.Text(Fingered.Hand(scale, side)).Replace(" ", "");
}
