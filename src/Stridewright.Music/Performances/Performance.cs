namespace Stridewright.Music;

/// <summary>
/// What is played: keys struck in time, pedal and tempo. Times are ticks from the start; the tempo map turns them into
/// seconds. A recorded take is a performance whose strokes have no ids.
/// </summary>
public sealed record Performance
{
    /// <summary>Ticks to a quarter note, 1 to 32767.</summary>
    public required int TicksPerQuarter { get; init; }

    public string Title { get; init; } = "";

    /// <summary>Strokes by tick, then key.</summary>
    public required ValueList<KeyStroke> Strokes { get; init; }

    public ValueList<PedalChange> Pedal { get; init; } = [];

    /// <summary>Tempo changes by tick; the first stands at tick 0.</summary>
    public required ValueList<TempoChange> Tempi { get; init; }

    public ValueList<MetreChange> Metres { get; init; } = [];

    public ValueList<KeyChange> Keys { get; init; } = [];

    /// <summary>Last tick, at or after the last release.</summary>
    public long EndTick { get; init; }

    /// <summary>Seconds from the start to a tick.</summary>
    public double SecondsAt(long tick)
    {
        double seconds = 0;
        for (var i = 0; i < Tempi.Count && Tempi[i].Tick < tick; i++)
        {
            var until = i + 1 < Tempi.Count ? Math.Min(tick, Tempi[i + 1].Tick) : tick;
            seconds += (until - Tempi[i].Tick) * (Tempi[i].MicrosecondsPerQuarter / 1e6) / TicksPerQuarter;
        }
        return seconds;
    }
}

/// <summary>One key struck and released.</summary>
/// <param name="Tick">When it is struck.</param>
/// <param name="Length">Ticks until its release, at least 1.</param>
/// <param name="Key">MIDI note number 0 to 127.</param>
/// <param name="Velocity">1 to 127.</param>
/// <param name="Id">Id of the score's note; null in a take.</param>
public sealed record KeyStroke(long Tick, long Length, int Key, int Velocity, Hand Hand, string? Id = null);

/// <summary>The sustain pedal goes down or up.</summary>
public sealed record PedalChange(long Tick, bool Down);

public sealed record TempoChange(long Tick, int MicrosecondsPerQuarter);

public sealed record MetreChange(long Tick, Metre Metre);

public sealed record KeyChange(long Tick, Key Key);
