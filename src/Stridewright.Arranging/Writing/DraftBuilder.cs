using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Puts the two hands together as a draft to be spelled.</summary>
internal static class DraftBuilder
{
    /// <summary>Bars without a chord symbol after which it is printed again.</summary>
    private const int SymbolEvery = 3;

    public static Draft Build(
        Tune tune,
        Lattice lattice,
        RightLine right,
        LeftLine left,
        Direction tempo,
        string subtitle,
        bool lyrics
    )
    {
        var strokes = lattice.Bars.Select(_ => new List<Stroke>()).ToArray();
        foreach (var note in right.Notes)
        {
            var bar = lattice.BarAt(note.Tick);
            strokes[bar]
                .Add(
                    new Stroke(
                        Hand.Right,
                        note.UnderHeld ? 2 : 1,
                        lattice.Tick * (note.Tick - lattice.Bars[bar].Start),
                        lattice.Tick * (note.End - note.Tick),
                        [.. note.Below, note.Top],
                        note.IsFiller ? "fill" : "tune"
                    )
                    {
                        Accent = Articulation.IsAccented(lattice, note),
                        Graces = note.Crushed is { } crushed ? [crushed] : [],
                        Lyrics = lyrics && !note.IsFiller ? lattice.Notes[note.Tune].Lyrics : [],
                    }
                );
        }
        foreach (var note in left.Notes)
        {
            strokes[note.Slot.Bar].AddRange(LeftStrokes.Of(lattice, note, lyrics));
        }
        var symbols = Symbols(lattice);
        return new Draft
        {
            Title = tune.Title,
            Composer = tune.Composer,
            Subtitle = subtitle,
            Bars = lattice
                .Bars.Select(
                    (bar, i) =>
                        new DraftBar
                        {
                            Number = bar.Number,
                            Implicit = bar.Lead > 0 || IsCutShort(lattice.Bars, i),
                            Metre = bar.Metre,
                            Key = bar.Key,
                            Length = lattice.Tick * bar.Length,
                            Lead = lattice.Tick * bar.Lead,
                            Chords = symbols[i].ToValueList(),
                            Directions =
                            [
                                .. i == 0 ? [tempo] : Array.Empty<Direction>(),
                                .. Treated(bar.Treatment),
                                .. Articulation.Pedalled(lattice, bar),
                                .. bar.Treatment.Segue ? [LeadsOn(lattice, bar)] : Array.Empty<Direction>(),
                            ],
                            Marks = bar.Marks,
                            Strokes = strokes[i].ToValueList(),
                        }
                )
                .ToValueList(),
        };
    }

    /// <summary>The left hand alone. A pick-up in which it is silent goes; what stands there moves to the first
    /// bar.</summary>
    public static Draft LeftHandAlone(Draft draft)
    {
        var alone = draft with { LeftHandOnly = true };
        if (
            draft.Bars is not [{ Implicit: true } pickUp, var first, ..]
            || pickUp.Above.Count > 0
            || pickUp.Strokes.Any(s => s.Hand == Hand.Left)
        )
        {
            return alone;
        }
        var chords = first.Chords is [{ At.IsZero: true }, ..] ? [] : pickUp.Chords.TakeLast(1);
        first = first with
        {
            Directions = [.. pickUp.Directions, .. first.Directions],
            Chords = [.. chords.Select(c => c with { At = ScoreTime.Zero }), .. first.Chords],
            Marks = first.Marks with { RepeatStart = first.Marks.RepeatStart || pickUp.Marks.RepeatStart },
        };
        return alone with { Bars = [first, .. draft.Bars.Skip(2)] };
    }

    // The first part of a bar that only a double bar splits bears its number, but nothing marks it as short: it is not shown.
    private static bool IsCutShort(LatticeBar[] bars, int i) =>
        bars[i].IsShort
        && i + 1 < bars.Length
        && bars[i].Marks is { RepeatStart: false, RepeatEnd: 0, Ending.Count: 0 }
        && !bars[i + 1].Marks.RepeatStart;

    private static IEnumerable<Direction> Treated(Treatment treatment)
    {
        if (treatment.Heading is { } heading)
        {
            yield return new Direction(ScoreTime.Zero) { Section = heading };
        }
        if (treatment.Dynamic is { } dynamic)
        {
            yield return new Direction(ScoreTime.Zero) { Dynamic = dynamic };
        }
    }

    // Over the last beat of the strain that leads on.
    private static Direction LeadsOn(Lattice lattice, LatticeBar bar) =>
        new(ScoreTime.Max(ScoreTime.Zero, lattice.Tick * bar.Length - bar.Metre.Beat)) { Words = "segue" };

    private static List<PlacedChord>[] Symbols(Lattice lattice)
    {
        var symbols = lattice.Bars.Select(_ => new List<PlacedChord>()).ToArray();
        var last = (ChordSymbol?)null;
        foreach (var span in lattice.Chords)
        {
            var bar = lattice.BarAt(span.Start);
            var strain = lattice.Bars[bar].StrainBar <= 0;
            if (!span.Chord.Equals(last) || strain)
            {
                symbols[bar].Add(new PlacedChord(lattice.Tick * (span.Start - lattice.Bars[bar].Start), span.Chord));
            }
            last = span.Chord;
        }
        var without = 0;
        for (var i = 0; i < symbols.Length; i++)
        {
            var bar = lattice.Bars[i];
            if (symbols[i].Count > 0)
            {
                without = 0;
            }
            else if (!bar.IsShort && ++without >= SymbolEvery)
            {
                symbols[i].Add(new PlacedChord(ScoreTime.Zero, lattice.ChordAt(bar.Start).Chord));
                without = 0;
            }
        }
        return symbols;
    }
}
