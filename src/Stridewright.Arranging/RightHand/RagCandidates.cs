namespace Stridewright.Arranging;

/// <summary>One way to place the tune's notes of a cell and fill around them.</summary>
internal readonly record struct RagCandidate
{
    /// <summary>Struck units; the highest of the cell's bits is its first unit.</summary>
    public required int Pattern { get; init; }

    /// <summary>The cell's first tune note was taken early into the cell before.</summary>
    public required bool InEarly { get; init; }

    /// <summary>The note before was pushed late onto the cell's first unit.</summary>
    public required bool InLate { get; init; }

    public required bool OutEarly { get; init; }

    public required bool OutLate { get; init; }

    /// <summary>Two bits per note of the cell: 0 plain, 1 early, 2 late.</summary>
    public required int Placing { get; init; }

    /// <summary>Units filled, as in <see cref="Pattern"/>.</summary>
    public required int Fill { get; init; }

    public required long Cost { get; init; }
}

/// <summary>Lists the ways of each cell with their prices.</summary>
internal sealed class RagCandidates(Lattice lattice, RagCell[] cells, RagRules rules)
{
    private const int Unit = Lattice.TicksPerUnit;
    private readonly List<RagCandidate> _found = [];
    private readonly HeldCells _held = new(lattice, cells);
    private readonly int[] _placed = new int[16];
    private RagCell _cell;
    private int _index;

    /// <summary>What the chosen candidates strike, and what is held.</summary>
    public RightOnset[] Onsets(RagCandidate[] chosen) => _held.Onsets(chosen);

    public RagCandidate[] Of(int index)
    {
        _found.Clear();
        _index = index;
        _cell = cells[index];
        foreach (var inEarly in (ReadOnlySpan<bool>)[false, true])
        {
            foreach (var inLate in (ReadOnlySpan<bool>)[false, true])
            {
                if (inEarly && (inLate || !StartsOnNote(_cell)))
                {
                    continue;
                }
                if (inLate && (StartsOnNote(_cell) || index == 0))
                {
                    continue;
                }
                Place(0, inEarly, inLate, 0, 0, inLate ? _cell.Start : int.MinValue);
            }
        }
        return _held.Of(index, _found);
    }

    // What a held bar needs of its neighbours is never refused.
    private long? Early(int note, RagCell cell) =>
        rules.EarlyPrice(note, cell) ?? (_held.MustBeEarly(note) ? RagWeights.Forced : null);

    private long? Late(int note) => rules.LatePrice(note, _cell) ?? (_held.MustBeLate(note) ? RagWeights.Forced : null);

    private bool StartsOnNote(RagCell cell) => cell.Notes > 0 && lattice.Notes[cell.FirstNote].Start == cell.Start;

    // Places note n of the cell after the one struck at `last`, then the rest.
    private void Place(int n, bool inEarly, bool inLate, int placing, long cost, int last)
    {
        if (n >= Math.Min(_cell.Notes, _placed.Length))
        {
            Close(inEarly, inLate, placing, cost, last);
            return;
        }
        var at = _cell.FirstNote + n;
        var note = lattice.Notes[at];
        if (n == 0 && inEarly)
        {
            _placed[0] = _cell.Start - Unit;
            Place(1, inEarly, inLate, 1, cost, _placed[0]);
            return;
        }
        if (note.Start > last)
        {
            _placed[n] = note.Start;
            Place(n + 1, inEarly, inLate, placing, cost + rules.ApartPrice(at, note.Start), note.Start);
        }
        // In a cell of an odd length, early may lie before it and late beyond the next one's first unit.
        if (note.Start - Unit > last && note.Start - Unit >= _cell.Start && Early(at, _cell) is { } early)
        {
            _placed[n] = note.Start - Unit;
            var price = early + rules.ApartPrice(at, _placed[n]);
            Place(n + 1, inEarly, inLate, placing | (1 << (2 * n)), cost + price, _placed[n]);
        }
        if (note.Start > last && note.Start + Unit <= _cell.End && Late(at) is { } late)
        {
            _placed[n] = note.Start + Unit;
            var price = late + rules.ApartPrice(at, _placed[n]);
            Place(n + 1, inEarly, inLate, placing | (2 << (2 * n)), cost + price, _placed[n]);
        }
    }

    private void Close(bool inEarly, bool inLate, int placing, long cost, int last)
    {
        var outLate = last >= _cell.End;
        int struck = inLate ? Bit(0) : 0,
            closed = 0;
        for (var n = 0; n < Math.Min(_cell.Notes, _placed.Length); n++)
        {
            var note = lattice.Notes[_cell.FirstNote + n];
            var place = _placed[n];
            if (place >= _cell.Start && place < _cell.End)
            {
                var unit = (place - _cell.Start) / Unit;
                struck |= (place - _cell.Start) % Unit == 0 ? Bit(unit) : 0;
                closed |= Bit(unit);
            }
            if (place < note.Start && note.Start < _cell.End)
            {
                // The place an early note has left stays silent: the syncopation sounds through it.
                closed |= Bit((note.Start - _cell.Start) / Unit);
            }
        }
        var next = _index + 1 < cells.Length ? cells[_index + 1] : default;
        CloseWith(false, outLate, struck, closed, placing, cost, inEarly, inLate);
        var lastUnit = _cell.Start + (_cell.Units - 1) * Unit;
        if (
            !outLate
            && lastUnit + Unit == _cell.End
            && next.Notes > 0
            && StartsOnNote(next)
            && last < lastUnit
            && (closed & Bit(_cell.Units - 1)) == 0
            && Early(next.FirstNote, next) is { } early
        )
        {
            var bit = Bit(_cell.Units - 1);
            var price = early + rules.ApartPrice(next.FirstNote, lastUnit);
            CloseWith(true, false, struck | bit, closed | bit, placing, cost + price, inEarly, inLate);
        }
    }

    private void CloseWith(
        bool outEarly,
        bool outLate,
        int struck,
        int closed,
        int placing,
        long cost,
        bool inEarly,
        bool inLate
    )
    {
        if (outLate && _index + 1 < cells.Length && StartsOnNote(cells[_index + 1]))
        {
            return;
        }
        var open = rules.FillableUnits(_cell) & ~closed & ~struck;
        for (var fill = open; ; fill = (fill - 1) & open)
        {
            var pattern = struck | fill;
            var total = cost + rules.PatternPrice(_cell, pattern, struck) + rules.FillPrice(_cell, fill, pattern);
            _found.Add(
                new RagCandidate
                {
                    Pattern = pattern,
                    InEarly = inEarly,
                    InLate = inLate,
                    OutEarly = outEarly,
                    OutLate = outLate,
                    Placing = placing,
                    Fill = fill,
                    Cost = total,
                }
            );
            if (fill == 0)
            {
                break;
            }
        }
    }

    // A bar of an odd length may hold a tick beyond its last unit; it has no bit.
    private int Bit(int unit) => unit < _cell.Units ? 1 << (_cell.Units - 1 - unit) : 0;
}
