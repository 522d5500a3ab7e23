namespace Stridewright.Sound;

/// <summary>
/// Keeps a stereo signal below a ceiling. It hears a few milliseconds ahead: the gain that a peak needs is taken as the
/// least of a window before it and averaged over the same window, so that it is reached gently and in time; afterwards it
/// comes back slowly. What stays below the ceiling passes unchanged.
/// </summary>
internal sealed class Limiter
{
    private const double WindowSeconds = 0.005;
    private const double ReturnSeconds = 0.08;
    private const double AsGoodAsOne = 0.9999;

    private readonly float _ceiling;
    private readonly double _return;
    private readonly int _window;
    private readonly float[] _delayed; // frames, interleaved
    private readonly double[] _leasts; // of the last window
    private readonly (long Frame, double Gain)[] _rising; // gains of the window that no later one undercuts
    private int _first;
    private int _count;
    private double _gain = 1;
    private double _sum;
    private long _frame;

    public Limiter(float ceiling, int rate)
    {
        _ceiling = ceiling;
        _return = 1 - Math.Exp(-1 / (ReturnSeconds * rate));
        _window = (int)(WindowSeconds * rate);
        _delayed = new float[2 * _window];
        _leasts = new double[_window];
        _rising = new (long, double)[_window + 1];
        Array.Fill(_leasts, 1);
        _sum = _window;
    }

    /// <summary>Frames by which the output is later than the input.</summary>
    public int Delay => _window - 1;

    /// <summary>Limits interleaved frames in place.</summary>
    public void Process(Span<float> frames)
    {
        for (var i = 0; i < frames.Length; i += 2)
        {
            var place = (int)(_frame % _window);
            (_delayed[2 * place], _delayed[(2 * place) + 1]) = (frames[i], frames[i + 1]);
            var least = Least(Math.Max(Math.Abs(frames[i]), Math.Abs(frames[i + 1])));
            _sum += least - _leasts[place];
            _leasts[place] = least;
            var oldest = 2 * ((place + 1) % _window);
            var gain = (float)(_sum / _window);
            frames[i] = Math.Clamp(_delayed[oldest] * gain, -_ceiling, _ceiling);
            frames[i + 1] = Math.Clamp(_delayed[oldest + 1] * gain, -_ceiling, _ceiling);
            _frame++;
        }
    }

    // Least gain that a frame of the window needs, this one counted in.
    private double Least(float peak)
    {
        _gain += _return * (1 - _gain);
        _gain =
            peak > _ceiling ? Math.Min(_gain, _ceiling / peak)
            : _gain > AsGoodAsOne ? 1
            : _gain;
        while (_count > 0 && _rising[(_first + _count - 1) % _rising.Length].Gain >= _gain)
        {
            _count--;
        }
        _rising[(_first + _count) % _rising.Length] = (_frame, _gain);
        _count++;
        if (_rising[_first].Frame <= _frame - _window)
        {
            _first = (_first + 1) % _rising.Length;
            _count--;
        }
        return _rising[_first].Gain;
    }
}
