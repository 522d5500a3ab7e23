using Stridewright.Music;

namespace Stridewright.Workbench.Listening;

/// <summary>One thing that a keyboard told.</summary>
/// <param name="At">Seconds from the start of the take, not before it.</param>
/// <param name="Key">MIDI note number; null: it is the pedal.</param>
/// <param name="Velocity">1 to 127, 0 where the key is let go.</param>
/// <param name="Pedal">The sustain pedal goes down or up; null: it is a key.</param>
public sealed record PlayedEvent(double At, int? Key = null, int Velocity = 0, bool? Pedal = null);

/// <summary>Makes a performance of what a keyboard told, a tenth of a millisecond a tick.</summary>
internal static class TakeEvents
{
    /// <summary>Most that one take holds; its file still fits into a document of the shelf.</summary>
    public const int Most = 60_000;

    private const int TicksPerQuarter = 5000,
        MicrosecondsPerQuarter = 500_000;
    private const double TicksPerSecond = 10_000,
        Longest = 6 * 3600, // seconds
        Held = 0.5; // seconds that a key sounds which was not let go

    public static bool IsOne(PlayedEvent e) =>
        e.At is >= 0 and <= Longest
        && (
            e.Key is null
                ? e.Pedal is not null
                : e.Pedal is null && e is { Key: >= 0 and < 128, Velocity: >= 0 and < 128 }
        );

    /// <param name="events">Those of one moment in the order in which they were told.</param>
    public static Performance Performance(string title, IReadOnlyList<PlayedEvent> events)
    {
        var down = new Dictionary<int, (long Tick, int Velocity)>();
        var (strokes, pedal, end) = (new List<KeyStroke>(), new List<PedalChange>(), 0L);
        foreach (var e in events.OrderBy(e => e.At))
        {
            var tick = (long)Math.Round(e.At * TicksPerSecond);
            end = tick;
            if (e.Pedal is { } isDown)
            {
                pedal.Add(new(tick, isDown));
            }
            else if (e.Key is { } key)
            {
                LetGo(key, tick);
                if (e.Velocity > 0)
                {
                    down[key] = (tick, e.Velocity);
                }
            }
        }
        var last = end + (long)(Held * TicksPerSecond);
        foreach (var key in down.Keys.Order().ToList())
        {
            LetGo(key, last);
        }
        return new Performance
        {
            Title = title,
            TicksPerQuarter = TicksPerQuarter,
            Tempi = [new TempoChange(0, MicrosecondsPerQuarter)],
            Strokes = strokes.OrderBy(s => s.Tick).ThenBy(s => s.Key).ToValueList(),
            Pedal = pedal.ToValueList(),
            EndTick = last,
        };

        void LetGo(int key, long tick)
        {
            if (down.Remove(key, out var since))
            {
                var length = Math.Max(1, tick - since.Tick);
                strokes.Add(new KeyStroke(since.Tick, length, key, since.Velocity, Hand.Right));
            }
        }
    }
}
