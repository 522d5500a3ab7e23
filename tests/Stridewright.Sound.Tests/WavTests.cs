using System.Buffers.Binary;
using System.Text;
using Stridewright.Music;

namespace Stridewright.Sound.Tests;

public sealed class WavTests
{
    [Fact]
    public void Every_key_sounds_within_five_milliseconds_of_its_stroke()
    {
        // Time enough for the string before to fall silent: long ones ring on under their dampers, the highest have none.
        var at = 0.1;
        var strokes = new List<(double At, double Length, int Key, int Velocity)>();
        foreach (var key in Enumerable.Range(21, 88))
        {
            strokes.Add((at, 0.3, key, 40 + (key * 7 % 60)));
            at += key is < 50 or > 86 ? 2 : 0.75;
        }
        var (mono, _) = Sounding.Read(Sounding.Wave(Sounding.Of(strokes)));
        var onsets = Sounding.Onsets(mono);
        Assert.True(onsets.Count == 88, string.Join(" ", onsets.Select(o => $"{o:F3}")));
        Assert.All(onsets.Zip(strokes), o => Assert.InRange(o.First - o.Second.At, -0.005, 0.005));
    }

    // Equal temperament with A4 at 440 Hz (ISO 16). A piano's tuning is stretched (Railsback 1938, from memory): the middle
    // is near it, what lies far below a few cents flat, far above a few cents sharp.
    [Theory]
    [InlineData(45, -10, 1)]
    [InlineData(57, -5, 5)]
    [InlineData(60, -5, 5)]
    [InlineData(69, -5, 5)]
    [InlineData(76, -5, 5)]
    [InlineData(83, -1, 10)]
    public void A_note_has_its_pitch(int key, double low, double high)
    {
        var expected = 440 * Math.Pow(2, (key - 69) / 12.0);
        var (mono, _) = Sounding.Read(Sounding.Wave(Sounding.Of((0, 2.0, key, 70))));
        Assert.InRange(1200 * Math.Log2(Sounding.Frequency(mono, expected) / expected), low, high);
    }

    [Fact]
    public void Keys_without_a_recording_lie_a_semitone_from_the_one_that_has_it()
    {
        double Of(int key) =>
            Sounding.Frequency(
                Sounding.Read(Sounding.Wave(Sounding.Of((0, 2.0, key, 70)))).Mono,
                440 * Math.Pow(2, (key - 69) / 12.0)
            );
        var recorded = Of(60);
        Assert.Equal(100, 1200 * Math.Log2(Of(61) / recorded), 0.6);
        Assert.Equal(-100, 1200 * Math.Log2(Of(59) / recorded), 0.6);
    }

    // Source: Multimedia Programming Interface and Data Specifications 1.0 (1991), the RIFF forms.
    [Fact]
    public void The_header_is_that_of_a_riff_file()
    {
        var file = Sounding.Wave(Sounding.Of((0, 0.5, 60, 80)));
        uint Word(int at) => BinaryPrimitives.ReadUInt32LittleEndian(file.AsSpan(at));
        ushort Half(int at) => BinaryPrimitives.ReadUInt16LittleEndian(file.AsSpan(at));
        Assert.Equal("RIFF", Encoding.ASCII.GetString(file[..4]));
        Assert.Equal("WAVEfmt ", Encoding.ASCII.GetString(file[8..16]));
        Assert.Equal("data", Encoding.ASCII.GetString(file[36..40]));
        Assert.Equal(((uint)file.Length - 8, 16u, (uint)file.Length - 44), (Word(4), Word(16), Word(40)));
        Assert.Equal((1, 2, 44_100u, 176_400u, 4, 16), (Half(20), Half(22), Word(24), Word(28), Half(32), Half(34)));
    }

