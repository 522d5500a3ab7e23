using System.Numerics;

namespace Stridewright.Arranging;

/// <summary>Extra prices that hold shares of a whole setting down: raised until they do.</summary>
/// <param name="Displacement">Of each displaced note.</param>
/// <param name="Lateness">Of each late note.</param>
/// <param name="Syncopation">Of each syncopation.</param>
/// <param name="Tie">Of each note taken early over a beat of its cell, or late.</param>
internal readonly record struct RagExtra(long Displacement, long Lateness, long Syncopation, long Tie)
{
    public long Sum => Displacement + Lateness + Syncopation;
}

/// <summary>
/// What may be displaced and filled, and what it costs: the ragging rules (anticipate only a note that differs from the
/// one before or leaves it a full unit, belongs to the chord of its beat and sounds through it; late notes are rare;
/// phrase starts, the first bar and the last note stand on the beat; stressed syllables rather than others) under the level and raggedness of a brief. Source:
/// common practice, and the School of Ragtime exercises of 1908 for syncopations that are held through the beat.
/// </summary>
internal sealed class RagRules
{
    private const int Unit = Lattice.TicksPerUnit;
    private const long ContentShare = 35,
        RhythmShare = 60,
        FourBarShare = 30,
        TwoBarShare = 55,
        TuneShare = 25;
    private readonly Lattice _lattice;
    private readonly RagWeights _weights;
    private readonly int _level;
    private readonly bool _plain;

    // Per bar: the tune was asked for as it stands, or not at all.
    private readonly bool[] _standsPlain;

    // Per bar: what its raggedness adds to a syncopation and to a filler.
    private readonly (long Syncopation, long Filler)[] _ragged;

    // Per bar: figures may stand there. At level 1 that is one bar of a phrase.
    private readonly bool[] _figured;

    // What the notes put in cost more at the first levels; the figures that are kept there do not pay it.
    private readonly long _dearer;
    private readonly long _displacement;
    private readonly long _lateness;
    private readonly long _tie;
    private readonly bool _hasWords;
    private readonly Unlike? _unlike;
    private readonly ulong _seed;
    private readonly ulong[] _content;
    private readonly ulong[] _rhythm;
    private readonly Dictionary<(int Tick, int Pattern), long> _likings;

    // What the next level strikes: ticks of its tune notes by index, ticks of its fillers. Null: nothing stands above.
    private readonly int[]? _tuneTicks;
    private readonly HashSet<int> _fillerTicks = [];

    /// <param name="likings">Seeded variety already reckoned for this lattice and brief; more is added to it.</param>
    /// <param name="fuller">The next level's rhythm, of which this one is to be a part; null: it stands alone.</param>
    public RagRules(
        Lattice lattice,
        Brief brief,
        RagWeights weights,
        RagExtra extra,
        Dictionary<(int Tick, int Pattern), long> likings,
        Ragged? fuller
    )
    {
        if (fuller is not null)
        {
            _tuneTicks = new int[lattice.Notes.Length];
            foreach (var onset in fuller.Onsets)
            {
                if (onset.IsFiller)
                {
                    _fillerTicks.Add(onset.Tick);
                }
                else
                {
                    _tuneTicks[onset.Tune] = onset.Tick;
                }
            }
        }
        _likings = likings;
        _lattice = lattice;
        _weights = weights;
        _level = brief.RightLevel;
        _standsPlain = lattice
            .Bars.Select(b =>
                Devices.StandsPlain(b.Treatment.Right) || (b.Treatment.Raggedness ?? brief.Raggedness) <= 0
            )
            .ToArray();
        _plain = lattice.Bars.All(b => (b.Treatment.Raggedness ?? brief.Raggedness) <= 0);
        _figured = FiguredBars.Of(lattice, fuller, brief.Unlike, _level);
        _dearer = _level switch
        {
            2 => 900,
            3 => 400,
            _ => 0,
        };
        _ragged = lattice
            .Bars.Select(b => weights.Bias(b.Treatment.Raggedness ?? brief.Raggedness))
            .Select(bias => (bias.Syncopation + extra.Syncopation, bias.Filler))
            .ToArray();
        _displacement = extra.Displacement;
        _lateness = extra.Lateness;
        _tie = extra.Tie;
        _unlike = brief.Unlike;
        _hasWords = lattice.Notes.Any(n => n.Stress != Stress.None);
        _seed = Stage.Seed(lattice, brief, 0);
        _content = lattice.Bars.Select(b => Content(b, true)).ToArray();
        _rhythm = lattice.Bars.Select(b => Content(b, false)).ToArray();
    }

