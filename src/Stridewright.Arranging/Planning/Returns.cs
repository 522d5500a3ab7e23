namespace Stridewright.Arranging;

/// <summary>Eight-bar blocks whose tune comes again: they keep their rhythm, and vary in filling, texture and bass, so that
/// nothing returns to the letter.</summary>
internal static class Returns
{
    private const int Block = 8,
        Alike = 6;

    /// <summary>The bars, each with how often its block was heard before.</summary>
    public static LatticeBar[] Mark(Lattice lattice)
    {
        var bars = lattice.Bars.ToArray();
        var tunes = new string[bars.Length];
        var note = 0;
        for (var i = 0; i < bars.Length; i++)
        {
            var text = new List<int>();
            for (; note < lattice.Notes.Length && lattice.Notes[note].Start < bars[i].End; note++)
            {
                text.Add(lattice.Notes[note].Start - bars[i].Start);
                text.Add(lattice.Notes[note].Key);
            }
            tunes[i] = string.Join(' ', text);
        }
        var starts = new List<int>();
        for (var i = 0; i + Block <= bars.Length; i++)
        {
            if (bars[i].StrainBar < 0 || bars[i].StrainBar % Block != 0)
            {
                continue;
            }
            var heard = starts.Count(s => Enumerable.Range(0, Block).Count(k => tunes[s + k] == tunes[i + k]) >= Alike);
            starts.Add(i);
            for (var k = i; k < i + Block; k++)
            {
                bars[k] = bars[k] with { Heard = heard };
            }
        }
        return bars;
    }
}
