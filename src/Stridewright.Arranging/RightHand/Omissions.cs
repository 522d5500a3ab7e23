namespace Stridewright.Arranging;

/// <summary>Leaves out what a bar's manner does not want: all of the right hand where it is silent or beside a voice.
/// </summary>
internal static class Omissions
{
    public static RightLine Apply(Lattice lattice, RightLine line) =>
        lattice.Bars.All(Plays)
            ? line
            : line with
            {
                Notes = [.. line.Notes.Where(n => Plays(BarOf(lattice, n)) || lattice.HeldAt(n.Tick) is not null)],
            };

    /// <summary>True where the right hand plays the tune.</summary>
    public static bool Plays(LatticeBar bar) =>
        bar.Treatment.Right is not (RightManner.Silent or RightManner.FillsOnly);

    private static LatticeBar BarOf(Lattice lattice, RightNote note) =>
        lattice.Bars[lattice.BarAt(note.IsFiller ? note.Tick : lattice.Notes[note.Tune].Start)];
}