    [Fact]
    public void It_lasts_as_endlessas_the_music_and_ends_in_silence()
    {
        var performance = Sounding.Of((0, 1, 48, 90), (1, 1, 72, 90)) with { EndTick = 5 * Sounding.TicksPerSecond };
        var (mono, _) = Sounding.Read(Sounding.Wave(performance));
        Assert.Equal(5.5, mono.Length / (double)Wav.Rate, 0.001);
        Assert.NotEqual(0, mono[..(2 * Wav.Rate)].Max());
        Assert.All(mono[(4 * Wav.Rate)..], sample => Assert.Equal(0, sample));
        // Where a chord rings on, so does the file.
        var (rung, _) = Sounding.Read(Sounding.Wave(Sounding.Of((0, 1, 36, 110), (0, 1, 48, 110))));
        Assert.All(rung[^(Wav.Rate / 3)..], sample => Assert.Equal(0, sample));
        Assert.InRange(rung.Length / (double)Wav.Rate, 1.6, 3);
    }

    [Fact]
    public void The_loudest_playing_stays_below_full_scale()
    {
        var storm = Enumerable
            .Range(0, 60)
            .SelectMany(i => Enumerable.Range(0, 10).Select(n => (i * 0.1, 0.5, 33 + (n * 5) + (i % 5), 127)));
        var (_, peak) = Sounding.Read(Sounding.Wave(Sounding.Of(storm)));
        Assert.InRange(peak, 0.9, 0.971);
    }

    [Fact]
    public void A_note_stops_when_its_key_is_lifted_unless_the_pedal_holds_it()
    {
        var dry = Sounding.Of((0, 0.5, 60, 80)) with { EndTick = 3 * Sounding.TicksPerSecond };
        var held = dry with
        {
            Pedal = [new PedalChange(100, true), new PedalChange(2 * Sounding.TicksPerSecond, false)],
        };
        double Loudness(Performance p, double at) =>
            Sounding.Read(Sounding.Wave(p)).Mono.AsSpan((int)(at * Wav.Rate), Wav.Rate / 10).ToArray().Max(Math.Abs);
        Assert.True(Loudness(dry, 1.5) < 0.001);
        Assert.True(Loudness(held, 1.5) > 0.01);
        Assert.True(Loudness(held, 2.9) < 0.001);
    }

    [Fact]
    public void Harder_is_louder_and_brighter()
    {
        // Rate of sign changes stands for brightness.
        (double Loudness, int Changes) Of(int velocity)
        {
            var mono = Sounding.Read(Sounding.Wave(Sounding.Of((0, 1, 48, velocity)))).Mono[..(Wav.Rate / 2)];
            return (
                Math.Sqrt(mono.Average(x => (double)x * x)),
                mono.Zip(mono.Skip(1)).Count(p => p.First < 0 != p.Second < 0)
            );
        }
        var (soft, middle, hard) = (Of(40), Of(70), Of(100));
        Assert.True(soft.Loudness < middle.Loudness && middle.Loudness < hard.Loudness);
        Assert.True(soft.Changes < middle.Changes && middle.Changes < hard.Changes);
    }

    [Fact]
    public void The_same_performance_gives_the_same_bytes()
    {
        var performance = Sounding.Of(Enumerable.Range(0, 40).Select(i => (i * 0.1, 0.3, 30 + i, 60 + i)));
        Assert.True(Sounding.Wave(performance).AsSpan().SequenceEqual(Sounding.Wave(performance)));
    }

    [Fact]
    public void It_comes_in_blocks_tells_how_far_it_is_and_stops_when_told()
    {
        var told = new Shares();
        using var stop = new CancellationTokenSource();
        var blocks = Wav.Blocks(Sounding.Of((0, 60, 60, 80)), Sounding.Piano, told, stop.Token).GetEnumerator();
        for (var i = 0; i < 10; i++)
        {
            Assert.True(blocks.MoveNext());
            Assert.InRange(blocks.Current.Length, 1, 64 * 1024);
        }
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => blocks.MoveNext());
        Assert.Equal(told.Order(), told);
        Assert.InRange(told[^1], 0.01, 0.1);
    }

    [Fact]
    public void What_no_file_can_hold_is_refused()
    {
        var endless = Sounding.Of((0, 1, 60, 80)) with { EndTick = 7L * 3600 * Sounding.TicksPerSecond };
        Assert.False(Wav.Fits(endless));
        Assert.Throws<ArgumentException>(() =>
            Wav.Blocks(endless, Sounding.Piano, null, TestContext.Current.CancellationToken)
        );
    }

    private sealed class Shares : List<double>, IProgress<double>
    {
        public void Report(double value) => Add(value);
    }
}
