namespace Stridewright.Arranging;

/// <summary>Leaves out what a bar's manner does not want: everything where the right hand is silent, the tune where it only
/// fills.</summary>
internal static class Omissions
{
    public static RightLine Apply(Lattice lattice, RightLine line) =>
        lattice.Bars.All(b => Keeps(b, true) && Keeps(b, false))
            ? line
            : line with
            {
                Notes =
                [
                    .. line
                        .Notes.Where(n => Keeps(BarOf(lattice, n), n.IsFiller))
                        .Select(n => n.UnderHeld ? n with { UnderHeld = !OnlyFills(BarOf(lattice, n)) } : n),
                ],
            };

    private static LatticeBar BarOf(Lattice lattice, RightNote note) =>
        lattice.Bars[lattice.BarAt(note.IsFiller ? note.Tick : lattice.Notes[note.Tune].Start)];

    private static bool OnlyFills(LatticeBar bar) => bar.Treatment.Right == RightManner.FillsOnly;

    private static bool Keeps(LatticeBar bar, bool filler) =>
        bar.Treatment.Right != RightManner.Silent && (filler || !OnlyFills(bar));
}
