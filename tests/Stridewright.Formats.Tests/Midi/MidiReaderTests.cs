using CsCheck;
using Stridewright.Formats.Midi;
using Stridewright.Music;
using Stridewright.Sound;
using Stridewright.Testing;

namespace Stridewright.Formats.Tests.Midi;

public sealed class MidiReaderTests
{
    private const string Notes = "00903C40 60803C40 00903E40 60803E40 00904040 60804040 00904140 60804140";
    private const string End = "00FF2F00";

    // MIDI 1.0: controller 64 is the sustain pedal, 0 to 63 is up and 64 to 127 is down.
    [Fact]
    public void The_sustain_pedal_is_down_from_the_value_64()
    {
        var file = Smf.File(
            480,
            Smf.Track(
                Smf.Note(0, 480, 60),
                [
                    (10, [0xB0, 64, 63]),
                    (20, [0xB0, 64, 64]),
                    (30, [0xB0, 64, 127]),
                    (40, [0xB0, 66, 0]),
                    (50, [0xB0, 64, 63]),
                    (60, [0xB0, 64, 0]),
                    (70, [0xB0, 64, 127]),
                ]
            )
        );
        var track = MidiReader.Read(new MemoryStream(file)).Value!.Tracks[0];
        Assert.Equal([new PedalChange(20, true), new PedalChange(50, false), new PedalChange(70, true)], track.Pedal);
    }

    // Source: table of the Standard MIDI File 1.0 specification; the last three are computed.
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
    [InlineData(192, "8140")]
    [InlineData(1000, "8768")]
    [InlineData(100000, "868D20")]
    public void Variable_length_quantities_are_those_of_the_specification(int value, string bytes)
    {
        Assert.True(VariableLength.TryRead(Smf.Hex(bytes), out var read, out var count));
        Assert.Equal((value, bytes.Length / 2), (read, count));
    }

    [Theory]
    [InlineData("", 0)]
    [InlineData("81", 1)]
    [InlineData("FFFFFF", 3)]
    [InlineData("FFFFFFFF7F", 4)]
    public void Quantities_that_end_too_late_are_not_read(string bytes, int count)
    {
        Assert.False(VariableLength.TryRead(Smf.Hex(bytes), out _, out var read));
        Assert.Equal(count, read);
    }

    // Source: the example of the Standard MIDI File 1.0 specification, format 0; its running status and two-byte delta
    // time included.
    [Fact]
    public void The_example_of_the_specification_is_read()
    {
        var file = Sound(
            Smf.Hex(
                "4D546864 00000006 0000 0001 0060 4D54726B 0000003B "
                    + "00FF580404021808 00FF510307A120 00C005 00C12E 00C246 00923060 003C60 60914340 60904C20 "
                    + "8140823040 003C40 00814340 00804C40 00FF2F00"
            )
        );
        Assert.Equal((0, 96, 384L), (file.Format, file.TicksPerQuarter, file.Tracks[0].EndTick));
        Assert.Equal(
            [(0, 384, 48, 96, 3), (0, 384, 60, 96, 3), (96, 288, 67, 64, 2), (192, 192, 76, 32, 1)],
            Strokes(file).Select(s => (s.Tick, s.Length, s.Key, s.Velocity, s.Channel))
        );
        Assert.Equal([new TempoChange(0, 500_000)], file.Tracks[0].Tempi);
        Assert.Equal([new MetreChange(0, Metre.FourFour)], file.Tracks[0].Metres);
    }

    [Fact]
    public void The_smallest_file_is_one_note()
    {
        var file = Sound(Smf.Hex("4D54686400000006000000010060 4D54726B0000000C 00903C40 60803C40 00FF2F00"));
        Assert.Equal([new MidiStroke(0, 96, 60, 64, 1, 22)], Strokes(file));
    }

