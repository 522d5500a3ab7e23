using NAudio.Wave;
using Stridewright.Music;

namespace Stridewright.Sound.Tests;

/// <summary>WAV files of small performances, read back by a library that is not ours.</summary>
internal static class Sounding
{
    public const int TicksPerSecond = 960; // 480 to a quarter at 120

    public static RecordedPiano Piano { get; } =
        new(name => File.OpenRead(Path.Combine(AppContext.BaseDirectory, "piano", name)));

    public static Performance Of(params IEnumerable<(double At, double Length, int Key, int Velocity)> strokes)
    {
        var played = strokes
            .Select(s => new KeyStroke(
                (long)(s.At * TicksPerSecond),
                (long)(s.Length * TicksPerSecond),
                s.Key,
                s.Velocity,
                Hand.Right
            ))
            .OrderBy(s => s.Tick)
            .ThenBy(s => s.Key)
            .ToValueList();
        return new Performance
        {
            TicksPerQuarter = 480,
            Strokes = played,
            Tempi = [new TempoChange(0, 500_000)],
            EndTick = played.Max(s => s.Tick + s.Length),
        };
    }

    public static byte[] Wave(Performance performance) =>
        [.. Wav.Blocks(performance, Piano, null, TestContext.Current.CancellationToken).SelectMany(b => b)];

    /// <summary>The mean of the two channels, full scale 1, and the greatest sample of either.</summary>
    public static (float[] Mono, float Peak) Read(byte[] file)
    {
        using var reader = new WaveFileReader(new MemoryStream(file));
        var samples = new float[2 * reader.SampleCount];
        Assert.Equal(samples.Length, reader.ToSampleProvider().Read(samples));
        var mono = new float[reader.SampleCount];
        var peak = 0f;
        for (var i = 0; i < mono.Length; i++)
        {
            var (left, right) = (samples[2 * i], samples[(2 * i) + 1]);
            mono[i] = (left + right) / 2;
            peak = Math.Max(peak, Math.Max(Math.Abs(left), Math.Abs(right)));
        }
        return (mono, peak);
    }

    /// <summary>Seconds at which the loudness of a millisecond rises to thrice the most of the forty that lie ten before, which is more than a
    /// period of the lowest string.</summary>
    public static List<double> Onsets(float[] mono)
    {
        const int Step = Wav.Rate / 1000;
        var loudness = mono.Chunk(Step).Select(c => c.Max(Math.Abs)).ToArray();
        var onsets = new List<int>();
        for (var i = 0; i < loudness.Length; i++)
        {
            var before = i < 10 ? 0 : loudness[Math.Max(0, i - 50)..Math.Max(1, i - 10)].Max();
            var isRise = loudness[i] > 0.0005 && loudness[i] > 3 * before;
            if (isRise && (onsets.Count == 0 || i - onsets[^1] > 100))
            {
                onsets.Add(i);
            }
        }
        return [.. onsets.Select(i => i * Step / (double)Wav.Rate)];
    }

    /// <summary>The frequency of the strongest partial within 60 cents of one that is expected, in hertz.</summary>
    public static double Frequency(float[] mono, double expected)
    {
        const int Length = 1 << 15;
        var (start, low, high) = (Wav.Rate / 10, expected * Cents(-60), expected * Cents(60));
        var windowed = Enumerable
            .Range(0, Length)
            .Select(i => mono[start + i] * (0.5 - (0.5 * Math.Cos(2 * Math.PI * i / Length))))
            .ToArray();
        var best = (Hertz: 0.0, Power: 0.0);
        for (var hertz = low; hertz < high; hertz *= Cents(0.5))
        {
            // One bin of a discrete Fourier transform, by the recurrence of Goertzel (1958).
            var (turn, one, two) = (2 * Math.Cos(2 * Math.PI * hertz / Wav.Rate), 0.0, 0.0);
            foreach (var sample in windowed)
            {
                (one, two) = (sample + (turn * one) - two, one);
            }
            var power = (one * one) + (two * two) - (turn * one * two);
            best = power > best.Power ? (hertz, power) : best;
        }
        return best.Hertz;
    }

    public static double Cents(double cents) => Math.Pow(2, cents / 1200);
}
