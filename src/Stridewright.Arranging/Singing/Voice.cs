namespace Stridewright.Arranging;

/// <summary>
/// The sung tune as the piano hears it: when the voice strikes a syllable, when it leaves room, and where it lies. Room is
/// left where it rests, or holds a note beyond half its length and beyond a beat, long enough for a few notes (trade
/// rules, common practice: a held note is heard alone first; whoever fills is out of the way before the next note).
/// </summary>
internal sealed class Voice
{
    private const int Unit = Lattice.TicksPerUnit;

    /// <summary>Units that a gap needs at least.</summary>
    private const int LeastGap = 3;
    private readonly Lattice _lattice;
    private readonly int _octaves;
    private readonly (int From, int To)[] _gaps;

    /// <param name="octaves">From the tune on the lattice to the tune as sung.</param>
    public Voice(Lattice lattice, int octaves)
    {
        _lattice = lattice;
        _octaves = octaves;
        _gaps = [.. Gaps()];
    }

    /// <summary>The key of a note of the tune, as sung.</summary>
    public int KeyOf(int note) => _lattice.Notes[note].Key + 12 * _octaves;

    /// <summary>The gap that a tick lies in; null: the voice is at work.</summary>
    public (int From, int To)? GapAt(int tick)
    {
        var at = FirstEndingAfter(tick);
        return at < _gaps.Length && _gaps[at].From <= tick ? _gaps[at] : null;
    }

    /// <summary>True where a note is struck within a unit from a tick on.</summary>
    public bool StrikesAt(int tick)
    {
        var next = NextNote(tick);
        return next < _lattice.Notes.Length && _lattice.Notes[next].Start < tick + Unit;
    }

    /// <summary>Index of the first note struck at a tick or later; the count of notes: none is.</summary>
    public int NextNote(int tick)
    {
        int low = 0,
            high = _lattice.Notes.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = _lattice.Notes[middle].Start < tick ? (middle + 1, high) : (low, middle);
        }
        return low;
    }

    /// <summary>Keys sung between two ticks, those of bars that the piano plays alone left out.</summary>
    public IEnumerable<int> KeysBetween(int from, int to)
    {
        var first = NextNote(from);
        for (var i = Math.Max(0, first - 1); i < _lattice.Notes.Length && _lattice.Notes[i].Start < to; i++)
        {
            var note = _lattice.Notes[i];
            if (note.End > from && IsSung(i))
            {
                yield return KeyOf(i);
            }
        }
    }

    /// <summary>Keys that are struck between two ticks, likewise.</summary>
    public IEnumerable<int> KeysStruckBetween(int from, int to)
    {
        for (var i = NextNote(from); i < _lattice.Notes.Length && _lattice.Notes[i].Start < to; i++)
        {
            if (IsSung(i))
            {
                yield return KeyOf(i);
            }
        }
    }

    /// <summary>Lowest and highest key sung in the phrase of four bars around a bar; null: none is.</summary>
    public (int Low, int High)? BandAround(int bar)
    {
        var first = Math.Max(0, bar - Math.Max(0, _lattice.Bars[bar].StrainBar) % 4);
        var last = Math.Min(_lattice.Bars.Length - 1, first + 3);
        var keys = KeysBetween(_lattice.Bars[first].Start, _lattice.Bars[last].End).ToList();
        return keys.Count == 0 ? null : (keys.Min(), keys.Max());
    }

    private bool IsSung(int note) => !_lattice.Bars[_lattice.BarAt(_lattice.Notes[note].Start)].Treatment.IsAdded;

    private IEnumerable<(int From, int To)> Gaps()
    {
        var notes = _lattice.Notes;
        for (var i = 0; i < notes.Length; i++)
        {
            var note = notes[i];
            var next = i + 1 < notes.Length ? notes[i + 1].Start : _lattice.End;
            var held = Math.Max(Beat(note.Start), (note.Length + 1) / 2);
            var from = note.Start + Math.Max(2 * Unit, Math.Min(note.Length, held));
            if (next - from >= LeastGap * Unit)
            {
                yield return (from, next);
            }
        }
    }

    // The half bar in duple time: the beat that the left hand's bass marks.
    private int Beat(int tick) =>
        _lattice.IsDuple ? 4 * Unit : (int)_lattice.Bars[_lattice.BarAt(tick)].Metre.Beat.Round(_lattice.Tick);

    private int FirstEndingAfter(int tick)
    {
        int low = 0,
            high = _gaps.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = _gaps[middle].To <= tick ? (middle + 1, high) : (low, middle);
        }
        return low;
    }
}
