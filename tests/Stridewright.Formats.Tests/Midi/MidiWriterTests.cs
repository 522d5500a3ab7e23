using CsCheck;
using NAudio.Midi;
using Stridewright.Formats.Midi;
using Stridewright.Music;
using Stridewright.Sound;
using Stridewright.Testing;

namespace Stridewright.Formats.Tests.Midi;

public sealed class MidiWriterTests
{
    // The example of the Standard MIDI File 1.0 specification, format 0.
    private const string SpecificationExample =
        "4D546864 00000006 0000 0001 0060 4D54726B 0000003B "
        + "00FF580404021808 00FF510307A120 00C005 00C12E 00C246 00923060 003C60 60914340 60904C20 "
        + "8140823040 003C40 00814340 00804C40 00FF2F00";

    // Source: table of the Standard MIDI File 1.0 specification.
    [Theory]
    [InlineData(0x00, "00")]
    [InlineData(0x40, "40")]
    [InlineData(0x7F, "7F")]
    [InlineData(0x80, "8100")]
    [InlineData(0x2000, "C000")]
    [InlineData(0x3FFF, "FF7F")]
    [InlineData(0x4000, "818000")]
    [InlineData(0x100000, "C08000")]
    [InlineData(0x1FFFFF, "FFFF7F")]
    [InlineData(0x200000, "81808000")]
    [InlineData(0x8000000, "C0808000")]
    [InlineData(0xFFFFFFF, "FFFFFF7F")]
    public void Variable_length_quantities_are_those_of_the_specification(long value, string expected)
    {
        using var stream = new MemoryStream();
        VariableLength.Write(stream, value);
        Assert.Equal(expected, Convert.ToHexString(stream.ToArray()));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(0x10000000)]
    public void Quantities_out_of_range_are_refused(long value) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => VariableLength.Write(Stream.Null, value));

    [Fact]
    public void The_notes_of_the_specification_example_are_written_as_it_has_them()
    {
        var example = Convert.FromHexString(SpecificationExample.Replace(" ", "", StringComparison.Ordinal));
        var performance = new Performance
        {
            TicksPerQuarter = 96,
            Strokes =
            [
                new KeyStroke(0, 384, 48, 96, Hand.Left),
                new KeyStroke(0, 384, 60, 96, Hand.Left),
                new KeyStroke(96, 288, 67, 64, Hand.Right),
                new KeyStroke(192, 192, 76, 32, Hand.Right),
            ],
            Tempi = [new TempoChange(0, 500_000)],
            Metres = [new MetreChange(0, Metre.FourFour)],
        };
        var ours = Bytes(performance);

        Assert.StartsWith("4D54686400000006000100030060", Convert.ToHexString(ours), StringComparison.Ordinal);
        Assert.Contains("00FF580404021808", Convert.ToHexString(ours), StringComparison.Ordinal);
        Assert.Contains("00FF510307A120", Convert.ToHexString(ours), StringComparison.Ordinal);
        var expected = Read(example).Select(n => (n.Tick, n.Length, n.Key, n.Velocity));
        Assert.Equal(expected, Read(ours).Select(n => (n.Tick, n.Length, n.Key, n.Velocity)));
    }

    [Fact]
    public void Another_reader_finds_exactly_the_strokes_that_were_performed() =>
        Gen.Select(Drafts.Random, Gen.Int)
            .Sample(
                (draft, seed) =>
                {
                    var performance = Performer.Perform(Notator.Write(Dressed.Up(draft, seed)));
                    var expected = performance
                        .Strokes.Select(s =>
                            (s.Tick, s.Length, s.Key, s.Velocity, Channel: s.Hand == Hand.Right ? 1 : 2)
                        )
                        .OrderBy(s => s);
                    Assert.Equal(expected, Read(Bytes(performance)));
                },
                iter: 100
            );

    [Fact]
    public void Tempo_metre_key_pedal_and_end_are_written()
    {
        var performance = new Performance
        {
            TicksPerQuarter = 480,
            Title = "Test",
            Strokes = [new KeyStroke(0, 480, 60, 80, Hand.Right)],
            Pedal = [new PedalChange(0, true), new PedalChange(470, false)],
            Tempi = [new TempoChange(0, 500_000), new TempoChange(960, 600_000)],
            Metres = [new MetreChange(0, Metre.SixEight)],
            Keys = [new KeyChange(0, Key.FromSignature(-3, Mode.Minor))],
            EndTick = 1920,
        };
        var file = Open(Bytes(performance));
        Assert.Equal((1, 3), (file.FileFormat, file.Tracks));
        Assert.Equal([500_000, 600_000], file.Events[0].OfType<TempoEvent>().Select(t => t.MicrosecondsPerQuarterNote));
        var metre = file.Events[0].OfType<TimeSignatureEvent>().Single();
        Assert.Equal(("6/8", 36), (metre.TimeSignature, metre.TicksInMetronomeClick));
        var key = file.Events[0].OfType<KeySignatureEvent>().Single();
        Assert.Equal((-3, 1), (key.SharpsFlats, key.MajorMinor));
        var pedal = file.Events[1].OfType<ControlChangeEvent>().Where(c => c.Controller == MidiController.Sustain);
        Assert.Equal([(0, 127), (470, 0)], pedal.Select(c => ((int)c.AbsoluteTime, c.ControllerValue)));
        Assert.All(file.Events.Skip(1), track => Assert.Equal(0, track.OfType<PatchChangeEvent>().Single().Patch));
        Assert.All(file.Events, track => Assert.Equal(1920, track[^1].AbsoluteTime));
    }

    [Fact]
    public void A_stroke_out_of_range_is_refused()
    {
        var performance = new Performance
        {
            TicksPerQuarter = 480,
            Strokes = [new KeyStroke(0, 480, 128, 80, Hand.Right)],
            Tempi = [],
        };
        Assert.Throws<ArgumentException>(() => Bytes(performance));
    }

    private static MidiFile Open(byte[] bytes) => new(new MemoryStream(bytes), strictChecking: true);

    private static IEnumerable<(long Tick, long Length, int Key, int Velocity, int Channel)> Read(byte[] bytes) =>
        Open(bytes)
            .Events.SelectMany(track => track)
            .OfType<NoteOnEvent>()
            .Where(n => n.OffEvent is not null)
            .Select(n => (n.AbsoluteTime, (long)n.NoteLength, n.NoteNumber, n.Velocity, n.Channel))
            .Order();

    private static byte[] Bytes(Performance performance)
    {
        using var stream = new MemoryStream();
        MidiWriter.Write(performance, stream);
        return stream.ToArray();
    }
}
