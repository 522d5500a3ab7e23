using System.Buffers.Binary;
using Stridewright.Music;

namespace Stridewright.Formats.Midi;

/// <summary>
/// Reads Standard MIDI Files 1.0 of formats 0, 1 and 2. Whatever the input, there is a result with findings and no
/// exception; every finding names its byte, and its tick inside a track. Time and memory are bounded by the bytes that
/// are there, which are limited; no length that a file declares is believed. What is done about each kind of damage
/// stands in <see cref="MidiPolicy"/>.
/// </summary>
public static class MidiReader
{
    private const int ChunkHead = 8;
    private const int HeaderLength = 6;

    /// <summary>The file's music; null, with an error, when it is refused.</summary>
    public static Reading<MidiContents> Read(Stream source)
    {
        ArgumentNullException.ThrowIfNull(source);
        var findings = new MidiFindings();
        var file = ReadAll(source) is { } bytes ? new Chunks(bytes, findings).Read() : null;
        if (file is null && findings.ToDiagnostics().Count == 0)
        {
            findings.Add(MidiDamage.TooLarge, MidiLimits.Size, null, MidiMessages.TooLarge(MidiLimits.Size >> 20));
        }
        return new(file, findings.ToDiagnostics());
    }

    // Null when there is more than the limit.
    private static byte[]? ReadAll(Stream source)
    {
        using var bytes = new MemoryStream();
        var buffer = new byte[81920];
        for (var count = source.Read(buffer); count > 0; count = source.Read(buffer))
        {
            bytes.Write(buffer, 0, count);
            if (bytes.Length > MidiLimits.Size)
            {
                return null;
            }
        }
        return bytes.ToArray();
    }

    /// <summary>The chunks of one file, one after the other.</summary>
    private sealed class Chunks(byte[] bytes, MidiFindings findings)
    {
        private readonly List<MidiTrack> _tracks = [];
        private readonly MidiBudget _budget = new();
        private MidiDivision _division;
        private int _format;
        private int _declared;

        public MidiContents? Read()
        {
            var at = ReadHeader();
            while (at >= 0 && bytes.Length - at >= ChunkHead)
            {
                at = ReadChunk(at);
            }
            if (at < 0)
            {
                return null;
            }
            if (at < bytes.Length)
            {
                findings.Add(
                    MidiDamage.BytesBetweenChunks,
                    at,
                    null,
                    MidiMessages.BytesBetweenChunks(bytes.Length - at)
                );
            }
            return Finish();
        }

        // Where the chunks after the header begin; -1 when there is no going on.
        private int ReadHeader()
        {
            if (bytes.Length == 0)
            {
                findings.Add(MidiDamage.Empty, 0, null, MidiMessages.Empty);
                return -1;
            }
            if (!bytes.AsSpan().StartsWith("MThd"u8))
            {
                findings.Add(MidiDamage.NoHeader, 0, null, MidiMessages.NoHeader(bytes));
                return -1;
            }
            var length = bytes.Length < ChunkHead ? 0 : BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(4));
            if (length < HeaderLength || bytes.Length < ChunkHead + HeaderLength)
            {
                findings.Add(
                    MidiDamage.HeaderCut,
                    Math.Min(bytes.Length, ChunkHead + (long)length),
                    null,
                    MidiMessages.HeaderCut
                );
                return -1;
            }
            _format = BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(8));
            _declared = BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(10));
            if (_format > 2)
            {
                findings.Add(MidiDamage.UnknownFormat, 8, null, MidiMessages.UnknownFormat(_format));
                return -1;
            }
            if (!MidiDivision.TryRead(BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(12)), out _division))
            {
                findings.Add(MidiDamage.BadDivision, 12, null, MidiMessages.BadDivision);
                return -1;
            }
            if (length > HeaderLength)
            {
                findings.Add(MidiDamage.LongHeader, 4, null, MidiMessages.LongHeader);
            }
            return (int)Math.Min(bytes.Length, ChunkHead + (long)length);
        }

        // Where the next chunk begins; -1 when there is no going on.
        private int ReadChunk(int at)
        {
            var kind = bytes.AsSpan(at, 4);
            if (kind.ContainsAnyExceptInRange((byte)' ', (byte)'~'))
            {
                // The length before was wrong: the next track is looked for.
                var next = bytes.AsSpan(at).IndexOf("MTrk"u8);
                var skipped = next < 0 ? bytes.Length - at : next;
                findings.Add(MidiDamage.BytesBetweenChunks, at, null, MidiMessages.BytesBetweenChunks(skipped));
                return at + skipped;
            }
            var start = at + ChunkHead;
            var declared = start + (long)BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(at + 4));
            var end = (int)Math.Min(declared, bytes.Length);
            if (!kind.SequenceEqual("MTrk"u8))
            {
                return end;
            }
            if (_tracks.Count >= MidiLimits.Tracks)
            {
                findings.Add(MidiDamage.TooManyTracks, at, null, MidiMessages.TooManyTracks(MidiLimits.Tracks));
                return end;
            }
            var reader = new MidiTrackReader(bytes, start, end, declared > end, findings, _budget);
            if (!reader.Read(_division.MostTicks))
            {
                return -1;
            }
            _tracks.Add(reader.ToTrack(_tracks.Count + 1));
            if (declared <= end)
            {
                return end;
            }
            // The length is not to be trusted: what comes after the track's own end may be another track.
            return CutOff(reader, declared - start) ? reader.At : -1;
        }

        private bool CutOff(MidiTrackReader reader, long declared)
        {
            var message = MidiMessages.CutOff(declared, bytes.Length - reader.Start);
            return findings.Add(
                _budget.Strokes < MidiLimits.UsableStrokes ? MidiDamage.CutOffEarly : MidiDamage.CutOff,
                reader.At,
                reader.Tick,
                message
            );
        }

        private MidiContents? Finish()
        {
            if (_tracks.Count == 0)
            {
                findings.Add(MidiDamage.NoTracks, bytes.Length, null, MidiMessages.NoTracks);
                return null;
            }
            if (_budget.Strokes == 0)
            {
                findings.Add(MidiDamage.NoNotes, bytes.Length, _tracks.Max(t => t.EndTick), MidiMessages.NoNotes);
                return null;
            }
            if (_declared != _tracks.Count && _tracks.Count < MidiLimits.Tracks)
            {
                findings.Add(MidiDamage.TrackCount, 10, null, MidiMessages.TrackCount(_declared, _tracks.Count));
            }
            else if (_format == 0 && _tracks.Count > 1)
            {
                findings.Add(MidiDamage.TrackCount, 8, null, MidiMessages.Format0(_tracks.Count));
            }
            var file = new MidiContents
            {
                Format = _format,
                TicksPerQuarter = _division.TicksPerQuarter,
                Tracks = _tracks.ToValueList(),
            };
            if (!_division.IsSeconds)
            {
                return file;
            }
            findings.Add(MidiDamage.SecondsNotBeats, 12, null, MidiMessages.SecondsNotBeats);
            return _division.InQuarters(file);
        }
    }
}

/// <summary>What all tracks of a file have taken in together.</summary>
internal sealed class MidiBudget
{
    public int Strokes { get; set; }

    public int Marks { get; set; }
}
