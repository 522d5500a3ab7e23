using System.Numerics;

namespace Stridewright.Sound;

/// <summary>
/// What one key sounds like, at 44.1 kHz, from its stroke on, in interleaved frames: as recorded, and with its upper
/// partials taken away. A stroke is a mixture of the two after its velocity: harder is brighter.
/// </summary>
internal sealed class PianoString
{
    /// <summary>Velocity of the recordings: theirs is the tenth of sixteen strengths.</summary>
    public const int RecordedVelocity = 76;

    private const int SoftestVelocity = 30; // all dull
    private const double MostBright = 1.4; // a hard stroke has more of the upper partials than was recorded
    private const int LastDamped = 89; // F6: the strings above have no dampers (common practice of grand pianos)
    private const int EndFade = 441;

    private readonly float[] _bright;
    private readonly float[] _dull;
    private readonly double _damping;

    public PianoString(int key, float[] left, float[] right)
    {
        var hertz = 440 * Math.Pow(2, (key - 69) / 12.0);
        Frames = Math.Min(left.Length, right.Length);
        (_bright, _dull) = (new float[2 * Frames], new float[2 * Frames]);
        var follow = (float)(1 - Math.Exp(-2 * Math.PI * Math.Max(600, 3 * hertz) / Wav.Rate));
        var (dullLeft, dullRight) = (0f, 0f);
        for (var i = 0; i < Frames; i++)
        {
            var fade = Math.Min(1, (Frames - 1 - i) / (float)EndFade);
            dullLeft += follow * (left[i] - dullLeft);
            dullRight += follow * (right[i] - dullRight);
            (_bright[2 * i], _bright[(2 * i) + 1]) = (fade * left[i], fade * right[i]);
            (_dull[2 * i], _dull[(2 * i) + 1]) = (fade * dullLeft, fade * dullRight);
        }
        // Felt stops a short string sooner than a long one: time constants from 120 ms in the bass to 50 ms at the top
        // (our choice).
        var seconds = 0.12 - (0.07 * Math.Clamp((key - 21) / 68.0, 0, 1));
        _damping = Math.Exp(-1 / (seconds * Wav.Rate));
    }

    public int Frames { get; }

    public static bool IsDamped(int key) => key <= LastDamped;

    /// <summary>Frames in which a damped string falls silent (-80 dB).</summary>
    public int DampingFrames => (int)Math.Ceiling(Math.Log(1e-4) / Math.Log(_damping));

    /// <summary>Adds frames of a stroke to a mixture.</summary>
    /// <param name="from">First frame of the stroke that is wanted.</param>
    /// <param name="damped">Frame of the stroke at which the damper falls.</param>
    public void AddTo(Span<float> mix, int from, int damped, int velocity)
    {
        var (gain, bright) = (GainOf(velocity), BrightOf(velocity));
        var (a, b) = (gain * bright, gain * (1 - bright));
        var frames = Math.Min(mix.Length / 2, Frames - from);
        var whole = Math.Clamp(damped - from, 0, frames);
        var sound = _bright.AsSpan(2 * from, 2 * frames);
        var dull = _dull.AsSpan(2 * from, 2 * frames);
        Add(mix, sound[..(2 * whole)], dull[..(2 * whole)], a, b);
        if (whole == frames)
        {
            return;
        }
        var left = Math.Pow(_damping, from + whole - damped);
        for (var i = 2 * whole; i < 2 * frames; i += 2)
        {
            var (x, y) = ((float)(left * a), (float)(left * b));
            mix[i] += (x * sound[i]) + (y * dull[i]);
            mix[i + 1] += (x * sound[i + 1]) + (y * dull[i + 1]);
            left *= _damping;
        }
    }

    private static void Add(Span<float> mix, ReadOnlySpan<float> sound, ReadOnlySpan<float> dull, float a, float b)
    {
        var width = Vector<float>.Count;
        var i = 0;
        for (; i <= sound.Length - width; i += width)
        {
            var sum =
                new Vector<float>(mix[i..]) + (new Vector<float>(sound[i..]) * a) + (new Vector<float>(dull[i..]) * b);
            sum.CopyTo(mix[i..]);
        }
        for (; i < sound.Length; i++)
        {
            mix[i] = mix[i] + (sound[i] * a) + (dull[i] * b);
        }
    }

    /// <summary>Gain of a velocity over the recordings: amplitude goes with its square (Downloadable Sounds Level 1, from
    /// memory).</summary>
    internal static float GainOf(int velocity) => velocity * velocity / (float)(RecordedVelocity * RecordedVelocity);

    private static float BrightOf(int velocity) =>
        (float)Math.Clamp((velocity - SoftestVelocity) / (double)(RecordedVelocity - SoftestVelocity), 0, MostBright);
}
