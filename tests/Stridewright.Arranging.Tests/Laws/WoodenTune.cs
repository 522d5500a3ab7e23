using Stridewright.Testing;

namespace Stridewright.Arranging.Tests.Laws;

/// <summary>Measures of one setting: how many of how many.</summary>
/// <param name="lattice">The tune as it was to be set.</param>
/// <param name="sheet">What was written.</param>
internal sealed class WoodenTune(Lattice lattice, IReadOnlyList<SheetBar> sheet)
{
    private const double Same = 1e-6;
    private readonly double _tick = lattice.Tick.ToQuarters();

    private double Unit => Lattice.TicksPerUnit * _tick;

    private List<SheetStroke> Right { get; } = [.. sheet.SelectMany(b => b.Right)];

    private List<SheetStroke> Left { get; } = [.. sheet.SelectMany(b => b.Left)];

    private List<SheetStroke> Fillers => [.. Right.Where(s => s.Is("fill"))];

    /// <summary>Fillers on the key struck just before them.</summary>
    public (int, int) FillersThatRepeat
    {
        get
        {
            var pairs = Right.Zip(Right.Skip(1)).Where(p => p.Second.Is("fill")).ToList();
            return (pairs.Count(p => p.First.High == p.Second.High), pairs.Count);
        }
    }

    /// <summary>Of fillers right after a downbeat, those a third to a sixth below it.</summary>
    public (int, int) FillersThatDrop
    {
        get
        {
            var downbeats = sheet.Select(b => b.Start).ToHashSet();
            var pairs = Right
                .Zip(Right.Skip(1))
                .Where(p => p.Second.Is("fill") && downbeats.Any(d => Math.Abs(d - p.First.At) < Same))
                .ToList();
            return (pairs.Count(p => p.First.High - p.Second.High is >= 3 and <= 9), pairs.Count);
        }
    }

    /// <summary>Notes of the tune of six units or more that are let go for a filler before half their length.</summary>
    public (int, int) LongNotesCut
    {
        get
        {
            var tune = Right.Where(s => s.Is("tune")).ToList();
            var long_ = lattice.Notes.Where(n => n.Length >= 6 * Lattice.TicksPerUnit).ToList();
            var cut = long_.Count(n =>
                tune.Where(s => Math.Abs(s.At - n.Start * _tick) < 1.5 * Unit && s.High == n.Key)
                    .Any(s => s.Length < n.Length * _tick / 2 - Same && Fillers.Any(f => Math.Abs(f.At - s.End) < Same))
            );
            return (cut, long_.Count);
        }
    }

    public (int, int) FillersAtPhraseEnds => FillersIn(b => b.EndsPhrase);

    public (int, int) FillersElsewhere => FillersIn(b => !b.EndsPhrase);

    /// <summary>Last bars in which the right hand adds nothing and the left comes to rest on its bass, or in three-time on one
    /// chord after it.</summary>
    public (int, int) ClosingBars
    {
        get
        {
            var last = sheet[^1];
            var rests = last.Left.Count == 0 || last.Left[^1].Is("bass") || last.Left.Count <= 2;
            return (last.Right.All(s => !s.Is("fill")) && rests ? 1 : 0, 1);
        }
    }

    /// <summary>Phrases of four bars whose left hand does the same over each root throughout.</summary>
    public (int, int) LeftPhrasesAlike
    {
        get
        {
            int alike = 0,
                all = 0;
            for (var i = 0; i + 3 < lattice.Bars.Length; i++)
            {
                if (lattice.Bars[i].StartsPhrase && lattice.Bars[i + 3].StrainBar == lattice.Bars[i].StrainBar + 3)
                {
                    all++;
                    alike += Enumerable.Range(i, 4).Select(Figure).Distinct().Count() == 1 ? 1 : 0;
                }
            }
            return (alike, all);
        }
    }

