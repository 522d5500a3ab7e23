namespace Stridewright.Arranging;

/// <summary>Everything that was found for a setting, stage by stage: what reasons are read off, and what other ways and
/// another working start from.</summary>
/// <param name="Stage">The lattice, the brief, the hands and the tempo of the last search.</param>
/// <param name="Right">The right hand as written, crushed notes with it.</param>
internal sealed record Solution(
    Plan Plan,
    Stage Stage,
    Ragged Ragged,
    HomePositions Homes,
    RightLine Right,
    LeftLine Left,
    Settled Settled
)
{
    public Lattice Lattice => Stage.Lattice;

    public bool HasNotes => Lattice.Notes.Length > 0;
}
