using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Lays a tune out on the lattice of a feel.</summary>
internal static class LatticeReader
{
    /// <summary>Printed length of a tune's values: 1/4, 1/2, 1 or 2 of its own.</summary>
    public static ScoreTime ScaleOf(Tune tune, Feel feel) =>
        TickOf(feel) * (4 * Recast.UnitsPerQuarter(tune, feel) * Lattice.TicksPerUnit);

    private static ScoreTime TickOf(Feel feel) => feel == Feel.Classic ? new ScoreTime(1, 32) : new ScoreTime(1, 16);

    /// <param name="piece">The tune, already in the key and register of the setting, with its harmony.</param>
    /// <param name="feel">A feel that fits its metre.</param>
    /// <param name="keepsValues">The tune keeps its printed note values where the feel allows it.</param>
    public static Lattice Read(Piece piece, Feel feel, bool keepsValues = false)
    {
        var tune = piece.Tune;
        var units = keepsValues ? Recast.UnitsAsPrinted(tune, feel) : Recast.UnitsPerQuarter(tune, feel);
        var tick = TickOf(feel);
        var perWhole = 4 * units * Lattice.TicksPerUnit;
        var flat = FlatTune.Of(tune);
        var scale = tick * perWhole;
        var bars = new Layout(piece, feel, perWhole, tick).Bars();
        var (notes, lost) = Place(flat, perWhole, bars[^1].End);
        var lattice = new Lattice
        {
            Feel = feel,
            Tick = tick,
            Scale = scale,
            Bars = bars,
            Notes = notes,
            Chords = Spans(flat.Chords, perWhole, bars[^1].End),
            LostAt = lost.ToValueList(),
        };
        for (var i = 0; i < notes.Length; i++)
        {
            notes[i] = notes[i] with { OnGrid = lattice.IsOnGrid(notes[i].Start) };
        }
        return lattice with { Bars = Returns.Mark(lattice) };
    }

    private static (TuneSpot[] Notes, List<int> Lost) Place(FlatTune flat, int perWhole, int end)
    {
        var spots = new List<TuneSpot>();
        var lost = new List<int>();
        foreach (var note in flat.Notes)
        {
            var start = Snap(note.Start * perWhole);
            var stop = Math.Max(start + 1, Snap((note.Start + note.Length) * perWhole));
            if (spots.Count > 0 && start <= spots[^1].Start)
            {
                start = spots[^1].Start + 1;
                stop = Math.Max(stop, start + 1);
                if (new ScoreTime(start, 1) - note.Start * perWhole > new ScoreTime(Lattice.TicksPerUnit, 1))
                {
                    lost.Add(Math.Min(start, end - 1));
                    continue;
                }
            }
            if (start >= end)
            {
                lost.Add(Math.Min(start, end - 1));
                continue;
            }
            if (spots.Count > 0 && spots[^1].End > start)
            {
                spots[^1] = spots[^1] with { Length = start - spots[^1].Start };
            }
            spots.Add(
                new TuneSpot(start, Math.Min(stop, end) - start, note.Pitch)
                {
                    Lyrics = note.Lyrics,
                    Graces = note.Graces,
                    Stress = note.Stress,
                }
            );
        }
        return ([.. spots], lost);
    }

    // Triplets have no place of their own: three in a beat become long-short-long (1101), quicker ones short-short-long.
    private static int Snap(ScoreTime ticks)
    {
        if (ticks.Denominator == 1)
        {
            return (int)ticks.Numerator;
        }
        if (ticks.Denominator % 3 == 0)
        {
            var nearest = (int)ticks.Round(new ScoreTime(Lattice.TicksPerUnit, 1)) * Lattice.TicksPerUnit;
            var away = new ScoreTime(nearest, 1) - ticks;
            return (away < ScoreTime.Zero ? -away : away) <= new ScoreTime(2, 3)
                ? nearest
                : (int)Math.Floor((double)ticks.Numerator / ticks.Denominator);
        }
        return (int)ticks.Round(new ScoreTime(1, 1));
    }

    private static ChordSpan[] Spans(IReadOnlyList<(ScoreTime At, ChordSymbol Chord)> chords, int perWhole, int end)
    {
        var spans = new List<ChordSpan>();
        foreach (var (at, chord) in chords)
        {
            var start = Math.Max(0, Snap(at * perWhole));
            if (spans.Count > 0 && spans[^1].Start >= start)
            {
                // Two symbols at one place: the first counts.
                continue;
            }
            if (start < end)
            {
                spans.Add(new ChordSpan(start, end, chord));
            }
        }
        spans[0] = spans[0] with { Start = 0 };
        for (var i = 0; i + 1 < spans.Count; i++)
        {
            spans[i] = spans[i] with { End = spans[i + 1].Start };
        }
        return [.. spans];
    }

