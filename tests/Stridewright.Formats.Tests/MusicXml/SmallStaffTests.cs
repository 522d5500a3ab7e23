using System.Xml.Linq;
using CsCheck;
using Stridewright.Formats.MusicXml;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Formats.Tests.MusicXml;

/// <summary>A small staff above: cue notes (MusicXML 4.0, the cue element: not played) that belong to neither hand.</summary>
public sealed class SmallStaffTests
{
    // Over bars of any draft: the upper voice of the right hand, as the plain tune.
    private static Draft WithAbove(Draft draft) =>
        draft with
        {
            Bars = draft
                .Bars.Select(b => b with { Above = b.Strokes.Where(Upper).Select(Plain).ToValueList() })
                .ToValueList(),
        };

    private static bool Upper(Stroke s) => s.Hand == Hand.Right && s.Voice == 1;

    private static Stroke Plain(Stroke s) => s with { Role = "plain", Graces = [], Rolled = false };

    private static byte[] Bytes(Score score)
    {
        using var stream = new MemoryStream();
        MusicXmlWriter.Write(score, stream);
        return stream.ToArray();
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void It_is_valid_and_reads_back_as_the_same_hands(bool leftHandOnly) =>
        Drafts.Random.Sample(
            random =>
            {
                var draft = random with { LeftHandOnly = leftHandOnly };
                var bytes = Bytes(Notator.Write(WithAbove(draft)));
                Assert.Empty(MusicXmlSchema.Faults(new MemoryStream(bytes)));
                var (with, without) = (Read(bytes), Read(Bytes(Notator.Write(draft))));
                Assert.Equal(without, with);
            },
            iter: 100
        );

    [Fact]
    public void Its_notes_are_cue_notes_on_a_staff_of_smaller_size()
    {
        var draft = WithAbove(Drafts.Of(Drafts.Bar("2/4", "0+3 3+5")));
        var document = XDocument.Load(new MemoryStream(Bytes(Notator.Write(draft))));
        var (above, piano) = (document.Descendants("part").First(), document.Descendants("part").Last());
        Assert.All(above.Descendants("pitch"), p => Assert.NotNull(p.Parent!.Element("cue")));
        Assert.NotEmpty(above.Descendants("pitch"));
        Assert.Empty(piano.Descendants("cue"));
        Assert.InRange((double)above.Descendants("staff-size").Single(), 50, 80);
    }

    private static Score? Read(byte[] bytes) => MusicXmlReader.ReadScore(new MemoryStream(bytes)).Value;
}