    // Tempo bytes: microseconds a quarter.
    [Theory]
    [InlineData("0F4240", 60)]
    [InlineData("0B71B0", 80)]
    [InlineData("098968", 96)]
    [InlineData("07A120", 120)]
    [InlineData("065B9B", 144)]
    public void Tempo_bytes_are_microseconds_a_quarter(string bytes, int tempo)
    {
        var file = Sound(Smf.File(96, Smf.Hex($"00FF5103{bytes} {Notes} {End}")));
        Assert.Equal(tempo, 60e6 / file.Tracks[0].Tempi.Single().MicrosecondsPerQuarter, 3);
    }

    [Fact]
    public void What_is_written_is_read_back() =>
        Gen.Select(Drafts.Random, Gen.Int)
            .Sample(
                (draft, seed) =>
                {
                    var performance = Performer.Perform(Notator.Write(Dressed.Up(draft, seed)));
                    if (performance.Strokes.Count == 0)
                    {
                        return; // refused: nothing is played
                    }
                    using var stream = new MemoryStream();
                    MidiWriter.Write(performance, stream);
                    var file = Sound(stream.ToArray());
                    Assert.Equal(performance.TicksPerQuarter, file.TicksPerQuarter);
                    Assert.Equal(performance.Tempi, file.Tracks[0].Tempi);
                    Assert.Equal(
                        performance.Keys.Select(k => k.Key.Signature),
                        file.Tracks[0].Keys.Select(k => k.Key.Signature)
                    );
                    Assert.Equal(
                        performance.Metres.Select(m => (m.Tick, m.Metre.Count, m.Metre.Unit)),
                        file.Tracks[0].Metres.Select(m => (m.Tick, m.Metre.Count, m.Metre.Unit))
                    );
                    Assert.All(file.Tracks, t => Assert.Equal(performance.EndTick, t.EndTick));
                    Assert.Equal(
                        performance
                            .Strokes.Select(s => (s.Tick, s.Length, s.Key, s.Velocity, s.Hand == Hand.Right ? 1 : 2))
                            .Order(),
                        Strokes(file).Select(s => (s.Tick, s.Length, s.Key, s.Velocity, s.Channel)).Order()
                    );
                },
                iter: 100
            );

    // Each kind of damage: the data of a single track of 96 ticks a quarter, what is said about it and where, and what is
    // left of its notes. Byte 22 is the first of the track.
    [Theory]
    [InlineData($"{Notes}", "warning", 54, 384, "no end mark", 4)]
    [InlineData($"00903C40 60 FF2F00", "warning", 22, 0, "not released", 1)]
    [InlineData($"00903C40 00803C40 {End}", "warning", 22, 0, "shortest length", 1)]
    [InlineData($"{Notes} {End} 0000", "warning", 58, 384, "2 bytes were left out", 4)]
    [InlineData($"{Notes} 00903C", "warning", 54, 384, "ends inside this event", 4)]
    [InlineData($"{Notes} 00FF0310 4142", "warning", 54, 384, "ends inside this event", 4)]
    [InlineData($"{Notes} 00FF0000 00904040 60 4000 {End}", null, 0, 0, "", 5)]
    [InlineData($"{Notes} 00904040 00FF0000 60 4000 {End}", "warning", 63, 480, "leaves its kind out", 5)]
    [InlineData($"{Notes} 00F8 {End}", "warning", 55, 384, "real-time byte F8", 4)]
    [InlineData($"{Notes} 00FF5103000000 {End}", "warning", 54, 384, "this tempo", 4)]
    [InlineData($"{Notes} 00FF580400021808 {End}", "warning", 54, 384, "this time signature", 4)]
    [InlineData($"{Notes} 00FF59020900 {End}", "warning", 54, 384, "this key signature", 4)]
    [InlineData($"{Notes} 00803C40 {End}", "note", 54, 384, "not down", 4)]
    [InlineData($"{Notes} FFFFFF7F 903C40 {End}", "warning", 54, 268435839, "65536 quarter notes", 4)]
    [InlineData($"{Notes} 00F003010203 00F70101 00F0027EF7 {End}", null, 0, 0, "", 4)]
    [InlineData($"00903C40 00903C50 60803C40 60803C40 {End}", null, 0, 0, "", 2)]
    [InlineData($"{Notes} FFFFFFFF7F 903C40 {End}", "error", 54, 384, "more than four bytes", 0)]
    [InlineData($"{Notes} 00F1 00 {End}", "error", 55, 384, "status byte F1", 0)]
    [InlineData($"003C40 {End}", "error", 23, 0, "begins with 3C", 0)]
    [InlineData($"{Notes} 60903C80 {End}", "error", 57, 480, "80 stands where", 0)]
    [InlineData($"{Notes} 60F0FFFFFFFF7F {End}", "error", 56, 480, "more than four bytes", 0)]
    [InlineData($"60FF2F00", "error", 26, 96, "no note", 0)]
    public void Damage_inside_a_track_is_said_with_byte_and_tick(
        string data,
        string? severity,
        long at,
        long tick,
        string says,
        int notes
    ) => AssertDamage(Smf.File(96, Smf.Hex(data)), severity, at, tick, says, notes);

