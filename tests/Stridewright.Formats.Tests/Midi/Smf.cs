using System.Buffers.Binary;
using System.Text;

namespace Stridewright.Formats.Tests.Midi;

/// <summary>Builds Standard MIDI Files byte by byte, sound ones and others.</summary>
internal static class Smf
{
    public static readonly byte[] EndOfTrack = [0xFF, 0x2F, 0];

    /// <summary>A file of format 0 or 1 whose tracks are as given.</summary>
    public static byte[] File(int division, params byte[][] tracks) =>
        [.. Header(tracks.Length == 1 ? 0 : 1, tracks.Length, division), .. tracks.SelectMany(t => Chunk("MTrk", t))];

    public static byte[] Header(int format, int tracks, int division) =>
        [.. "MThd"u8, 0, 0, 0, 6, .. Two(format), .. Two(tracks), .. Two(division)];

    public static byte[] Chunk(string kind, byte[] data)
    {
        var length = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(length, data.Length);
        return [.. Encoding.ASCII.GetBytes(kind), .. length, .. data];
    }

    /// <summary>Data of a track: events at their ticks, and an end mark.</summary>
    public static byte[] Track(params IEnumerable<(long Tick, byte[] Event)>[] events)
    {
        using var data = new MemoryStream();
        long now = 0;
        foreach (var (tick, e) in events.SelectMany(e => e).OrderBy(e => e.Tick).ThenBy(e => e.Event[0] & 0xF0))
        {
            Formats.Midi.VariableLength.Write(data, tick - now);
            data.Write(e);
            now = tick;
        }
        return [.. data.ToArray(), 0, .. EndOfTrack];
    }

    public static IEnumerable<(long Tick, byte[] Event)> Note(long tick, long length, int key, int channel = 1) =>
        [(tick, [(byte)(0x8F + channel), (byte)key, 80]), (tick + length, [(byte)(0x7F + channel), (byte)key, 64])];

    /// <summary>Keys one after the other, each as long as the last.</summary>
    public static IEnumerable<(long Tick, byte[] Event)> Line(long tick, long length, int channel, params int[] keys) =>
        keys.SelectMany((key, i) => Note(tick + i * length, length, key, channel));

    public static IEnumerable<(long Tick, byte[] Event)> Chord(
        long tick,
        long length,
        int channel,
        params int[] keys
    ) => keys.SelectMany(key => Note(tick, length, key, channel));

    public static IEnumerable<(long Tick, byte[] Event)> Name(string name) => Meta(0, 3, Encoding.UTF8.GetBytes(name));

    public static IEnumerable<(long Tick, byte[] Event)> Lyric(long tick, string text) =>
        Meta(tick, 5, Encoding.UTF8.GetBytes(text));

    public static IEnumerable<(long Tick, byte[] Event)> Metre(long tick, int count, int power) =>
        Meta(tick, 0x58, [(byte)count, (byte)power, 24, 8]);

    public static IEnumerable<(long Tick, byte[] Event)> Key(long tick, int sharps, bool minor = false) =>
        Meta(tick, 0x59, [(byte)(sharps & 0xFF), minor ? (byte)1 : (byte)0]);

    public static IEnumerable<(long Tick, byte[] Event)> Tempo(long tick, int microseconds) =>
        Meta(tick, 0x51, [(byte)(microseconds >> 16), (byte)((microseconds >> 8) & 255), (byte)(microseconds & 255)]);

    public static IEnumerable<(long Tick, byte[] Event)> Meta(long tick, byte type, byte[] data) =>
        [(tick, [0xFF, type, (byte)data.Length, .. data])];

    public static byte[] Hex(string text) => Convert.FromHexString(text.Replace(" ", "", StringComparison.Ordinal));

    private static byte[] Two(int value) => [(byte)(value >> 8), (byte)(value & 255)];
}