    /// <summary>Cuts the tune's bars into bars of the setting.</summary>
    private sealed class Layout(Piece piece, Feel feel, int perWhole, ScoreTime tick)
    {
        private readonly Tune _tune = piece.Tune;
        private readonly List<LatticeBar> _bars = [];
        private int _number;
        private int _strainBar;

        public LatticeBar[] Bars()
        {
            for (var i = 0; i < _tune.Bars.Count; i++)
            {
                Add(i);
            }
            for (var i = 0; i < _bars.Count; i++)
            {
                var next = i + 1 < _bars.Count ? _bars[i + 1] : null;
                var strainEnds = next is null || (next.SeamBefore && next.StrainBar <= 0);
                _bars[i] = _bars[i] with
                {
                    EndsStrain = strainEnds,
                    EndsPhrase = strainEnds || (_bars[i].StrainBar >= 0 && _bars[i].StrainBar % 4 == 3),
                };
            }
            return [.. _bars];
        }

        private void Add(int index)
        {
            var source = _tune.Bars[index];
            var treatment = piece.Treatments[index];
            var seam = SeamBefore(index);
            if (BarSeams.StrainBefore(_tune, index))
            {
                _strainBar = 0;
            }
            var left = Math.Max(1, (int)(source.Length * perWhole).Round(new ScoreTime(1, 1)));
            var metre = OutMetre(source.Metre);
            var full = (int)metre.BarLength.Per(tick).Numerator;
            var pickUp =
                left < (int)(source.Metre.BarLength * perWhole).Round(new ScoreTime(1, 1))
                && BarSeams.IsPickUp(_tune, index);
            var pieces = Pieces(left, full, pickUp);
            for (var k = 0; k < pieces.Count; k++)
            {
                var isShort = pieces[k] < full;
                var lead = isShort && pickUp ? full - pieces[k] : 0;
                var endsHere = k == pieces.Count - 1;
                // What overflows the metre is a bar of its own small metre.
                var overflow = isShort && left > full && !pickUp && !IsSplit(index);
                var ownMetre = overflow ? Small(pieces[k]) : metre;
                _bars.Add(
                    new LatticeBar
                    {
                        Start = _bars.Count == 0 ? 0 : _bars[^1].End,
                        Length = pieces[k],
                        Metre = ownMetre,
                        Key = source.Key,
                        Number = lead > 0 ? UncountedNumber() : NextNumber(),
                        IsShort = isShort && !overflow,
                        Lead = lead,
                        SeamBefore = seam && k == 0,
                        StrainBar = isShort ? -1 : _strainBar++,
                        Marks = new BarMarks
                        {
                            RepeatStart = source.Marks.RepeatStart && k == 0,
                            RepeatEnd = endsHere ? source.Marks.RepeatEnd : 0,
                            Ending = source.Marks.Ending,
                            DoubleBarAfter = endsHere && source.Marks.DoubleBarAfter,
                            FinalBarAfter = endsHere && index == _tune.Bars.Count - 1,
                        },
                        Groove = Groove.Of(metre, tick).Within(lead, pieces[k]),
                        Treatment = (k == 0 ? treatment : treatment with { Dynamic = null, Heading = null }) with
                        {
                            Segue = treatment.Segue && endsHere,
                        },
                    }
                );
            }
        }

        // What lacks its beginning is not counted: a pick-up, or the second part of a bar that a repeat sign splits. What lacks
        // its end is, such as the closing bar of a strain that began with a pick-up.
        private string UncountedNumber() =>
            _number == 0 ? "0" : "X" + _bars.Count.ToString(CultureInfo.InvariantCulture);

        private string NextNumber() => (++_number).ToString(CultureInfo.InvariantCulture);

        private static List<int> Pieces(int left, int full, bool pickUp)
        {
            var pieces = Enumerable.Repeat(full, left / full).ToList();
            if (left % full != 0)
            {
                pieces.Insert(pickUp ? 0 : pieces.Count, left % full);
            }
            return pieces;
        }

        private Metre OutMetre(Metre source) =>
            feel switch
            {
                Feel.Classic when IsDuple(source) => Metre.TwoFour,
                Feel.Stride when IsDuple(source) => Metre.FourFour,
                Feel.Classic or Feel.Stride => Small((int)(source.BarLength * perWhole).Round(new ScoreTime(1, 1))),
                _ => source,
            };

        private Metre Small(int ticks)
        {
            var length = tick * ticks;
            foreach (var unit in (ReadOnlySpan<int>)[4, 8, 16, 32])
            {
                var count = length.Per(new ScoreTime(1, unit));
                if (count.Denominator == 1)
                {
                    return new Metre((int)count.Numerator, unit);
                }
            }
            return new Metre(ticks, 32);
        }

        private static bool IsDuple(Metre metre) => Feels.IsDuple(metre);

        private bool SeamBefore(int index) => BarSeams.TurnBefore(_tune, index) || BarSeams.StrainBefore(_tune, index);

        private bool IsSplit(int index) => _tune.Bars[index].Length < _tune.Bars[index].Metre.BarLength;
    }
}
