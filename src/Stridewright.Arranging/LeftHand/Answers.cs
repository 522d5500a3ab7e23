namespace Stridewright.Arranging;

/// <summary>
/// The left hand's answers to calls: where the right hand holds or rests from one bass to the next, the last units before
/// the next bass are a run into it, in place of the chord (common practice: one hand fills, not both).
/// </summary>
internal static class Answers
{
    private const int Unit = Lattice.TicksPerUnit;
    private const int Most = 3,
        Least = 2;

    public static LeftSlot[] Apply(Lattice lattice, RightLine right, LeftSlot[] slots)
    {
        if (!lattice.Bars.Any(b => b.Treatment.Right == RightManner.Answer))
        {
            return slots;
        }
        var answered = new List<LeftSlot>();
        for (var i = 0; i < slots.Length; i++)
        {
            var next = Array.FindIndex(slots, i + 1, s => s.IsBass);
            answered.Add(slots[i]);
            if (!slots[i].IsBass || next < 0 || !HasRoom(lattice, right, slots[i], slots[next]))
            {
                continue;
            }
            // One answer in a bar: where two have room, the later.
            var after = Array.FindIndex(slots, next + 1, s => s.IsBass);
            if (slots[next].Bar == slots[i].Bar && after > 0 && HasRoom(lattice, right, slots[next], slots[after]))
            {
                continue;
            }
            var (from, to) = (slots[i].Tick, slots[next].Tick);
            var first = Math.Max(from + Unit, to - Most * Unit);
            if ((to - first) / Unit < Least || slots[(i + 1)..next].Any(s => s.Changes))
            {
                continue;
            }
            var kept = slots[(i + 1)..next].Where(s => s.Tick < first).ToList();
            answered.AddRange(kept);
            answered[^1] = answered[^1] with { End = Math.Min(answered[^1].End, first) };
            for (var tick = first; tick < to; tick += Unit)
            {
                answered.Add(
                    new LeftSlot(tick, tick + Unit, lattice.BarAt(tick), false, false, false, false) { IsAnswer = true }
                );
            }
            i = next - 1;
        }
        return [.. answered];
    }

    // Both basses follow each other closely, and between them the right hand strikes nothing while the tune goes on.
    private static bool HasRoom(Lattice lattice, RightLine right, LeftSlot bass, LeftSlot next) =>
        lattice.Bars[bass.Bar].Treatment.Right == RightManner.Answer
        && next.Tick - bass.Tick <= lattice.Bars[bass.Bar].Length
        && !right.Notes.Any(n => n.Tick > bass.Tick && n.Tick < next.Tick)
        && right.Notes.Any(n => n.Tick <= bass.Tick && n.Tick > bass.Tick - lattice.Bars[bass.Bar].Length);
}
