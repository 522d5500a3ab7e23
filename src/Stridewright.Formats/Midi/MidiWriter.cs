using System.Buffers.Binary;
using System.Numerics;
using System.Text;
using Stridewright.Music;

namespace Stridewright.Formats.Midi;

/// <summary>
/// Writes a performance as a Standard MIDI File 1.0 of format 1: a track of tempo, metre and key, then the right hand
/// on channel 1 and the left on channel 2, both General MIDI program 1 (acoustic grand piano). The same performance gives
/// the same bytes.
/// </summary>
public static class MidiWriter
{
    private const int SustainPedal = 64;

    private readonly record struct Event(long Tick, int Order, byte[] Bytes);

    /// <exception cref="ArgumentException">A value lies outside what the file format or the performance's contract
    /// allows.</exception>
    public static void Write(Performance performance, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(performance);
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentOutOfRangeException.ThrowIfLessThan(performance.TicksPerQuarter, 1, nameof(performance));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(performance.TicksPerQuarter, 0x7FFF, nameof(performance));
        Span<byte> header = [.. "MThd"u8, 0, 0, 0, 6, 0, 1, 0, 3, 0, 0];
        BinaryPrimitives.WriteInt16BigEndian(header[12..], (short)performance.TicksPerQuarter);
        stream.Write(header);
        WriteTrack(stream, performance.Title, Conducting(performance), performance.EndTick);
        WriteTrack(stream, "Right hand", Playing(performance, Hand.Right, channel: 0), performance.EndTick);
        WriteTrack(stream, "Left hand", Playing(performance, Hand.Left, channel: 1), performance.EndTick);
    }

    private static IEnumerable<Event> Conducting(Performance performance)
    {
        foreach (var (tick, metre) in performance.Metres)
        {
            // Clocks (24 to a quarter) of a metronome click: the beat. Eight 32nds to a quarter.
            var clocks = Math.Clamp((metre.Beat * 96).Numerator / (metre.Beat * 96).Denominator, 1, 255);
            var below = BitOperations.Log2((uint)metre.Unit);
            yield return new(tick, 0, Meta(0x58, [(byte)metre.Count, (byte)below, (byte)clocks, 8]));
        }
        foreach (var (tick, key) in performance.Keys)
        {
            var sharps = (sbyte)Math.Clamp(key.Signature, -7, 7);
            yield return new(tick, 1, Meta(0x59, [(byte)(sharps & 0xFF), key.IsMinor ? (byte)1 : (byte)0]));
        }
        foreach (var (tick, tempo) in performance.Tempi)
        {
            if (tempo is < 1 or > 0xFFFFFF)
            {
                throw new ArgumentException($"a tempo of {tempo} microseconds a quarter does not fit a MIDI file");
            }
            yield return new(
                tick,
                2,
                Meta(0x51, [(byte)(tempo >> 16), (byte)((tempo >> 8) & 255), (byte)(tempo & 255)])
            );
        }
    }

    private static IEnumerable<Event> Playing(Performance performance, Hand hand, int channel)
    {
        yield return new(0, 0, [(byte)(0xC0 | channel), 0]);
        foreach (var (tick, down) in performance.Pedal)
        {
            yield return new(tick, 2, [(byte)(0xB0 | channel), SustainPedal, down ? (byte)127 : (byte)0]);
        }
        foreach (var stroke in performance.Strokes.Where(s => s.Hand == hand))
        {
            if (stroke.Key is < 0 or > 127 || stroke.Velocity is < 1 or > 127 || stroke.Length < 1)
            {
                throw new ArgumentException($"a stroke cannot be written: {stroke}");
            }
            var key = (byte)stroke.Key;
            // At one tick keys are released first and struck last.
            yield return new(stroke.Tick + stroke.Length, 1, [(byte)(0x80 | channel), key, 64]);
            yield return new(stroke.Tick, 3, [(byte)(0x90 | channel), key, (byte)stroke.Velocity]);
        }
    }

    private static void WriteTrack(Stream stream, string name, IEnumerable<Event> events, long endTick)
    {
        using var track = new MemoryStream();
        track.WriteByte(0);
        track.Write(Meta(0x03, Encoding.UTF8.GetBytes(name)));
        long now = 0;
        foreach (var e in events.OrderBy(e => e.Tick).ThenBy(e => e.Order))
        {
            VariableLength.Write(track, e.Tick - now);
            track.Write(e.Bytes);
            now = e.Tick;
        }
        VariableLength.Write(track, Math.Max(0, endTick - now));
        track.Write(Meta(0x2F, []));

        Span<byte> head = [.. "MTrk"u8, 0, 0, 0, 0];
        BinaryPrimitives.WriteInt32BigEndian(head[4..], checked((int)track.Length));
        stream.Write(head);
        track.WriteTo(stream);
    }

    private static byte[] Meta(byte type, ReadOnlySpan<byte> data)
    {
        using var bytes = new MemoryStream();
        bytes.WriteByte(0xFF);
        bytes.WriteByte(type);
        VariableLength.Write(bytes, data.Length);
        bytes.Write(data);
        return bytes.ToArray();
    }
}