    /// <summary>Downbeats of bars of two beats whose bass is the fifth of a chord that has it neither as its bass nor in a
    /// line by step.</summary>
    public (int, int) FifthsUnderDownbeats
    {
        get
        {
            int fifths = 0,
                all = 0;
            for (var i = 0; i < sheet.Count && lattice.IsDuple; i++)
            {
                var chord = lattice.ChordAt(lattice.Bars[i].Start).Chord;
                if (chord.IsNoChord || lattice.Bars[i].IsShort || sheet[i].Left is not [var first, ..])
                {
                    continue;
                }
                all++;
                var before = Left.LastOrDefault(s => s.At < first.At - Same);
                var fifth = chord.Intervals.Where(n => n.Steps == 4).Select(n => chord.Root.Plus(n).PitchClass);
                var byStep = before is not null && Math.Abs(before.Low - first.Low) is 1 or 2;
                var isFifth = fifth.Contains(first.Low % 12) && chord.Lowest.PitchClass != first.Low % 12;
                fifths += isFifth && !byStep ? 1 : 0;
            }
            return (fifths, all);
        }
    }

    /// <summary>Runs that do not step into what comes after them.</summary>
    public (int, int) StrayRuns
    {
        get
        {
            var ends = Left.Zip(Left.Skip(1)).Where(p => p.First.Is("run") && !p.Second.Is("run")).ToList();
            return (
                ends.Count(p => Math.Abs(p.Second.Low - p.First.Low) is not (1 or 2) && !BringsHarmony(p.First)),
                ends.Count
            );
        }
    }

    /// <summary>Dotted figures, three units and one, whose short note stands where it did and whose long note is not
    /// filled.</summary>
    public (int, int) DottedKept
    {
        get
        {
            int kept = 0,
                all = 0;
            for (var i = 0; i + 1 < lattice.Notes.Length && lattice.IsDuple; i++)
            {
                var (a, b) = (lattice.Notes[i], lattice.Notes[i + 1]);
                var bar = lattice.Bars[lattice.BarAt(a.Start)];
                var onBeat = (a.Start - bar.Start + bar.Lead) % (4 * Lattice.TicksPerUnit) == 0;
                if (!onBeat || b.Start - a.Start != 3 * Lattice.TicksPerUnit || b.Length > Lattice.TicksPerUnit)
                {
                    continue;
                }
                all++;
                var within = Right.Where(s => s.At > a.Start * _tick - Same && s.At < b.End * _tick - Same).ToList();
                var dotted =
                    within.Count == 2
                    && Math.Abs(within[0].At - a.Start * _tick) < Same
                    && Math.Abs(within[1].At - b.Start * _tick) < Same;
                kept += dotted ? 1 : 0;
            }
            return (kept, all);
        }
    }

    public (int, int) ThickOnAccents => Thick(true);

    public (int, int) ThickElsewhere => Thick(false);

    public (int, int) EightBarsVerbatim => Verbatim(b => b.Right.Concat(b.Left));

    public (int, int) EightBarsVerbatimRight => Verbatim(b => b.Right);

    /// <summary>Phrase ends whose tune holds or rests for half a bar and in which both hands fill: two strokes of the
    /// right hand or more that are not the tune's, and a run of the left.</summary>
    public (int, int) BothFill => AtHolds((right, left) => right >= 2 && left > 0);

    /// <summary>The same phrase ends, where they breathe: at most one stroke of the right hand that is not the tune's.
    /// </summary>
    public (int, int) Breathing => AtHolds((right, _) => right <= 1);

    private (int, int) AtHolds(Func<int, int, bool> is_)
    {
        int found = 0,
            all = 0;
        for (var i = 0; i < sheet.Count; i++)
        {
            var bar = lattice.Bars[i];
            var last = lattice.Notes.LastOrDefault(n => n.Start < bar.End);
            if (
                !bar.EndsPhrase
                || bar.IsShort
                || last is null
                || 2 * (bar.End - Math.Max(last.Start, bar.Start)) < bar.Length
            )
            {
                continue;
            }
            var from = Math.Max(last.Start, bar.Start) * _tick + Same;
            all++;
            found += is_(
                sheet[i].Right.Count(s => s.Is("fill") && s.At > from),
                sheet[i].Left.Count(s => s.Is("run") && s.At > from && !BringsHarmony(s))
            )
                ? 1
                : 0;
        }
        return (found, all);
    }

