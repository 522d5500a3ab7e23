using System.Buffers.Binary;
using Stridewright.Music;

namespace Stridewright.Sound;

/// <summary>
/// A performance on the recorded piano as a WAV file: 44.1 kHz, stereo, 16 bit. It comes in blocks, so that a long piece
/// needs no more memory than a short one; the same performance gives the same bytes.
/// </summary>
public static class Wav
{
    /// <summary>Frames a second.</summary>
    public const int Rate = 44_100;

    private const int BlockFrames = 8192;
    private const int BytesPerFrame = 4;
    private const int HeaderBytes = 44;

    // Chords of both hands at mf stay some decibels below full scale; what is louder meets the limiter.
    private const float Level = 0.6f;
    private const float Ceiling = 0.97f; // -0.26 dB of full scale
    private const double SilenceAfter = 0.5; // seconds
    private const double LongestRinging = 120; // seconds after the end, by far

    /// <summary>True where a performance fits a WAV file, whose length is told in 32 bits (six hours and three
    /// quarters).</summary>
    public static bool Fits(Performance performance)
    {
        ArgumentNullException.ThrowIfNull(performance);
        var longest = (uint.MaxValue / (double)(Rate * BytesPerFrame)) - LongestRinging;
        return performance.SecondsAt(performance.EndTick) < longest;
    }

    /// <summary>The bytes of the file, block by block; what is not asked for is not reckoned.</summary>
    /// <param name="progress">Told the share that is done, from 0 to 1.</param>
    /// <exception cref="ArgumentException">The performance does not fit.</exception>
    public static IEnumerable<byte[]> Blocks(
        Performance performance,
        RecordedPiano piano,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(piano);
        return Fits(performance)
            ? Reckoned(performance, piano, progress, cancellation)
            : throw new ArgumentException("it is longer than a WAV file can be", nameof(performance));
    }

    private static IEnumerable<byte[]> Reckoned(
        Performance performance,
        RecordedPiano piano,
        IProgress<double>? progress,
        CancellationToken cancellation
    )
    {
        var strokes = Ringing.Of(performance);
        var mixer = new Mixer(strokes, Strings.Of(piano, strokes, cancellation));
        var end = (long)Math.Ceiling(performance.SecondsAt(performance.EndTick) * Rate);
        var frames = Math.Max(end, mixer.End) + (long)(SilenceAfter * Rate);
        var limiter = new Limiter(Ceiling, Rate);
        yield return Header(frames);
        var mix = new float[2 * BlockFrames];
        // What the limiter still holds of the block before is dropped at the start and comes at the end.
        var skipped = limiter.Delay;
        for (long done = 0; done < frames + limiter.Delay; done += BlockFrames)
        {
            cancellation.ThrowIfCancellationRequested();
            var block = mix.AsMemory(0, 2 * (int)Math.Min(BlockFrames, frames + limiter.Delay - done));
            block.Span.Clear();
            mixer.Add(block.Span, done, Level);
            limiter.Process(block.Span);
            yield return Bytes(block.Span[(2 * skipped)..]);
            skipped = 0;
            progress?.Report((done + (block.Length / 2)) / (double)(frames + limiter.Delay));
        }
    }

    // After Multimedia Programming Interface and Data Specifications 1.0 (1991): RIFF, WAVE, fmt of PCM, data.
    private static byte[] Header(long frames)
    {
        var header = new byte[HeaderBytes];
        var bytes = checked((uint)(frames * BytesPerFrame));
        "RIFF"u8.CopyTo(header);
        BinaryPrimitives.WriteUInt32LittleEndian(header.AsSpan(4), bytes + HeaderBytes - 8);
        "WAVEfmt "u8.CopyTo(header.AsSpan(8));
        BinaryPrimitives.WriteUInt32LittleEndian(header.AsSpan(16), 16);
        BinaryPrimitives.WriteUInt16LittleEndian(header.AsSpan(20), 1); // PCM
        BinaryPrimitives.WriteUInt16LittleEndian(header.AsSpan(22), 2); // channels
        BinaryPrimitives.WriteUInt32LittleEndian(header.AsSpan(24), Rate);
        BinaryPrimitives.WriteUInt32LittleEndian(header.AsSpan(28), Rate * BytesPerFrame);
        BinaryPrimitives.WriteUInt16LittleEndian(header.AsSpan(32), BytesPerFrame);
        BinaryPrimitives.WriteUInt16LittleEndian(header.AsSpan(34), 16); // bits
        "data"u8.CopyTo(header.AsSpan(36));
        BinaryPrimitives.WriteUInt32LittleEndian(header.AsSpan(40), bytes);
        return header;
    }

    private static byte[] Bytes(ReadOnlySpan<float> samples)
    {
        var bytes = new byte[2 * samples.Length];
        for (var i = 0; i < samples.Length; i++)
        {
            var value = (short)Math.Round(samples[i] * short.MaxValue, MidpointRounding.AwayFromZero);
            BinaryPrimitives.WriteInt16LittleEndian(bytes.AsSpan(2 * i), value);
        }
        return bytes;
    }
}
