using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// The tune laid out on the grid of its setting. All places and lengths are whole ticks from the start of the first bar;
/// a grid unit (the sixteenth of 2/4, the eighth elsewhere) is two ticks, so that quick ornaments find a place.
/// </summary>
internal sealed record Lattice
{
    public const int TicksPerUnit = 2;

    public required Feel Feel { get; init; }

    /// <summary>Length of a tick in the printed score.</summary>
    public required ScoreTime Tick { get; init; }

    /// <summary>Printed length of a quarter of the tune, in quarters: 1/2, 1 or 2.</summary>
    public required ScoreTime Scale { get; init; }

    public required LatticeBar[] Bars { get; init; }

    public required TuneSpot[] Notes { get; init; }

    /// <summary>Harmony from 0 to <see cref="End"/> without gaps.</summary>
    public required ChordSpan[] Chords { get; init; }

    /// <summary>Ticks near which notes of the tune found no place of their own.</summary>
    public required ValueList<int> LostAt { get; init; }

    /// <summary>Notes of the tune that found no place of their own.</summary>
    public int LostNotes => LostAt.Count;

    public int End => Bars[^1].End;

    /// <summary>True where ragging runs on half bars of four units: 2/4 and 4/4.</summary>
    public bool IsDuple => Feel is Feel.Classic or Feel.Stride;

    /// <summary>The same with nothing held: what is held at one level is not held at those it is a part of.</summary>
    public Lattice Free() =>
        Bars.All(b => b.Held is null) ? this : this with { Bars = [.. Bars.Select(b => b with { Held = null })] };

    /// <summary>Harmony at a tick.</summary>
    public ChordSpan ChordAt(int tick)
    {
        int low = 0,
            high = Chords.Length - 1;
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            (low, high) = Chords[middle].Start <= tick ? (middle, high) : (low, middle - 1);
        }
        return Chords[low];
    }

    /// <summary>The right hand's held onset at a tick; null: none.</summary>
    public HeldRight? HeldAt(int tick)
    {
        foreach (var onset in Bars[BarAt(tick)].Held?.Right ?? [])
        {
            if (onset.Tick == tick)
            {
                return onset;
            }
        }
        return null;
    }

    /// <summary>True for a tick on the grid of whole units of its bar.</summary>
    public bool IsOnGrid(int tick)
    {
        var bar = Bars[BarAt(tick)];
        return (tick - bar.Start + bar.Lead) % TicksPerUnit == 0;
    }

    /// <summary>Index of the bar that holds a tick.</summary>
    public int BarAt(int tick)
    {
        int low = 0,
            high = Bars.Length - 1;
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            (low, high) = Bars[middle].Start <= tick ? (middle, high) : (low, middle - 1);
        }
        return low;
    }
}

/// <summary>One bar of the setting.</summary>
internal sealed record LatticeBar
{
    public required int Start { get; init; }

    public required int Length { get; init; }

    public int End => Start + Length;

    public required Metre Metre { get; init; }

    public required Key Key { get; init; }

    public required string Number { get; init; }

    /// <summary>Shorter than its metre: a pick-up, or a bar split by a repeat.</summary>
    public required bool IsShort { get; init; }

    /// <summary>Ticks of the metre's bar that are missing before it (a pick-up starts late in its bar).</summary>
    public int Lead { get; init; }

    public BarMarks Marks { get; init; } = BarMarks.None;

    /// <summary>A strain, repeat or ending begins here: nothing is taken early over this bar line.</summary>
    public bool SeamBefore { get; init; }

    /// <summary>Index of the bar in its strain; −1 in a pick-up.</summary>
    public int StrainBar { get; init; }

    public bool StartsPhrase => StrainBar >= 0 && StrainBar % 4 == 0;

    public bool EndsPhrase { get; init; }

    /// <summary>The last bar of a strain.</summary>
    public bool EndsStrain { get; init; }

    public Groove Groove { get; init; } = Groove.Empty;

    /// <summary>What the form asks of each hand here.</summary>
    public Treatment Treatment { get; init; } = Treatment.Usual;

    /// <summary>What stays as it is while the rest is worked again; null: nothing.</summary>
    public HeldBar? Held { get; init; }

    /// <summary>How often the tune of its eight bars was heard before.</summary>
    public int Heard { get; init; }

    /// <summary>Added to a key of variety that is drawn anew where eight bars come again.</summary>
    public long ReturnSalt => ChorusSalt + 1_048_576L * Heard;

    /// <summary>Added to a key of variety: like bars of different choruses draw it anew, those of the first as ever.</summary>
    public long ChorusSalt => 4096L * Treatment.Chorus;
}

/// <summary>One note of the tune on the lattice, ties merged.</summary>
/// <param name="Start">Plain place.</param>
/// <param name="Length">Plain length, at least one tick.</param>
internal sealed record TuneSpot(int Start, int Length, Pitch Pitch)
{
    public int End => Start + Length;

    public int Key => Pitch.Midi;

    public ValueList<Lyric> Lyrics { get; init; } = [];

    public ValueList<Pitch> Graces { get; init; } = [];

    /// <summary>Of its syllable.</summary>
    public Stress Stress { get; init; }

    /// <summary>On its bar's grid of whole units, so that it can be ragged.</summary>
    public bool OnGrid { get; init; } = true;
}

/// <summary>A stretch of one harmony.</summary>
internal sealed record ChordSpan(int Start, int End, ChordSymbol Chord)
{
    /// <summary>The symbol was in the source or stands for one that the arranger found; false: carried over a seam.</summary>
    public bool Printed { get; init; } = true;
}
