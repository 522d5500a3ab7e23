using Stridewright.Music;

namespace Stridewright.Practice.Listening;

/// <summary>One key struck in a take.</summary>
/// <param name="Onset">Seconds from the start of the take.</param>
/// <param name="Release">Seconds, after the onset.</param>
/// <param name="Key">MIDI note number.</param>
/// <param name="Velocity">1 to 127.</param>
public readonly record struct PlayedNote(double Onset, double Release, int Key, int Velocity);

/// <summary>The sustain pedal held down once, in seconds from the start of the take.</summary>
public readonly record struct PedalHeld(double Down, double Up);

/// <summary>What was played, by onset, then key.</summary>
public sealed record Take(ValueList<PlayedNote> Notes)
{
    /// <summary>By time; empty where it was not used, or is not known.</summary>
    public ValueList<PedalHeld> Pedal { get; init; } = [];

    /// <summary>The keys and the pedal of a performance in seconds, by its tempo map.</summary>
    public static Take Of(Performance performance)
    {
        ArgumentNullException.ThrowIfNull(performance);
        var clock = new Clock(performance);
        return new Take(
            performance
                .Strokes.Select(s => new PlayedNote(
                    clock.SecondsAt(s.Tick),
                    clock.SecondsAt(s.Tick + s.Length),
                    s.Key,
                    s.Velocity
                ))
                .OrderBy(n => n.Onset)
                .ThenBy(n => n.Key)
                .ToValueList()
        )
        {
            Pedal = PedalOf(performance, clock).ToValueList(),
        };
    }

    private static IEnumerable<PedalHeld> PedalOf(Performance performance, Clock clock)
    {
        long? down = null;
        foreach (var change in performance.Pedal)
        {
            if (!change.Down && down is { } since)
            {
                yield return new(clock.SecondsAt(since), clock.SecondsAt(change.Tick));
            }
            down = change.Down ? down ?? change.Tick : null;
        }
        if (down is { } last && last < performance.EndTick)
        {
            yield return new(clock.SecondsAt(last), clock.SecondsAt(performance.EndTick));
        }
    }

    /// <summary>A tempo map summed once: a take may have thousands of tempo changes.</summary>
    private sealed class Clock
    {
        private readonly long[] _ticks;
        private readonly double[] _seconds;
        private readonly double[] _perTick;

        public Clock(Performance performance)
        {
            var tempi = performance.Tempi;
            _ticks = [.. tempi.Select(t => t.Tick)];
            _perTick = [.. tempi.Select(t => t.MicrosecondsPerQuarter / 1e6 / performance.TicksPerQuarter)];
            _seconds = new double[tempi.Count];
            for (var i = 1; i < tempi.Count; i++)
            {
                _seconds[i] = _seconds[i - 1] + (_ticks[i] - _ticks[i - 1]) * _perTick[i - 1];
            }
        }

        public double SecondsAt(long tick)
        {
            var found = Array.BinarySearch(_ticks, tick);
            var i = Math.Max(0, found >= 0 ? found : ~found - 1);
            while (i + 1 < _ticks.Length && _ticks[i + 1] <= tick)
            {
                i++; // of several changes at one tick the last counts
            }
            return _seconds[i] + (tick - _ticks[i]) * _perTick[i];
        }
    }
}
