using System.Numerics;

namespace Stridewright.Arranging;

/// <summary>
/// Right hand beside a voice, when: chords off the beat while the voice is at work, a fill in the rhythms of printed rags
/// where it leaves room. One choice a half bar or beat, the cheapest over the piece; the state between cells is whether
/// the last unit was struck. What is struck at a lower level is a part of what is struck at the next.
/// </summary>
internal sealed class Comping
{
    private const int Unit = Lattice.TicksPerUnit;
    private const long AfterBeat = -100,
        Syncopated = 600,
        OnBass = 20_000,
        OpensPhrase = -19_000,
        WithSyllable = 900,
        Running = 6000,
        SoonAgain = 900,
        EmptyGap = 2500,
        ThinFill = 900,
        FillNote = 250,
        Last = -20_000;

    private readonly Stage _stage;
    private readonly Lattice _lattice;
    private readonly Voice _voice;
    private readonly RagCell[] _cells;
    private readonly ulong _seed;
    private readonly long _syncopation;

    private Comping(Stage stage, Voice voice)
    {
        _stage = stage;
        _lattice = stage.Lattice;
        _voice = voice;
        _cells = RagCell.Cut(_lattice);
        _seed = stage.Seed(17);
        _syncopation = Syncopated + stage.Prices.Ragging.Bias(stage.Brief.Raggedness).Syncopation;
    }

    /// <summary>Onsets in the bars in which the right hand only fills, in time order.</summary>
    public static IReadOnlyList<CompOnset> Solve(Stage stage, Voice voice, CancellationToken cancellation) =>
        new Comping(stage, voice).Solve(cancellation);

    private List<CompOnset> Solve(CancellationToken cancellation)
    {
        var path = new LayeredPath();
        for (var i = 0; i < _cells.Length; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            path.OpenLayer(2);
            var open = OpenUnits(_cells[i]);
            var fill = FillUnits(_cells[i]);
            for (var pattern = open; ; pattern = (pattern - 1) & open)
            {
                var price = Price(_cells[i], pattern, fill);
                var first = pattern >> (_cells[i].Units - 1) & 1;
                for (var before = 0; before < 2; before++)
                {
                    var runs =
                        before == 0 || fill != 0 ? 0
                        : first == 1 ? Running
                        : (pattern & Bit(_cells[i], 1)) != 0 ? SoonAgain
                        : 0;
                    if (i == 0)
                    {
                        if (before == 0)
                        {
                            path.Start(pattern & 1, price, pattern);
                        }
                    }
                    else if (path.EarlierCosts[before] < LayeredPath.Never)
                    {
                        path.Offer(before, pattern & 1, path.EarlierCosts[before] + price + runs, pattern);
                    }
                }
                if (pattern == 0)
                {
                    break;
                }
            }
        }
        var (_, steps) = path.Best() ?? throw new InvalidOperationException("a silent hand is always a way");
        return Onsets([.. steps.Select(s => s.Choice)]);
    }

    // Bits of the units that may be struck; the highest is the cell's first. Nothing is held over a repeat's end.
    private int OpenUnits(RagCell cell)
    {
        var bar = _lattice.Bars[cell.Bar];
        return bar.Treatment.Right != RightManner.FillsOnly || bar.IsShort ? 0
            : cell.Bar == _lattice.Bars.Length - 1 ? (cell.Start == bar.Start ? Bit(cell, 0) : 0)
            : cell.End == bar.End && _lattice.Bars[cell.Bar + 1].SeamBefore ? (1 << cell.Units) - 2
            : (1 << cell.Units) - 1;
    }

    // Of these, the units in which the voice leaves room and takes no breath for its next note.
    private int FillUnits(RagCell cell)
    {
        var bar = _lattice.Bars[cell.Bar];
        if (bar.Treatment.Right != RightManner.FillsOnly || bar.IsShort || cell.Bar == _lattice.Bars.Length - 1)
        {
            return 0;
        }
        var units = 0;
        for (var unit = 0; unit < cell.Units; unit++)
        {
            units |= _voice.GapAt(cell.Start + unit * Unit) is not null ? Bit(cell, unit) : 0;
        }
        return units;
    }

