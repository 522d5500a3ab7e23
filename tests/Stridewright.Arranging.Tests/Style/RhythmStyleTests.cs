using System.Globalization;

namespace Stridewright.Arranging.Tests.Style;

/// <summary>Syncopation of a bar against values worked out from the published definitions (Kirlin, ISMIR 2020).</summary>
public sealed class RhythmStyleTests
{
    [Theory]
    [InlineData("11010001", false, 6)] // the worked example of the study's own code
    [InlineData("10101010", true, 0)]
    [InlineData("10010010", true, 2)] // tresillo
    [InlineData("10011010", true, 0)] // habanera
    [InlineData("10110110", true, 2)] // cinquillo
    [InlineData("11011010", true, 1)] // cakewalk figure
    [InlineData("11011101", true, 2)]
    [InlineData("10101101", true, 1)]
    [InlineData("10100010", true, 1)]
    [InlineData("01001001", false, 4)]
    [InlineData("00100100", false, 1)]
    [InlineData("00100010", false, 3)]
    [InlineData("01010101", false, 7)]
    [InlineData("10101011", false, 3)]
    [InlineData("11011101", false, 5)]
    [InlineData("10101010", false, 2)]
    public void Syncopation_of_a_bar(string bar, bool nextStruck, int expected) =>
        Assert.Equal(expected, RhythmStyle.Syncopation(Bits(bar), nextStruck));

    [Theory]
    [InlineData("10100010", "10000000", true)]
    [InlineData("10101010", "10000000", false)]
    [InlineData("10101010", "00101010", true)]
    [InlineData("11011101", "00101010", false)]
    public void Augmented_figures(string bar, string next, bool expected) =>
        Assert.Equal(expected, RhythmStyle.IsAugmented(Bits(bar), Bits(next)));

    private static int Bits(string text) => int.Parse(text, NumberStyles.BinaryNumber, CultureInfo.InvariantCulture);
}