    // Damage outside the tracks: the whole file.
    [Theory]
    [InlineData("", "error", 0, "is empty", 0)]
    [InlineData("52494646 00000000", "error", 0, "RIFF", 0)]
    [InlineData("4D546864 0000", "error", 6, "inside its header", 0)]
    [InlineData("4D546864 00000002 0001", "error", 10, "inside its header", 0)]
    [InlineData("4D546864 00000006 0003 0001 0060", "error", 8, "format 3", 0)]
    [InlineData("4D546864 00000006 0000 0001 0000", "error", 12, "length of a tick", 0)]
    [InlineData("4D546864 00000006 0000 0001 E100", "error", 12, "length of a tick", 0)]
    [InlineData("4D546864 00000006 0000 0001 8000", "error", 12, "length of a tick", 0)]
    [InlineData("4D546864 00000006 0001 0000 0060", "error", 14, "no track", 0)]
    [InlineData(
        "4D546864 00000006 0001 0002 0060 4D54726B 0000000C 00903C40 60803C40 00FF2F00",
        "warning",
        10,
        "says that there are 2",
        1
    )]
    [InlineData(
        "4D546864 00000008 0000 0001 0060 0000 4D54726B 0000000C 00903C40 60803C40 00FF2F00",
        "note",
        4,
        "header is longer",
        1
    )]
    [InlineData(
        "4D546864 00000006 0000 0001 0060 4D54726B 0000000C 00903C40 60803C40 00FF2F00 0A",
        "warning",
        34,
        "1 byte was left out",
        1
    )]
    [InlineData(
        "4D546864 00000006 0000 0001 0060 00FF00FFFF00FFFF00 4D54726B 0000000C 00903C40 60803C40 00FF2F00",
        "warning",
        14,
        "9 bytes were left out",
        1
    )]
    [InlineData(
        "4D546864 00000006 0000 0001 0060 58595A5A 00000002 FFFF 4D54726B 0000000C 00903C40 60803C40 00FF2F00",
        null,
        0,
        "",
        1
    )]
    [InlineData(
        "4D546864 00000006 0000 0002 0060 4D54726B 0000000C 00903C40 60803C40 00FF2F00 4D54726B 00000004 00FF2F00",
        "warning",
        8,
        "format 0",
        1
    )]
    public void Damage_outside_the_tracks_is_said_with_its_byte(
        string data,
        string? severity,
        long at,
        string says,
        int notes
    ) => AssertDamage(Smf.Hex(data), severity, at, null, says, notes);

    [Theory]
    [InlineData(7, "error")]
    [InlineData(8, "warning")]
    public void A_file_that_is_cut_off_is_read_when_a_phrase_is_left(int notes, string severity)
    {
        var keys = Enumerable.Range(60, notes + 1).ToArray();
        var whole = Smf.File(96, Smf.Track(Smf.Line(0, 96, 1, keys)));
        // In the middle of the last strike.
        var cut = whole[..^10];
        var reading = MidiReader.Read(new MemoryStream(cut));
        AssertDamage(cut, severity, cut.Length, 96L * notes, "cut off", severity == "error" ? 0 : notes);
        Assert.Single(reading.Diagnostics);
    }

