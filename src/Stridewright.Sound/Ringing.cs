using Stridewright.Music;

namespace Stridewright.Sound;

/// <summary>A stroke in seconds from the start.</summary>
/// <param name="Start">When it is struck.</param>
/// <param name="Lifted">When the finger leaves the key.</param>
/// <param name="Damped">When the damper falls: with the key, or with the pedal if that is down then, and at the latest
/// when the same key is struck again.</param>
public sealed record RingingStroke(KeyStroke Stroke, double Start, double Lifted, double Damped);

/// <summary>How long the strings of a performance ring.</summary>
public static class Ringing
{
    /// <summary>The strokes in their order.</summary>
    public static ValueList<RingingStroke> Of(Performance performance)
    {
        ArgumentNullException.ThrowIfNull(performance);
        var clock = new TickClock(performance);
        var pedal = performance.Pedal.OrderBy(p => p.Tick).ToList();
        var next = new Dictionary<int, long>();
        var ringing = new RingingStroke[performance.Strokes.Count];
        for (var i = performance.Strokes.Count - 1; i >= 0; i--)
        {
            var stroke = performance.Strokes[i];
            var lifted = stroke.Tick + stroke.Length;
            var damped = Math.Max(lifted, Held(pedal, lifted) ? PedalUp(pedal, lifted, performance.EndTick) : lifted);
            if (next.TryGetValue(stroke.Key, out var again) && again > stroke.Tick)
            {
                damped = Math.Min(damped, again);
            }
            next[stroke.Key] = stroke.Tick;
            ringing[i] = new(stroke, clock.Seconds(stroke.Tick), clock.Seconds(lifted), clock.Seconds(damped));
        }
        return ringing.ToValueList();
    }

    private static bool Held(List<PedalChange> pedal, long tick) =>
        pedal.FindLastIndex(p => p.Tick <= tick) is var last and >= 0 && pedal[last].Down;

    private static long PedalUp(List<PedalChange> pedal, long tick, long end) =>
        pedal.Find(p => p.Tick > tick && !p.Down)?.Tick ?? end;
}
