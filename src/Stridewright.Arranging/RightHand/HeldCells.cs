using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// The one way that is left to a cell of a held bar: the usual candidate that does the same, so that its neighbours join
/// it at their usual prices, or else one made of what is held. Where a neighbour cannot strike the note that belongs to
/// it, the note is given up, at a price that nothing else reaches.
/// </summary>
internal sealed class HeldCells
{
    private const int Unit = Lattice.TicksPerUnit;
    private const long GivenUp = 10 * RagWeights.Forced;
    private readonly Lattice _lattice;
    private readonly RagCell[] _cells;

    // Ticks of the tune's notes that are held, by index.
    private readonly Dictionary<int, int> _ticks = [];
    private readonly HashSet<int> _leftOut = [];

    public HeldCells(Lattice lattice, RagCell[] cells)
    {
        (_lattice, _cells) = (lattice, cells);
        foreach (var held in lattice.Bars.Select(b => b.Held).OfType<HeldBar>())
        {
            _leftOut.UnionWith(held.LeftOut);
            foreach (var onset in (held.Right ?? []).Where(o => o.Tune >= 0))
            {
                _ticks.TryAdd(onset.Tune, onset.Tick);
            }
        }
    }

    /// <summary>True for a note that a held bar needs to have been struck in the bar before it, or that it has struck
    /// itself out of the bar behind it.</summary>
    public bool MustBeEarly(int note) => Where(note) < _lattice.Notes[note].Start;

    /// <summary>The same of a note struck late.</summary>
    public bool MustBeLate(int note) => Where(note) > _lattice.Notes[note].Start;

    /// <summary>What is left to a cell of its usual candidates.</summary>
    public RagCandidate[] Of(int index, List<RagCandidate> usual)
    {
        var cell = _cells[index];
        if (_lattice.Bars[cell.Bar].Held?.Right is not { } held)
        {
            return [.. usual];
        }
        var wanted = Wanted(index, held);
        var same = usual.Where(c => (c with { Cost = 0, Pattern = wanted.Pattern }) == wanted).ToArray();
        var found = new List<RagCandidate>(same.Length > 0 ? same : [wanted]);
        for (var give = 1; give < 16; give++)
        {
            if (
                (give & 1) == 1 && !wanted.InEarly
                || (give & 2) == 2 && !wanted.InLate
                || (give & 4) == 4 && !wanted.OutEarly
                || (give & 8) == 8 && !wanted.OutLate
            )
            {
                continue;
            }
            found.Add(
                wanted with
                {
                    InEarly = wanted.InEarly && (give & 1) == 0,
                    InLate = wanted.InLate && (give & 2) == 0,
                    OutEarly = wanted.OutEarly && (give & 4) == 0,
                    OutLate = wanted.OutLate && (give & 8) == 0,
                    Cost = GivenUp * int.PopCount(give),
                }
            );
        }
        return [.. found];
    }

    /// <summary>What candidates strike, cell by cell, whatever is held.</summary>
    /// <param name="chosen">The candidate of each cell; null: it strikes nothing.</param>
    public static IEnumerable<RightOnset> Struck(Lattice lattice, RagCell[] cells, RagCandidate?[] chosen)
    {
        for (var i = 0; i < cells.Length; i++)
        {
            var (cell, candidate) = (cells[i], chosen[i]);
            for (var n = 0; n < cell.Notes; n++)
            {
                // A cell may know of its edges only from its neighbours.
                var index = cell.FirstNote + n;
                var place = n < 16 ? (candidate?.Placing ?? 0) >> (2 * n) & 3 : 0;
                var shift =
                    place == 1 ? -Unit
                    : place == 2 ? Unit
                    : 0;
                var isEdge = candidate is null && Crosses(cells, chosen, i, n, out shift);
                if (candidate is not null || isEdge)
                {
                    yield return new RightOnset(lattice.Notes[index].Start + shift, index);
                }
            }
            for (var unit = 0; candidate is { } filled && unit < cell.Units; unit++)
            {
                if ((filled.Fill >> (cell.Units - 1 - unit) & 1) == 1)
                {
                    yield return new RightOnset(cell.Start + unit * Unit, -1);
                }
            }
        }
    }

    // A note of a cell without a candidate that its neighbour strikes.
    private static bool Crosses(RagCell[] cells, RagCandidate?[] chosen, int cell, int note, out int shift)
    {
        var early = note == 0 && cell > 0 && chosen[cell - 1] is { OutEarly: true };
        var late = note == cells[cell].Notes - 1 && cell + 1 < cells.Length && chosen[cell + 1] is { InLate: true };
        shift =
            early ? -Unit
            : late ? Unit
            : 0;
        return early || late;
    }

