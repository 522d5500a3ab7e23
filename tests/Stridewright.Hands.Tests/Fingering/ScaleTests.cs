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

    private static string Text(Score scale, Hand side) => Fingered.Text(Fingered.Hand(scale, side)).Replace(" ", "");
}