    [Fact]
    public void A_track_after_one_with_a_wrong_length_is_found_again()
    {
        var first = Smf.Chunk("MTrk", Smf.Track(Smf.Line(0, 96, 1, 60, 62, 64, 65, 67, 69, 71, 72)));
        first[4] = 0x7F;
        byte[] file = [.. Smf.Header(1, 2, 96), .. first, .. Smf.Chunk("MTrk", Smf.Track(Smf.Note(0, 96, 48, 2)))];
        var reading = MidiReader.Read(new MemoryStream(file));
        Assert.Equal(9, Strokes(reading.Value!).Count());
        Assert.Equal(Severity.Warning, Assert.Single(reading.Diagnostics).Severity);
    }

    [Fact]
    public void Damage_that_recurs_is_said_once_with_its_number()
    {
        var strikes = string.Concat(Enumerable.Repeat("00903C40 ", 20));
        var reading = MidiReader.Read(new MemoryStream(Smf.File(96, Smf.Hex($"{strikes} 60FF2F00"))));
        Assert.Equal(20, Strokes(reading.Value!).Count());
        Assert.Contains(reading.Diagnostics, d => d.Message.Contains("not released") && d.Message.Contains("19 more"));
        Assert.Equal(2, reading.Diagnostics.Count);
    }

    // 25 frames of 40 ticks are 1000 ticks a second: at 120 a minute a quarter has 500 of them.
    [Fact]
    public void Times_in_parts_of_a_second_are_laid_on_beats()
    {
        var reading = MidiReader.Read(new MemoryStream(Smf.File(0xE728, Smf.Track(Smf.Line(0, 500, 1, 60, 62)))));
        var file = reading.Value!;
        Assert.Equal([0, 960], Strokes(file).Select(s => (int)s.Tick));
        Assert.Equal([960, 960], Strokes(file).Select(s => (int)s.Length));
        Assert.Equal(960, file.TicksPerQuarter);
        Assert.Equal(Severity.Note, Assert.Single(reading.Diagnostics).Severity);
    }

    [Fact]
    public void A_file_without_end_is_refused() =>
        Assert.Contains("larger than 8 MB", MidiReader.Read(new Endless()).Diagnostics.Single().Message);

    private static void AssertDamage(byte[] bytes, string? severity, long at, long? tick, string says, int notes)
    {
        var reading = MidiReader.Read(new MemoryStream(bytes));
        Assert.Equal(notes, reading.Value?.Tracks.Sum(t => t.Strokes.Count) ?? 0);
        Assert.Equal(severity == "error", reading.Value is null);
        if (severity is null)
        {
            Assert.Empty(reading.Diagnostics);
            return;
        }
        var finding = Assert.Single(reading.Diagnostics);
        Assert.Equal(severity, finding.Severity.ToString().ToLowerInvariant());
        Assert.Equal((at, tick), (finding.Place.Byte, finding.Place.Tick));
        Assert.Contains(says, finding.Message, StringComparison.Ordinal);
    }

    private static MidiContents Sound(byte[] bytes)
    {
        var reading = MidiReader.Read(new MemoryStream(bytes));
        Assert.Empty(reading.Diagnostics);
        return reading.Value!;
    }

    private static IEnumerable<MidiStroke> Strokes(MidiContents file) => file.Tracks.SelectMany(t => t.Strokes);

    private sealed class Endless : Stream
    {
        public override bool CanRead => true;
        public override bool CanSeek => false;
        public override bool CanWrite => false;
        public override long Length => throw new NotSupportedException();
        public override long Position
        {
            get => throw new NotSupportedException();
            set => throw new NotSupportedException();
        }

        public override int Read(byte[] buffer, int offset, int count) => count;

        public override void Flush() { }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