    // The bass of a harmony that begins off the beat.
    private bool BringsHarmony(SheetStroke stroke)
    {
        var span = lattice.ChordAt((int)Math.Round(stroke.At / _tick));
        return Math.Abs(span.Start * _tick - stroke.At) < Same && !span.Chord.IsNoChord;
    }

    // Strokes of more than one key among the tune's: on beats and long notes, and on the others.
    private (int, int) Thick(bool accents)
    {
        int thick = 0,
            all = 0;
        foreach (var bar in sheet)
        {
            foreach (var stroke in bar.Right.Where(s => s.Is("tune")))
            {
                var place = (stroke.At - bar.Start) / (2 * Unit);
                var isAccent = Math.Abs(place - Math.Round(place)) < Same || stroke.Length >= 2 * Unit - Same;
                if (isAccent == accents)
                {
                    all++;
                    thick += stroke.Keys.Count > 1 ? 1 : 0;
                }
            }
        }
        return (thick, all);
    }

    private (int, int) FillersIn(Func<LatticeBar, bool> where)
    {
        var bars = Enumerable
            .Range(0, sheet.Count)
            .Where(i => !lattice.Bars[i].IsShort && where(lattice.Bars[i]))
            .ToList();
        return (bars.Sum(i => sheet[i].Right.Count(s => s.Is("fill"))), bars.Count);
    }

    // Eight bars of a tune that come again, note for note, and come again as they were set.
    private (int, int) Verbatim(Func<SheetBar, IEnumerable<SheetStroke>> of)
    {
        int same = 0,
            all = 0;
        var starts = Enumerable
            .Range(0, Math.Max(0, sheet.Count - 7))
            .Where(i => lattice.Bars[i].StrainBar >= 0 && lattice.Bars[i].StrainBar % 8 == 0)
            .ToList();
        foreach (var (one, other) in starts.SelectMany(a => starts.Where(b => b >= a + 8).Select(b => (a, b))))
        {
            var pairs = Enumerable.Range(0, 8).Select(k => (One: one + k, Other: other + k)).ToList();
            if (pairs[^1].Other < sheet.Count && pairs.Count(p => Plain(p.One) == Plain(p.Other)) >= 6)
            {
                all++;
                same += pairs.Where(p => Plain(p.One) == Plain(p.Other)).All(p => Text(p.One) == Text(p.Other)) ? 1 : 0;
            }
        }
        return (same, all);

        string Text(int bar) =>
            string.Join(' ', of(sheet[bar]).Select(s => $"{s.At - sheet[bar].Start:0.###}:{string.Join(',', s.Keys)}"));
    }

    // A bar's tune and harmony as they came.
    private string Plain(int bar)
    {
        var (from, to) = (lattice.Bars[bar].Start, lattice.Bars[bar].End);
        var notes = lattice.Notes.Where(n => n.Start >= from && n.Start < to).Select(n => $"{n.Start - from}:{n.Key}");
        var chords = lattice
            .Chords.Where(c => c.Start < to && c.End > from)
            .Select(c => $"{Math.Max(0, c.Start - from)}{c.Chord}");
        return string.Join(' ', notes.Concat(chords));
    }

    // What the left hand does in a bar, in semitones from the root of its first chord.
    private string Figure(int bar)
    {
        var root = lattice.ChordAt(lattice.Bars[bar].Start).Chord;
        var from = root.IsNoChord ? 0 : root.Root.PitchClass;
        return string.Join(
            ' ',
            sheet[bar].Left.Select(s => $"{s.At - sheet[bar].Start:0.###}:{s.Keys.Count},{(s.Low - from + 120) % 12}")
        );
    }
}
