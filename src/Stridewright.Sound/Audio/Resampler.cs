using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Stridewright.Sound;

/// <summary>
/// Reads a signal at another speed, band-limited: each output sample is a sum of input samples under a sinc windowed after
/// Kaiser, whose pass band ends below the lower of the two half rates (the method of J. O. Smith, Digital Audio Resampling,
/// CCRMA). The kernel stands in a table of phases with straight lines between them.
/// </summary>
internal sealed class Resampler
{
    private const int HalfWidth = 32; // zero crossings on each side
    private const int Phases = 512;
    private const double Beta = 8; // of the window: side lobes below -80 dB
    private const double PassShare = 0.93; // of the lower half rate; the window's slope lies above

    private readonly double _step;
    private readonly int _half;
    private readonly int _taps;
    private readonly float[] _table; // a row of taps for each phase, and one more

    /// <param name="step">Input samples for one output sample.</param>
    public Resampler(double step)
    {
        _step = step;
        var cutoff = PassShare * Math.Min(1, 1 / step);
        _half = (int)Math.Ceiling(HalfWidth / cutoff);
        _taps = (2 * _half + 3) / 4 * 4;
        _table = new float[(Phases + 1) * _taps];
        for (var phase = 0; phase <= Phases; phase++)
        {
            for (var tap = 0; tap < _taps; tap++)
            {
                var distance = tap - (_half - 1) - ((double)phase / Phases);
                _table[(phase * _taps) + tap] = (float)Kernel(distance, cutoff);
            }
        }
    }

    /// <summary>Input samples that some output samples need.</summary>
    public int InputFor(int output) => (int)Math.Ceiling(output * _step) + _half + 1;

    /// <param name="most">Output samples wanted; fewer where the input ends before.</param>
    public float[] Resample(float[] input, int most)
    {
        var padded = new float[input.Length + (2 * _taps)];
        input.CopyTo(padded, _half - 1);
        var output = new float[Math.Min(most, (int)(input.Length / _step))];
        for (var i = 0; i < output.Length; i++)
        {
            var at = i * _step;
            var whole = (int)at;
            var phase = (at - whole) * Phases;
            var row = (int)phase;
            var between = (float)(phase - row);
            var samples = padded.AsSpan(whole, _taps);
            var here = Dot(samples, _table.AsSpan(row * _taps, _taps));
            var there = Dot(samples, _table.AsSpan((row + 1) * _taps, _taps));
            output[i] = here + (between * (there - here));
        }
        return output;
    }

    // Four sums in a fixed order, so that the result does not hang on the width of a machine's registers.
    private static float Dot(ReadOnlySpan<float> a, ReadOnlySpan<float> b)
    {
        var x = MemoryMarshal.Cast<float, Vector128<float>>(a);
        var y = MemoryMarshal.Cast<float, Vector128<float>>(b);
        var sum = Vector128<float>.Zero;
        for (var i = 0; i < x.Length; i++)
        {
            sum += x[i] * y[i];
        }
        return (sum[0] + sum[1]) + (sum[2] + sum[3]);
    }

    private double Kernel(double distance, double cutoff)
    {
        var inWindow = distance / _half;
        if (Math.Abs(inWindow) >= 1)
        {
            return 0;
        }
        var x = Math.PI * cutoff * distance;
        var sinc = x == 0 ? 1 : Math.Sin(x) / x;
        return cutoff * sinc * Bessel0(Beta * Math.Sqrt(1 - (inWindow * inWindow))) / Bessel0(Beta);
    }

    // The modified Bessel function of order zero, by its series.
    private static double Bessel0(double x)
    {
        var (sum, term) = (1.0, 1.0);
        for (var k = 1; term > 1e-12 * sum; k++)
        {
            term *= x * x / (4.0 * k * k);
            sum += term;
        }
        return sum;
    }
}
