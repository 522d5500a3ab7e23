using Stridewright.Formats.MusicXml;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Formats.Tests.MusicXml;

/// <summary>A left hand alone is one staff in the bass clef, in a file that MusicXML 4.0 allows.</summary>
public sealed class LeftHandOnlyTests
{
    private static Draft Draft { get; } =
        new()
        {
            Title = "Left",
            LeftHandOnly = true,
            Bars =
            [
                new DraftBar
                {
                    Number = "1",
                    Metre = Metre.TwoFour,
                    Key = default,
                    Length = ScoreTime.Half,
                    Chords = [new PlacedChord(ScoreTime.Quarter, new ChordSymbol(default, ChordKind.Dominant))],
                    Strokes =
                    [
                        new Stroke(Hand.Right, 1, default, ScoreTime.Half, [Pitch.Parse("C5")], "tune"),
                        new Stroke(Hand.Left, 1, default, ScoreTime.Quarter, [Pitch.Parse("C3")], "bass"),
                    ],
                },
            ],
        };

    [Fact]
    public void The_right_hand_is_left_out_and_the_file_is_valid()
    {
        var xml = Written(Draft);
        Assert.Empty(MusicXmlSchema.Faults(Bytes(Notator.Write(Draft))));
        Assert.DoesNotContain("<staves>", xml, StringComparison.Ordinal);
        Assert.Single(xml.Split("<clef").Skip(1));
        Assert.Contains("<sign>F</sign>", xml, StringComparison.Ordinal);
        Assert.DoesNotContain("<octave>5</octave>", xml, StringComparison.Ordinal);
        Assert.DoesNotContain("<staff>2</staff>", xml, StringComparison.Ordinal);
        Assert.Contains("<harmony", xml, StringComparison.Ordinal);
    }

    [Fact]
    public void It_is_read_back_as_it_was_written()
    {
        var score = Notator.Write(Draft);
        var reading = MusicXmlReader.ReadScore(Bytes(score));
        Assert.Equal(score, reading.Value);
        Assert.Equal([Severity.Note], reading.Diagnostics.Select(d => d.Severity));
    }

    [Fact]
    public void One_staff_in_another_clef_is_no_piano_score()
    {
        var xml = Written(Draft).Replace("<sign>F</sign>", "<sign>G</sign>", StringComparison.Ordinal);
        using var stream = new MemoryStream(System.Text.Encoding.UTF8.GetBytes(xml));
        Assert.Null(MusicXmlReader.ReadScore(stream).Value);
    }

    private static string Written(Draft draft) => new StreamReader(Bytes(Notator.Write(draft))).ReadToEnd();

    private static MemoryStream Bytes(Score score)
    {
        var stream = new MemoryStream();
        MusicXmlWriter.Write(score, stream);
        stream.Position = 0;
        return stream;
    }
}