    /// <summary>Price of striking a tune note one unit early; null where that is not done.</summary>
    public long? EarlyPrice(int index, RagCell cell)
    {
        var note = _lattice.Notes[index];
        if (!MayMove(index, note, cell) || index == 0)
        {
            return null;
        }
        var bar = _lattice.Bars[cell.Bar];
        var unit = (note.Start - bar.Start + bar.Lead) / Unit;
        var before = _lattice.Notes[index - 1];
        var onBeat = unit % 2 == 0 || !_lattice.IsDuple;
        var needs =
            note.Start == bar.Start ? 4
            : IsCellStart(note.Start, cell) ? 3
            : 1;
        if (
            (note.Start == bar.Start && (bar.SeamBefore || bar.StartsPhrase || bar.IsShort))
            || _level < needs
            || !Belongs(note, note.Start)
            || (note.Start == bar.Start && cell.Bar > 0 && _standsPlain[cell.Bar - 1])
            || (before.Key == note.Key && note.Start - before.Start < 3 * Unit)
            || (bar.Treatment.Right == RightManner.Answer && note.Start - before.Start >= 4 * Unit)
        )
        {
            return null;
        }
        if (!onBeat)
        {
            return _weights.EarlyOntoBeat + _displacement + SyllablePrice(note);
        }
        var tie = needs > 1 ? _tie : 0;
        return note.Length < Unit
            ? null
            : _weights.Early + _ragged[cell.Bar].Syncopation + _displacement + tie + SyllablePrice(note);
    }

    /// <summary>Price of striking a tune note one unit late; null where that is not done.</summary>
    public long? LatePrice(int index, RagCell cell)
    {
        var note = _lattice.Notes[index];
        var bar = _lattice.Bars[cell.Bar];
        var unit = (note.Start - bar.Start + bar.Lead) / Unit;
        var room = index + 1 < _lattice.Notes.Length ? _lattice.Notes[index + 1].Start - note.Start : 0;
        return
            _level < 4
            || !_lattice.IsDuple
            || !MayMove(index, note, cell)
            || unit % 2 != 0
            || room < 3 * Unit
            || bar.StartsPhrase
            || (note.Start + Unit >= bar.End && cell.Bar + 1 < _lattice.Bars.Length && _standsPlain[cell.Bar + 1])
            ? null
            : _weights.Late
                + _ragged[cell.Bar].Syncopation
                + _displacement
                + _lateness
                + _tie
                + (note.Stress == Stress.Strong ? _weights.Syllable : 0);
    }

    /// <summary>Price of striking a tune note where the next level does not.</summary>
    public long ApartPrice(int index, int tick) =>
        _tuneTicks is null || _tuneTicks[index] == tick ? 0 : RagWeights.Apart;

    /// <summary>Units of a cell that may be filled.</summary>
    public int FillableUnits(RagCell cell)
    {
        var bar = _lattice.Bars[cell.Bar];
        if (
            _plain
            || bar.IsShort
            || cell.Bar == _lattice.Bars.Length - 1
            || _lattice.Notes.Length == 0
            || !_figured[cell.Bar]
            || _standsPlain[cell.Bar]
            || Devices.IsUnfilled(bar.Treatment.Right)
        )
        {
            return 0;
        }
        return cell.Start < _lattice.Notes[0].Start ? 0 : (1 << cell.Units) - 1;
    }

    /// <param name="pattern">The cell's rhythm with what is filled.</param>
    public long FillPrice(RagCell cell, int fill, int pattern)
    {
        if (fill == 0)
        {
            return 0;
        }
        var each = _weights.Filler + _ragged[cell.Bar].Filler + (IsFigure(cell, pattern) ? 0 : _dearer);
        var price = BitOperations.PopCount((uint)fill) * each;
        if (!_lattice.IsDuple)
        {
            price += BitOperations.PopCount((uint)fill) * 900L;
        }
        price += BitOperations.PopCount((uint)(fill & UnderStress(cell))) * _weights.Syllable / 2;
        if (_lattice.Bars[cell.Bar].EndsPhrase)
        {
            price += BitOperations.PopCount((uint)fill) * 250L;
        }
        for (var unit = 0; _tuneTicks is not null && unit < cell.Units; unit++)
        {
            if ((fill >> (cell.Units - 1 - unit) & 1) == 1 && !_fillerTicks.Contains(cell.Start + unit * Unit))
            {
                price += RagWeights.Apart;
            }
        }
        return price;
    }

    /// <summary>Price of a cell's rhythm: how rare it is in real rags, and the seeded variety.</summary>
    /// <param name="tuneOnly">The units that the tune itself strikes.</param>
    public long PatternPrice(RagCell cell, int pattern, int tuneOnly)
    {
        var bar = _lattice.Bars[cell.Bar];
        if (_plain || bar.IsShort || _standsPlain[cell.Bar])
        {
            return 0;
        }
        var price = 0L;
        if (_lattice.IsDuple && cell.Units == 4)
        {
            price += (cell.Half == 0 ? _weights.First : _weights.Second)[pattern];
            if (IsFigure(cell, pattern))
            {
                price +=
                    _ragged[cell.Bar].Syncopation + (_figured[cell.Bar] || tuneOnly == pattern ? 0 : RagWeights.Forced);
            }
        }
        if (!_likings.TryGetValue((cell.Start, pattern), out var liking))
        {
            liking = Liking(cell, bar, pattern);
            _likings.Add((cell.Start, pattern), liking);
        }
        return price + liking + (_unlike?.Rhythm(cell, pattern) ?? 0);
    }

