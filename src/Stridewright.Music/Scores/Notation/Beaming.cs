using System.Numerics;

namespace Stridewright.Music.Notation;

/// <summary>
/// Joins short notes by beams (common practice): within a beat, eighths of 4/4 and 2/2 within a half bar, never over
/// rests or longer notes.
/// </summary>
internal static class Beaming
{
    /// <param name="offset">Place of the bar's start in the full bar of its metre; not zero in a pick-up.</param>
    public static void Apply(ScoreEvent[] events, Metre metre, ScoreTime offset)
    {
        var window = WindowOf(metre);
        var start = 0;
        while (start < events.Length)
        {
            // The events of one window, then the same window in quarters where it holds more than plain eighths.
            var place = events[start].At + offset;
            var end = start + 1;
            while (end < events.Length && SameWindow(place, events[end].At + offset, window))
            {
                end++;
            }
            var fine =
                !metre.IsCompound
                && window > ScoreTime.Quarter
                && window.IsMultipleOf(ScoreTime.Quarter)
                && events.AsSpan(start, end - start).ContainsAnyShort();
            JoinRuns(events, start, end, offset, fine ? ScoreTime.Quarter : window);
            start = end;
        }
    }

    private static bool ContainsAnyShort(this Span<ScoreEvent> events)
    {
        foreach (var e in events)
        {
            if (e.Value.Part > 8)
            {
                return true;
            }
        }
        return false;
    }

    private static ScoreTime WindowOf(Metre metre)
    {
        if (metre.IsCompound)
        {
            return metre.Beat;
        }
        if (metre.Unit >= 8)
        {
            return metre.Count <= 3 ? metre.BarLength : ScoreTime.Quarter;
        }
        return metre is { Count: 4, Unit: 4 } ? ScoreTime.Half : metre.Beat;
    }

    private static bool SameWindow(ScoreTime a, ScoreTime b, ScoreTime window)
    {
        var (x, y) = (a.Per(window), b.Per(window));
        return x.Numerator / x.Denominator == y.Numerator / y.Denominator;
    }

    private static void JoinRuns(ScoreEvent[] events, int start, int end, ScoreTime offset, ScoreTime window)
    {
        for (var i = start; i < end; )
        {
            var last = i;
            while (
                last < end
                && Levels(events[last]) > 0
                && SameWindow(events[i].At + offset, events[last].At + offset, window)
            )
            {
                last++;
            }
            if (last - i > 1)
            {
                Join(events, i, last, offset);
            }
            i = Math.Max(last, i + 1);
        }
    }

    private static void Join(ScoreEvent[] events, int first, int end, ScoreTime offset)
    {
        for (var i = first; i < end; i++)
        {
            var states = new BeamState[Levels(events[i])];
            for (var level = 1; level <= states.Length; level++)
            {
                var before = i > first && Levels(events[i - 1]) >= level;
                var after = i + 1 < end && Levels(events[i + 1]) >= level;
                states[level - 1] = (before, after) switch
                {
                    (false, true) => BeamState.Begin,
                    (true, true) => BeamState.Continue,
                    (true, false) => BeamState.End,
                    _ => HookOf(events[i], i == first, i == end - 1, level, offset),
                };
            }
            events[i] = events[i] with { Beams = ValueList.Create<BeamState>(states) };
        }
    }

    /// <summary>A hook points to the note with which it fills the next larger value.</summary>
    private static BeamState HookOf(ScoreEvent e, bool first, bool last, int level, ScoreTime offset)
    {
        var onLarger = (e.At + offset).IsMultipleOf(new ScoreTime(1, 2L << level));
        return first || (!last && onLarger) ? BeamState.ForwardHook : BeamState.BackwardHook;
    }

    private static int Levels(ScoreEvent e) =>
        e.Notes.Count == 0 || e.Value.Part < 8 ? 0 : BitOperations.Log2((uint)e.Value.Part) - 2;
}
