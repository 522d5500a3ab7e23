using Stridewright.Music;

namespace Stridewright.Sound;

/// <summary>Seconds of ticks, found in the logarithm of the tempo changes.</summary>
internal sealed class TickClock
{
    private readonly long[] _ticks;
    private readonly double[] _seconds;
    private readonly double[] _secondsPerTick;

    public TickClock(Performance performance)
    {
        var tempi = performance.Tempi;
        (_ticks, _seconds, _secondsPerTick) = (new long[tempi.Count], new double[tempi.Count], new double[tempi.Count]);
        for (var i = 0; i < tempi.Count; i++)
        {
            _ticks[i] = tempi[i].Tick;
            _secondsPerTick[i] = tempi[i].MicrosecondsPerQuarter / 1e6 / performance.TicksPerQuarter;
            _seconds[i] =
                i == 0
                    ? _ticks[0] * _secondsPerTick[0]
                    : _seconds[i - 1] + (_ticks[i] - _ticks[i - 1]) * _secondsPerTick[i - 1];
        }
    }

    public double Seconds(long tick)
    {
        var found = Array.BinarySearch(_ticks, tick);
        var i = Math.Max(0, found >= 0 ? found : ~found - 1);
        return _seconds[i] + (tick - _ticks[i]) * _secondsPerTick[i];
    }
}
