namespace Stridewright.Arranging;

/// <summary>
/// Three against four, the secondary rag: groups of three units across the bars of two beats, the tune on the accent of a
/// group, two notes under it. Every unit lies next to the beginning of some group, so that no tune note moves by more
/// than one; what finds its group taken stands plain within. Three bars hold eight groups (reckoned); the name and its use
/// in novelty rags of the 1910s and 1920s are from memory.
/// </summary>
internal static class ThreeAgainstFour
{
    public const int Group = 3;
    private const int Unit = Lattice.TicksPerUnit;
    private const int LowestKey = 60,
        Reach = 12;

    public static RightOnset[] Place(Lattice lattice, RightOnset[] onsets)
    {
        foreach (var (first, end) in Devices.Stretches(lattice, RightManner.ThreeAgainstFour))
        {
            if (lattice.IsDuple && !lattice.Bars[first..end].Any(b => b.IsShort || b.Length % (4 * Unit) != 0))
            {
                onsets = Place(lattice, onsets, lattice.Bars[first].Start, lattice.Bars[end - 1].End);
            }
        }
        return onsets;
    }

    private static RightOnset[] Place(Lattice lattice, RightOnset[] onsets, int from, int to)
    {
        var groups = (to - from) / (Group * Unit);
        to = from + groups * Group * Unit;
        var mine = onsets.Where(o => o.Tick >= from && o.Tick < to && !o.IsFiller).ToList();
        var free = new HashSet<int>(Enumerable.Range(0, mine.Count));
        for (var start = from; start < to; start += Group * Unit)
        {
            // The note that stands there; else of its neighbours the higher, sooner anticipated than late.
            var at = new[] { 0, Unit, -Unit }
                .Select(away => (Away: away, At: mine.FindIndex(o => o.Tick == start + away)))
                .Where(n => n.At >= 0 && free.Contains(n.At) && lattice.Notes[mine[n.At].Tune].OnGrid)
                .Where(n => n.Away == 0 || !mine.Any(o => Math.Abs(o.Tick - start) < Unit))
                .OrderBy(n => n.Away == 0 ? 0 : 1)
                .ThenByDescending(n => lattice.Notes[mine[n.At].Tune].Key)
                .Select(n => n.At)
                .FirstOrDefault(-1);
            if (at >= 0)
            {
                mine[at] = mine[at] with { Tick = start };
                free.Remove(at);
            }
        }
        var filled = new List<RightOnset>(mine);
        var before = onsets.LastOrDefault(o => o.Tick < from && !o.IsFiller, new RightOnset(-1, -1));
        for (var start = from; start < to; start += Group * Unit)
        {
            before = mine.LastOrDefault(o => o.Tick <= start, before);
            if (before.IsFiller)
            {
                continue;
            }
            var accent = lattice.Notes[before.Tune].Key;
            // Where a note of the tune is late, what stands in its place lies under it too.
            int Top(int tick) =>
                mine.Where(o => o.Tick > tick && lattice.Notes[o.Tune].Start <= tick)
                    .Select(o => lattice.Notes[o.Tune].Key)
                    .Append(accent)
                    .Min();
            for (var i = 0; i < Group; i++)
            {
                var tick = start + i * Unit;
                if (!mine.Any(o => Math.Abs(o.Tick - tick) < Unit))
                {
                    filled.Add(
                        i == 0
                            ? new RightOnset(tick, -1) { Use = RightUse.Accent, Keys = (accent, accent) }
                            : new RightOnset(tick, -1) { Use = RightUse.Inner, Keys = Under(Top(tick)) }
                    );
                }
            }
        }
        return [.. onsets.Where(o => o.Tick < from || o.Tick >= to).Concat(filled).OrderBy(o => o.Tick)];
    }

    private static (int, int) Under(int accent) =>
        (Math.Min(accent - 5, Math.Max(LowestKey, accent - Reach)), accent - 1);
}
