using System.Xml.Linq;

namespace Stridewright.Engraving.Tests;

public sealed class SvgStyleTests
{
    // Source: SVG 1.1, 11.3: an opacity of nought paints no inside, whatever the fill. Frames of section names are so.
    [Theory]
    [InlineData("fill-opacity", "0", false)]
    [InlineData("fill-opacity", "0.0", false)]
    [InlineData("fill-opacity", "1", true)]
    [InlineData("fill", "none", false)]
    [InlineData("stroke-width", "20", true)]
    public void What_has_no_inside_is_not_filled(string attribute, string value, bool filled) =>
        Assert.Equal(filled, SvgStyle.Plain.With(new XElement("rect", new XAttribute(attribute, value))).Fill);
}