    // Like bars alike, motifs that return after two and four bars, and a vocabulary of the tune's own.
    private long Liking(RagCell cell, LatticeBar bar, int pattern)
    {
        var salt = Variety.Mix((ulong)pattern, cell.Half);
        var price = ContentShare * Variety.Cost(Variety.Mix(_content[cell.Bar], salt)) / 100;
        price += RhythmShare * Variety.Cost(Variety.Mix(_rhythm[cell.Bar], salt)) / 100;
        price +=
            FourBarShare
            * Variety.Cost(Variety.Mix(Variety.Mix(_seed, 40 + bar.StrainBar % 4 + bar.ReturnSalt), salt))
            / 100;
        price +=
            TwoBarShare
            * Variety.Cost(Variety.Mix(Variety.Mix(_seed, 20 + bar.StrainBar % 2 + bar.ChorusSalt), salt))
            / 100;
        price += TuneShare * Variety.Cost(Variety.Mix(_seed, salt)) / 100;
        return price;
    }

    /// <summary>Price of one cell's end against the next one's beginning.</summary>
    /// <param name="before">Last two units of the cell before.</param>
    /// <param name="pattern">The cell's pattern.</param>
    public long JoinPrice(RagCell cell, int before, int pattern)
    {
        var bar = _lattice.Bars[cell.Bar];
        var startsBar = cell.Start == bar.Start;
        var first = (pattern >> (cell.Units - 1)) & 1;
        var second = cell.Units > 1 ? (pattern >> (cell.Units - 2)) & 1 : 0;
        if ((before & 1) == 0 || first == 1 || _plain)
        {
            return 0;
        }
        // A note struck just before the beat and held through it.
        var price = _ragged[cell.Bar].Syncopation / 2;
        if (_level < (startsBar ? 4 : 3) || (startsBar && bar.SeamBefore))
        {
            price += RagWeights.Forced;
        }
        if (before == 0b11 && second == 1)
        {
            price += startsBar ? _weights.TiedBar : _weights.TiedMid;
        }
        return price;
    }

    // Of an early note: a strong syllable is struck early and held, a weak one is not moved up to a stronger place.
    private long SyllablePrice(TuneSpot note) =>
        note.Stress switch
        {
            Stress.Strong => -_weights.Syllable,
            Stress.Weak => _weights.Syllable,
            _ => 0,
        };

    // Units of a cell in which a strong syllable of the tune goes on sounding.
    private int UnderStress(RagCell cell)
    {
        if (!_hasWords)
        {
            return 0;
        }
        var units = 0;
        for (var i = Math.Max(0, cell.FirstNote - 1); i < cell.FirstNote + cell.Notes; i++)
        {
            var note = _lattice.Notes[i];
            for (var unit = 0; unit < cell.Units && note.Stress == Stress.Strong; unit++)
            {
                var tick = cell.Start + unit * Unit;
                units |= tick > note.Start && tick < note.End ? 1 << (cell.Units - 1 - unit) : 0;
            }
        }
        return units;
    }

    private bool MayMove(int index, TuneSpot note, RagCell cell)
    {
        var bar = _lattice.Bars[cell.Bar];
        return !_plain
            && note.OnGrid
            && index < _lattice.Notes.Length - 1
            && bar.StrainBar >= 0
            && !IsFirstFullBar(cell.Bar)
            && _figured[cell.Bar]
            && !_standsPlain[cell.Bar];
    }

    private bool IsFirstFullBar(int bar) => bar == (_lattice.Bars[0].IsShort ? 1 : 0);

    // Struck short before a beat of the cell that is not.
    private bool IsFigure(RagCell cell, int pattern) =>
        _lattice.IsDuple && cell.Units == 4 && (pattern & 0b0110) == 0b0100;

    private static bool IsCellStart(int tick, RagCell cell) => tick == cell.Start;

    private bool Belongs(TuneSpot note, int tick)
    {
        var chord = _lattice.ChordAt(tick).Chord;
        return !chord.IsNoChord && (chord.PitchClassSet >> (note.Key % 12) & 1) == 1;
    }

    // A bar's tune as heard: where its notes stand and, if wanted, how they move, whatever the key.
    private ulong Content(LatticeBar bar, bool withPitches)
    {
        var hash = Variety.Mix(_seed, (withPitches ? 17 : 18) + bar.ChorusSalt);
        var previous = -1;
        for (var i = FirstFrom(bar.Start); i < _lattice.Notes.Length && _lattice.Notes[i].Start < bar.End; i++)
        {
            var note = _lattice.Notes[i];
            hash = Variety.Mix(hash, note.Start - bar.Start);
            hash = Variety.Mix(hash, previous < 0 || !withPitches ? 0 : note.Key - previous);
            previous = note.Key;
        }
        return hash;
    }

    // Index of the first tune note that begins at a tick or later.
    private int FirstFrom(int tick)
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
}