    /// <summary>All onsets: those of the free cells, and those that are held. A note of the tune that a free bar strikes
    /// is not struck again.</summary>
    /// <param name="chosen">The candidate of each cell.</param>
    public RightOnset[] Onsets(RagCandidate[] chosen)
    {
        var all = Struck(_lattice, _cells, [.. chosen.Select(c => (RagCandidate?)c)]);
        if (_lattice.Bars.All(b => b.Held?.Right is null))
        {
            return [.. all.OrderBy(o => o.Tick)];
        }
        var given = Given(chosen);
        var onsets = all.Where(o =>
                !IsHeld(_lattice.BarAt(o.Tick)) && !_leftOut.Contains(o.Tune) && !given.Contains(o.Tune)
            )
            .ToList();
        var struck = onsets.Where(o => !o.IsFiller).Select(o => o.Tune).ToHashSet();
        foreach (var onset in _lattice.Bars.SelectMany(b => b.Held?.Right ?? []))
        {
            onsets.Add(new RightOnset(onset.Tick, onset.Tune >= 0 && struck.Add(onset.Tune) ? onset.Tune : -1));
        }
        return [.. onsets.OrderBy(o => o.Tick)];
    }

    // Notes that belong to a neighbour of a held bar which could not strike them.
    private HashSet<int> Given(RagCandidate[] chosen)
    {
        var given = new HashSet<int>();
        for (var i = 0; i < _cells.Length; i++)
        {
            var (cell, candidate) = (_cells[i], chosen[i]);
            for (var n = 0; IsHeld(cell.Bar) && n < Math.Min(cell.Notes, 16); n++)
            {
                var (index, place) = (cell.FirstNote + n, candidate.Placing >> (2 * n) & 3);
                var start = _lattice.Notes[index].Start;
                if (
                    place == 1 && start - Unit < cell.Start && !candidate.InEarly
                    || place == 2 && start + Unit >= cell.End && !candidate.OutLate
                )
                {
                    given.Add(index);
                }
            }
        }
        return given;
    }

    private bool IsHeld(int bar) => _lattice.Bars[bar].Held?.Right is not null;

    // Where a note is struck as far as that is held; null: it is free, or left out.
    private int? Where(int note)
    {
        if (_ticks.TryGetValue(note, out var tick))
        {
            return tick;
        }
        var start = _lattice.Notes[note].Start;
        var bar = _lattice.BarAt(start);
        return !IsHeld(bar) || _leftOut.Contains(note) ? null
            : start == _lattice.Bars[bar].Start ? start - Unit
            : start + Unit;
    }

    private RagCandidate Wanted(int index, ValueList<HeldRight> held)
    {
        var cell = _cells[index];
        var next = index + 1 < _cells.Length ? _cells[index + 1] : default;
        int placing = 0,
            pattern = 0,
            fill = 0;
        for (var n = 0; n < Math.Min(cell.Notes, 16); n++)
        {
            var (note, start) = (cell.FirstNote + n, _lattice.Notes[cell.FirstNote + n].Start);
            var tick = Where(note) ?? start;
            placing |=
                (
                    tick < start ? 1
                    : tick > start ? 2
                    : 0
                ) << (2 * n);
        }
        foreach (var onset in held.Where(o => o.Tick >= cell.Start && o.Tick < cell.End))
        {
            var unit = (onset.Tick - cell.Start) / Unit;
            if ((onset.Tick - cell.Start) % Unit == 0 && unit < cell.Units)
            {
                var bit = 1 << (cell.Units - 1 - unit);
                pattern |= bit;
                fill |= onset.Tune < 0 ? bit : 0;
            }
        }
        var last = cell.FirstNote + cell.Notes - 1;
        return new RagCandidate
        {
            Pattern = pattern,
            InEarly = StartsOnNote(cell) && Where(cell.FirstNote) < cell.Start,
            InLate = cell.FirstNote > 0 && held.Any(o => o.Tick == cell.Start && o.Tune == cell.FirstNote - 1),
            OutEarly =
                StartsOnNote(next)
                && held.Any(o => o.Tick >= cell.Start && o.Tick < cell.End && o.Tune == next.FirstNote),
            OutLate = cell.Notes > 0 && Where(last) >= cell.End,
            Placing = placing,
            Fill = fill,
            Cost = 0,
        };
    }

    private bool StartsOnNote(RagCell cell) => cell.Notes > 0 && _lattice.Notes[cell.FirstNote].Start == cell.Start;
}
