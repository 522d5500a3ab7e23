namespace Stridewright.Formats.Midi;

/// <summary>
/// Pairs the strikes and releases of a track. Of a key that is struck again before its release, the first strike has the
/// first release (common practice; the Standard MIDI File 1.0 leaves it open).
/// </summary>
internal sealed class MidiKeys(MidiFindings findings, MidiBudget budget)
{
    private readonly Dictionary<(int Channel, int Key), Queue<MidiStroke>> _down = [];

    public List<MidiStroke> Strokes { get; } = [];

    /// <summary>The last release.</summary>
    public long LastTick { get; private set; }

    public void Strike(int channel, int key, int velocity, long tick, long at)
    {
        if (budget.Strokes >= MidiLimits.Strokes)
        {
            findings.Add(MidiDamage.TooManyStrokes, at, tick, MidiMessages.TooManyStrokes(MidiLimits.Strokes));
            return;
        }
        budget.Strokes++;
        if (!_down.TryGetValue((channel, key), out var waiting))
        {
            _down.Add((channel, key), waiting = new());
        }
        waiting.Enqueue(new(tick, 0, key, velocity, channel, at));
    }

    public void Release(int channel, int key, long tick, long at)
    {
        if (_down.TryGetValue((channel, key), out var waiting) && waiting.TryDequeue(out var stroke))
        {
            Close(stroke, tick);
        }
        else
        {
            findings.Add(MidiDamage.NeverStruck, at, tick, MidiMessages.NeverStruck);
        }
    }

    /// <summary>The track ends: what is still down is released, at the next strike of its key or here.</summary>
    public void Finish(long tick)
    {
        foreach (var (_, waiting) in _down.OrderBy(d => d.Key))
        {
            while (waiting.TryDequeue(out var stroke))
            {
                findings.Add(MidiDamage.NeverReleased, stroke.Byte, stroke.Tick, MidiMessages.NeverReleased);
                Close(stroke, waiting.TryPeek(out var next) ? next.Tick : tick);
            }
        }
    }

    private void Close(MidiStroke stroke, long tick)
    {
        if (tick <= stroke.Tick)
        {
            findings.Add(MidiDamage.ZeroLength, stroke.Byte, stroke.Tick, MidiMessages.ZeroLength);
        }
        var closed = stroke with { Length = Math.Max(1, tick - stroke.Tick) };
        Strokes.Add(closed);
        LastTick = Math.Max(LastTick, closed.End);
    }
}
