namespace Stridewright.Practice.Lessons;

/// <summary>Some minutes of a day's playing.</summary>
/// <param name="Item">Null: the warm-up or the last playing through.</param>
internal sealed record SessionSlot(PlanItem? Item, int Minutes, bool IsFirst, bool IsAfterBreak);

/// <summary>Fills a session: a warm-up, slices of different things in turn with the hardest in the middle, something easy at the
/// end, breaks in every half-hour.</summary>
internal static class Session
{
    private const int LongSession = 60,
        LeastWithEnds = 15;

    /// <summary>No longer than the minutes, breaks counted in; shorter where there is too little to do.</summary>
    public static List<SessionSlot> Fill(IReadOnlyList<PlanItem> items, int minutes)
    {
        var slice = (int)(minutes > LongSession ? LessonLimits.LongSlice : LessonLimits.Slice).Value;
        for (var breaks = 0; ; breaks++)
        {
            var slots = Slots(items, minutes - breaks * (int)LessonLimits.Rest.Value, slice);
            var broken = Broken(slots);
            if (broken.Count(s => s.IsAfterBreak) <= breaks)
            {
                return broken;
            }
        }
    }

    private static List<SessionSlot> Slots(IReadOnlyList<PlanItem> items, int playing, int slice)
    {
        var ends = playing >= LeastWithEnds;
        var count = playing / slice - (ends ? 2 : 0);
        var warm = slice + playing % slice;
        for (; count > 0; count--)
        {
            if (Middle(items, count, slice, ends ? warm : 0, ends ? slice : 0) is { } middle)
            {
                var slots = middle.Select(item => new SessionSlot(item, slice, false, false));
                return ends ? [new(null, warm, true, false), .. slots, new(null, slice, false, false)] : [.. slots];
            }
        }
        return [];
    }

    // From the middle outwards: what has had least so far, the hardest first; nothing beside itself. Null where the things to do
    // do not fill so many slices.
    private static PlanItem[]? Middle(IReadOnlyList<PlanItem> items, int count, int slice, int before, int after)
    {
        if (count < items.Count)
        {
            // Where not all fit in, something that is being learned does, then who waited longest.
            var learned = items.Where(i => i.IsLearned).MinBy(i => i.LastDay);
            items =
            [
                .. items
                    .OrderByDescending(i => i == learned)
                    .ThenBy(i => i.LastDay)
                    .ThenBy(i => i.Step is null)
                    .ThenByDescending(i => i.Effort)
                    .Take(count),
            ];
        }
        var row = new PlanItem?[count];
        var used = items.ToDictionary(i => i.Id, _ => 0);
        var hardest = items.MaxBy(i => i.Effort)!;
        double whole = before + count * slice + after;
        foreach (
            var place in Enumerable.Range(0, count).OrderBy(i => Math.Abs(2 * i - count + 1)).ThenByDescending(i => i)
        )
        {
            var (from, to) = ((before + place * slice) / whole, (before + (place + 1) * slice) / whole);
            var isMiddle = from >= LessonLimits.HardFrom.Value && to <= LessonLimits.HardTo.Value;
            row[place] = items
                .Where(i =>
                    (used[i.Id] + 1) * slice <= LessonLimits.ItemADay.Value
                    && (isMiddle || items.Count == 1 || i != hardest)
                    && (place == 0 || row[place - 1] != i)
                    && (place == count - 1 || row[place + 1] != i)
                )
                // Each once; then what is being learned has twice the time of drills and of what is played again.
                .OrderBy(i => i.IsLearned ? used[i.Id] : 2 * used[i.Id])
                // Steps before drills, but for the hardest, which has the middle.
                .ThenBy(i => i == hardest || i.Step is not null ? 0 : 1)
                .ThenByDescending(i => i.Effort)
                .FirstOrDefault();
            if (row[place] is not { } chosen)
            {
                return null;
            }
            used[chosen.Id]++;
        }
        return row!;
    }

    // A break before playing would last longer than allowed, in even parts.
    private static List<SessionSlot> Broken(List<SessionSlot> slots)
    {
        var all = slots.Sum(s => s.Minutes);
        var parts = Math.Ceiling(all / LessonLimits.Playing.Value);
        var (running, done) = (0, new List<SessionSlot>());
        foreach (var slot in slots)
        {
            var isDue = running >= all / parts || running + slot.Minutes > LessonLimits.Playing.Value;
            done.Add(slot with { IsAfterBreak = isDue && running > 0 });
            running = isDue ? slot.Minutes : running + slot.Minutes;
        }
        return done;
    }
}
