using System.Globalization;

namespace Stridewright.Arranging.Tests.RightHand;

/// <summary>The short-long-short detector on the test vectors computed from its published definition (Kirlin 2020).</summary>
public sealed class FiguresTests
{
    [Theory]
    [InlineData("11011101", "10000000", 2, 0)]
    [InlineData("11011010", "10000000", 1, 0)] // cakewalk figure
    [InlineData("10110110", "10000000", 0, 1)] // cinquillo
    [InlineData("10101011", "01100000", 0, 1)]
    [InlineData("10101011", "10000000", 0, 0)]
    [InlineData("10100010", "10000000", 0, 0)]
    [InlineData("10101010", "10000000", 0, 0)]
    public void Figures_of_a_bar(string bar, string next, int untied, int tied)
    {
        var found = Figures.In(Bits(bar), Bits(next));
        Assert.Equal((untied, tied), (found.Untied, found.TiedMid + found.TiedBar));
    }

    private static int Bits(string text) => int.Parse(text, NumberStyles.BinaryNumber, CultureInfo.InvariantCulture);
}
