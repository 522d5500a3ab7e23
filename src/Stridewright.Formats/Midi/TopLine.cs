using Stridewright.Music;

namespace Stridewright.Formats.Midi;

/// <summary>One note of the tune on the time line of the file, placed on the grid.</summary>
internal sealed record LineNote(ScoreTime Start, ScoreTime End, MidiStroke Stroke, IReadOnlyList<int> Graces);

/// <summary>
/// The line on top of a part: of keys struck together the highest, without notes under a higher one that sounds on; short
/// notes that fall into the place of the next are its graces.
/// </summary>
internal sealed class TopLine(BeatGrid grid, int ticksPerQuarter)
{
    /// <summary>Notes with this share of the way to the next one held are meant to reach it.</summary>
    private const double HeldShare = 0.6;

    public int LeftOut { get; private set; }

    public List<LineNote> Of(IReadOnlyList<MidiStroke> strokes)
    {
        var heads = Heads(strokes);
        var line = new List<LineNote>(heads.Count);
        for (var i = 0; i < heads.Count; i++)
        {
            var (start, top, graces) = heads[i];
            ScoreTime? next = i + 1 < heads.Count ? heads[i + 1].Start : null;
            line.Add(
                new(start, End(start, top, next, i + 1 < heads.Count ? heads[i + 1].Top.Tick : null), top, graces)
            );
        }
        return line;
    }

    private List<(ScoreTime Start, MidiStroke Top, List<int> Graces)> Heads(IReadOnlyList<MidiStroke> strokes)
    {
        var heads = new List<(ScoreTime Start, MidiStroke Top, List<int> Graces)>();
        foreach (var place in strokes.GroupBy(s => grid.Place(s.Tick)).OrderBy(p => p.Key))
        {
            var last = place.Max(s => s.Tick);
            var close = ticksPerQuarter / 16;
            var graces = place.Where(s => s.Tick < last && s.End <= last + close).ToList();
            var top = place.Except(graces).MaxBy(s => (s.Key, s.Length));
            LeftOut += place.Count() - graces.Count - 1;
            if (heads.Count > 0 && IsUnder(top, heads[^1].Top))
            {
                LeftOut++;
                continue;
            }
            heads.Add((place.Key, top, graces.Select(g => g.Key).TakeLast(MidiLimits.Graces).ToList()));
        }
        return heads;
    }

    // A lower note of which at least half sounds under the held one, and not only for a moment.
    private bool IsUnder(MidiStroke stroke, MidiStroke held)
    {
        var together = Math.Min(held.End, stroke.End) - stroke.Tick;
        return stroke.Key < held.Key && together >= ticksPerQuarter / 8 && together * 2 >= stroke.Length;
    }

    private ScoreTime End(ScoreTime start, MidiStroke stroke, ScoreTime? next, long? nextTick)
    {
        if (nextTick is { } due && Math.Abs(stroke.End - due) <= Math.Max(1, ticksPerQuarter / 240))
        {
            return next!.Value;
        }
        var reachesNext =
            nextTick is { } tick
            && next!.Value - start <= ScoreTime.Half
            && stroke.Length >= HeldShare * (tick - stroke.Tick);
        var end = grid.ExactPlace(stroke.End) ?? (reachesNext ? next!.Value : grid.Place(stroke.End));
        end = end > start ? end : start + grid.Step(start);
        return next is { } limit ? ScoreTime.Min(end, limit) : end;
    }
}