    private long Price(RagCell cell, int pattern, int fill)
    {
        if (pattern == 0 && fill == 0)
        {
            return 0;
        }
        var bar = _lattice.Bars[cell.Bar];
        var price = Liking(cell, bar, pattern);
        for (var unit = 0; unit < cell.Units; unit++)
        {
            if ((pattern & Bit(cell, unit)) == 0)
            {
                continue;
            }
            if ((fill & Bit(cell, unit)) != 0)
            {
                price += FillNote;
                continue;
            }
            price += ChordPrice(cell, bar, unit);
            price +=
                unit > 0 && (pattern & Bit(cell, unit - 1)) != 0 ? Running
                : unit > 1 && (pattern & Bit(cell, unit - 2)) != 0 ? SoonAgain
                : 0;
        }
        if (fill != 0)
        {
            var struck = pattern & fill;
            price += struck == 0 && BitOperations.PopCount((uint)fill) > 1 ? EmptyGap : 0;
            price +=
                ThinFill
                * Math.Max(0, BitOperations.PopCount((uint)fill) * 3 / 4 - BitOperations.PopCount((uint)struck));
            // A whole gap is filled as printed rags are.
            price +=
                _lattice.IsDuple && cell.Units == 4 && fill == 0b1111
                    ? (cell.Half == 0 ? _stage.Prices.Ragging.First : _stage.Prices.Ragging.Second)[struck] / 2
                    : 0;
            price += OddUnits(struck, cell) * Math.Max(0, _syncopation - Syncopated) / 4;
        }
        return price;
    }

    private long ChordPrice(RagCell cell, LatticeBar bar, int unit)
    {
        var tick = cell.Start + unit * Unit;
        var place = tick - bar.Start;
        var price = _voice.StrikesAt(tick) ? WithSyllable : 0;
        if (bar.Groove.Chords.Contains(place))
        {
            return price + AfterBeat;
        }
        if (bar.Groove.Basses.Contains(place))
        {
            return price
                + (cell.Bar == _lattice.Bars.Length - 1 ? Last : OnBass)
                + (bar.StartsPhrase && place == 0 ? OpensPhrase : 0);
        }
        return price + _syncopation;
    }

    // Like bars alike, and a motif that returns after two and four bars.
    private long Liking(RagCell cell, LatticeBar bar, int pattern)
    {
        var salt = Variety.Mix((ulong)pattern, cell.Half);
        return 45 * Variety.Cost(Variety.Mix(Variety.Mix(_seed, 40 + bar.StrainBar % 4 + bar.ChorusSalt), salt)) / 100
            + 45 * Variety.Cost(Variety.Mix(Variety.Mix(_seed, 20 + bar.StrainBar % 2 + bar.ChorusSalt), salt)) / 100
            + 30 * Variety.Cost(Variety.Mix(Variety.Mix(_seed, bar.StrainBar + bar.ChorusSalt), salt)) / 100;
    }

    private List<CompOnset> Onsets(int[] patterns)
    {
        var onsets = new List<CompOnset>();
        for (var i = 0; i < _cells.Length; i++)
        {
            var cell = _cells[i];
            for (var unit = 0; unit < cell.Units; unit++)
            {
                if ((patterns[i] & Bit(cell, unit)) == 0 || !AtLevel(patterns, i, unit))
                {
                    continue;
                }
                var tick = cell.Start + unit * Unit;
                var gap = OpenUnits(cell) != 0 && FillUnits(cell) != 0 ? _voice.GapAt(tick) : null;
                onsets.Add(
                    gap is { } room
                        ? new CompOnset(tick, CompKind.Fill, room.To)
                        : new CompOnset(tick, CompKind.Chord, Released(cell, tick))
                );
            }
        }
        return
        [
            .. onsets.Select(
                (o, i) =>
                    o with
                    {
                        EndsFill = o.Kind == CompKind.Fill && (i + 1 == onsets.Count || onsets[i + 1].Tick >= o.Until),
                    }
            ),
        ];
    }

    // Short off the beat; through the beat where it comes before it; the last one dies away.
    private int Released(RagCell cell, int tick) =>
        cell.Bar == _lattice.Bars.Length - 1 ? _lattice.End
        : (tick - cell.Start) / Unit % 2 == 1 ? tick + 3 * Unit
        : tick + 2 * Unit;

    // Level 1 has no weak units, level 2 none that is held over a beat's beginning, level 3 none over the bar line.
    private bool AtLevel(int[] patterns, int index, int unit)
    {
        var cell = _cells[index];
        var level = _stage.Brief.RightLevel;
        if (level >= 4 || unit % 2 == 0)
        {
            return true;
        }
        var isLast = unit == cell.Units - 1;
        var next = index + 1 < _cells.Length ? _cells[index + 1] : default;
        var held = isLast && next.Units > 0 && (patterns[index + 1] & Bit(next, 0)) == 0;
        return level
            >= (
                !held ? 2
                : next.Bar == cell.Bar ? 3
                : 4
            );
    }

    private static int OddUnits(int pattern, RagCell cell)
    {
        var odd = 0;
        for (var unit = 1; unit < cell.Units; unit += 2)
        {
            odd += (pattern & Bit(cell, unit)) != 0 ? 1 : 0;
        }
        return odd;
    }

    private static int Bit(RagCell cell, int unit) => unit < cell.Units ? 1 << (cell.Units - 1 - unit) : 0;
}
