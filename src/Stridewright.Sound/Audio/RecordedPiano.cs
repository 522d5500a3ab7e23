using NVorbis;
using Stridewright.Music;

namespace Stridewright.Sound;

/// <summary>
/// A grand piano of which one note in every minor third was recorded, from A0 to C8, at one middling strength; 48 kHz,
/// stereo, Ogg Vorbis.
/// </summary>
/// <param name="open">Opens one of <see cref="Files"/> by its name.</param>
public sealed class RecordedPiano(Func<string, Stream> open)
{
    internal const int Rate = 48_000;

    // A recording begins with some silence: the stroke is taken to be where the sound first reaches this share of its
    // peak (-30 dB), and is kept from a millisecond before.
    private const float OnsetShare = 0.03f;
    private const int BeforeOnset = Rate / 1000;
    private const int OnsetWithin = Rate / 2;

    private static readonly string[] Names = ["C", "D#", "F#", "A"];

    /// <summary>Recorded keys as MIDI note numbers, each with the name of its file.</summary>
    public static ValueList<(int Key, string File)> Files { get; } =
        Enumerable
            .Range(7, 30)
            .Select(third =>
                (3 * third, FormattableString.Invariant($"{Names[third % 4]}{(3 * third / 12) - 1}v10.ogg"))
            )
            .ToValueList();

    /// <summary>The recorded key nearest to a key.</summary>
    public static int Nearest(int key) => Math.Clamp((int)Math.Round(key / 3.0), 7, 36) * 3;

    /// <summary>The left and right channel of a recorded key from its stroke on.</summary>
    /// <param name="frames">At most so many; fewer where the recording ends before.</param>
    internal (float[] Left, float[] Right) Decode(int key, int frames)
    {
        using var reader = new VorbisReader(open(Files.First(f => f.Key == key).File), closeOnDispose: true);
        if (reader.SampleRate != Rate || reader.Channels != 2)
        {
            throw new InvalidDataException($"the recording of key {key} is not {Rate} Hz stereo");
        }
        var samples = new float[2 * (int)Math.Min(reader.TotalSamples, (long)frames + OnsetWithin)];
        var read = 0;
        while (read < samples.Length && reader.ReadSamples(samples, read, samples.Length - read) is > 0 and var more)
        {
            read += more;
        }
        var start = Math.Max(0, Onset(samples.AsSpan(0, Math.Min(read, 2 * OnsetWithin))) - BeforeOnset);
        var length = Math.Min(frames, (read / 2) - start);
        var (left, right) = (new float[length], new float[length]);
        for (var i = 0; i < length; i++)
        {
            (left[i], right[i]) = (samples[2 * (start + i)], samples[(2 * (start + i)) + 1]);
        }
        return (left, right);
    }

    private static int Onset(ReadOnlySpan<float> samples)
    {
        var peak = 0f;
        foreach (var sample in samples)
        {
            peak = Math.Max(peak, Math.Abs(sample));
        }
        for (var i = 0; i < samples.Length; i++)
        {
            if (Math.Abs(samples[i]) >= OnsetShare * peak)
            {
                return i / 2;
            }
        }
        return 0;
    }
}
