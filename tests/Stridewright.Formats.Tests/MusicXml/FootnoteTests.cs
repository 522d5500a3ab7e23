using System.Xml.Linq;
using Stridewright.Formats.MusicXml;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Formats.Tests.MusicXml;

/// <summary>Numbers of footnotes under the staves (MusicXML 4.0, words) and their texts (miscellaneous-field).</summary>
public sealed class FootnoteTests
{
    private static readonly Score Bare = Notator.Write(Drafts.Of(Drafts.Bar("2/4", "0+3 3+5")));

    private static readonly Score Noted = Bare with
    {
        Footnotes = ["bar 1: one", "bar 1: another & more"],
        Bars =
        [
            .. Bare.Bars.Select(b =>
                b with
                {
                    Directions = [.. b.Directions, new Direction(ScoreTime.Zero) { Footnote = "1, 2" }],
                }
            ),
        ],
    };

    private static byte[] Bytes(Score score)
    {
        using var stream = new MemoryStream();
        MusicXmlWriter.Write(score, stream);
        return stream.ToArray();
    }

    [Theory]
    [InlineData(false, "2")]
    [InlineData(true, "1")]
    public void They_stand_small_under_the_lowest_staff_and_the_file_is_valid(bool leftHandOnly, string staff)
    {
        var bytes = Bytes(Noted with { LeftHandOnly = leftHandOnly });
        Assert.Empty(MusicXmlSchema.Faults(new MemoryStream(bytes)));
        var document = XDocument.Load(new MemoryStream(bytes));
        var words = document.Descendants("words").Single(w => w.Value == "1, 2");
        Assert.InRange((double)words.Attribute("font-size")!, 6, 9);
        var direction = words.Parent!.Parent!;
        Assert.Equal(
            ("below", staff),
            ((string?)direction.Attribute("placement"), (string?)direction.Element("staff"))
        );
        Assert.Equal(Noted.Footnotes, document.Descendants("miscellaneous-field").Select(f => f.Value));
    }

    [Fact]
    public void A_reader_takes_the_music_without_them() =>
        Assert.Equal(
            MusicXmlReader.ReadScore(new MemoryStream(Bytes(Bare))).Value,
            MusicXmlReader.ReadScore(new MemoryStream(Bytes(Noted))).Value
        );
}
