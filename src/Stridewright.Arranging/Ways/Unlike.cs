namespace Stridewright.Arranging;

/// <summary>Earlier settings of the same piece that another one is to differ from, and what it costs to do as they did: so
/// much for each cell of a rhythm and each bass that one of them has.</summary>
/// <param name="Price">Thousandths of a natural logarithm.</param>
internal sealed record Unlike(long Price)
{
    private readonly HashSet<int>[] _struck = [];
    private readonly HashSet<(int Tick, int Key)>[] _basses = [];

    private readonly bool[][] _ragged = [];

    public Unlike(IReadOnlyList<Solution> earlier, long price)
        : this(price)
    {
        _ragged = [.. earlier.Select(s => Figures.Ragged(s.Lattice, s.Ragged.Onsets))];
        _struck = [.. earlier.Select(s => s.Ragged.Onsets.Select(o => o.Tick).ToHashSet())];
        _basses =
        [
            .. earlier.Select(s =>
                s.Left.Notes.Where(n => n.Slot.IsBass).Select(n => (n.Slot.Tick, n.Shape.Low)).ToHashSet()
            ),
        ];
    }

    /// <summary>Whether one of the earlier settings rags a bar.</summary>
    public bool IsRagged(int bar) => _ragged.Any(r => bar < r.Length && r[bar]);

    /// <summary>Price of a cell's rhythm.</summary>
    public long Rhythm(RagCell cell, int pattern)
    {
        var alike = 0;
        foreach (var struck in _struck)
        {
            var same = true;
            for (var unit = 0; same && unit < cell.Units; unit++)
            {
                var isStruck = (pattern >> (cell.Units - 1 - unit) & 1) == 1;
                same = isStruck == struck.Contains(cell.Start + unit * Lattice.TicksPerUnit);
            }
            alike += same ? 1 : 0;
        }
        return alike * Price;
    }

    /// <summary>Price of a bass by its lowest key.</summary>
    public long Bass(int tick, int key) => _basses.Count(b => b.Contains((tick, key))) * Price;
}
