using System.Text;
using System.Xml.Linq;
using Stridewright.Formats.MusicXml;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Formats.Tests.MusicXml;

/// <summary>Fingers go into the file of somebody else (elements and their order: MusicXML 4.0), and nothing else moves.</summary>
public sealed class FingersInPlaceTests
{
    private const string Head = "<pitch><step>C</step><octave>5</octave></pitch><duration>2</duration><voice>1</voice>";

    private const string Theirs = $"""
        <?xml version="1.0" encoding="UTF-8"?>
        <score-partwise version="4.0">
          <part-list><score-part id="P1"><part-name>Piano</part-name></score-part></part-list>
          <part id="P1">
            <measure number="1">
              <attributes><divisions>2</divisions><time><beats>2</beats><beat-type>4</beat-type></time><staves>2</staves></attributes>
              <direction placement="below"><direction-type><wedge type="crescendo"/></direction-type><staff>1</staff></direction>
              <!-- kept -->
              <note id="mine">{Head}<type>quarter</type><staff>1</staff><notations><slur type="start" number="1"/><technical><fingering>4</fingering><up-bow/></technical></notations><lyric><text>la</text></lyric></note>
              <note>{Head}<type>quarter</type><staff>1</staff><lyric><text>lo</text></lyric></note>
              <backup><duration>4</duration></backup>
              <note id="mine"><pitch><step>C</step><octave>3</octave></pitch><duration>4</duration><voice>5</voice><type>half</type><staff>2</staff></note>
            </measure>
          </part>
        </score-partwise>
        """;

    [Fact]
    public void Only_the_fingers_change()
    {
        var file = FingersInPlace.Of(Encoding.UTF8.GetBytes(Theirs))!;
        var score = Read(file.Named());
        var after = XDocument.Parse(
            Encoding.UTF8.GetString(file.With(Fingered(score, hand => hand == Hand.Right ? 3 : 5))),
            LoadOptions.PreserveWhitespace
        );
        var before = XDocument.Parse(Theirs, LoadOptions.PreserveWhitespace);
        Assert.Equal(
            ["3 above", "3 above", "5 below"],
            after.Descendants("fingering").Select(f => $"{f.Value} {f.Attribute("placement")!.Value}")
        );
        Assert.Equal(["mine", null, "mine"], after.Descendants("note").Select(n => n.Attribute("id")?.Value));
        foreach (var document in (XDocument[])[before, after])
        {
            document.Descendants("fingering").Remove();
            document.Descendants("technical").Where(t => !t.HasElements).Remove();
            document.Descendants("notations").Where(t => !t.HasElements).Remove();
        }
        Assert.Equal(before.ToString(SaveOptions.DisableFormatting), after.ToString(SaveOptions.DisableFormatting));
    }

    [Fact]
    public void What_is_written_is_valid_and_read_back_with_its_fingers()
    {
        var file = FingersInPlace.Of(
            Encoding.UTF8.GetBytes(Theirs.Replace("<up-bow/>", "", StringComparison.Ordinal))
        )!;
        var fingered = Fingered(Read(file.Named()), _ => 2);
        var bytes = file.With(fingered);
        Assert.All(Heads(Read(bytes)), head => Assert.Equal(2, head.Finger));
        using var stream = new MemoryStream(
            Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(bytes).Replace("id=\"mine\"", "", StringComparison.Ordinal))
        );
        Assert.Empty(MusicXmlSchema.Faults(stream));
    }

    [Fact]
    public void A_note_without_a_finger_loses_the_one_it_had()
    {
        var file = FingersInPlace.Of(Encoding.UTF8.GetBytes(Theirs))!;
        var text = Encoding.UTF8.GetString(file.With(Fingered(Read(file.Named()), _ => null)));
        Assert.DoesNotContain("fingering", text, StringComparison.Ordinal);
        Assert.Contains("up-bow", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("no score")]
    [InlineData("<score-partwise><part>")]
    [InlineData("<!DOCTYPE a [<!ENTITY b \"bbbb\">]><a>&b;</a>")]
    public void What_is_no_xml_is_none(string text) => Assert.Null(FingersInPlace.Of(Encoding.UTF8.GetBytes(text)));

    private static Score Read(byte[] bytes)
    {
        using var stream = new MemoryStream(bytes);
        return MusicXmlReader.ReadScore(stream).Value!;
    }

    private static IEnumerable<ScoreNote> Heads(Score score) =>
        score.Bars.SelectMany(b => b.Voices.SelectMany(v => v.Events.SelectMany(e => e.Notes)));

    private static Score Fingered(Score score, Func<Hand, int?> finger) =>
        score with
        {
            Bars = score
                .Bars.Select(bar =>
                    bar with
                    {
                        Voices = bar
                            .Voices.Select(voice =>
                                voice with
                                {
                                    Events = voice
                                        .Events.Select(e =>
                                            e with
                                            {
                                                Notes = e
                                                    .Notes.Select(n => n with { Finger = finger(voice.Hand) })
                                                    .ToValueList(),
                                            }
                                        )
                                        .ToValueList(),
                                }
                            )
                            .ToValueList(),
                    }
                )
                .ToValueList(),
        };
}
