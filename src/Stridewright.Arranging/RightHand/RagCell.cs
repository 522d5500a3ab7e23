namespace Stridewright.Arranging;

/// <summary>A half bar (2/4, 4/4) or a beat: the spot on which the ragging decides.</summary>
/// <param name="Start">First tick.</param>
/// <param name="End">The tick after its last; a bar of an odd length may end half a unit after the last whole one.</param>
/// <param name="Units">Whole grid units in it, at least one.</param>
/// <param name="Bar">Index of its bar.</param>
/// <param name="Half">0 or 1 in a duple bar; the beat's index elsewhere.</param>
/// <param name="FirstNote">Index of the first tune note that begins in it.</param>
/// <param name="Notes">How many do.</param>
internal readonly record struct RagCell(int Start, int End, int Units, int Bar, int Half, int FirstNote, int Notes)
{
    public static RagCell[] Cut(Lattice lattice)
    {
        var cells = new List<RagCell>();
        var note = 0;
        for (var b = 0; b < lattice.Bars.Length; b++)
        {
            var bar = lattice.Bars[b];
            var size = CellTicks(lattice, bar);
            var at = bar.Start;
            while (at < bar.End)
            {
                var place = at - bar.Start + bar.Lead;
                var end = Math.Min(bar.End, at + size - place % size);
                var first = note;
                while (note < lattice.Notes.Length && lattice.Notes[note].Start < end)
                {
                    note++;
                }
                var units = Math.Max(1, (end - at) / Lattice.TicksPerUnit);
                cells.Add(new RagCell(at, end, units, b, place / size, first, note - first));
                at = end;
            }
        }
        return [.. cells];
    }

    private static int CellTicks(Lattice lattice, LatticeBar bar)
    {
        if (lattice.IsDuple)
        {
            return 4 * Lattice.TicksPerUnit;
        }
        // At most six units; a metre's beat is one to three eighths, or a half in 3/2.
        return (int)Math.Clamp(bar.Metre.Beat.Round(lattice.Tick), 2, 12);
    }
}
