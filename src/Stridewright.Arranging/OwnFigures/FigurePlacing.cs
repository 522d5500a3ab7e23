using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Puts a figure over the chords of a place.</summary>
internal static class FigurePlacing
{
    /// <summary>The figure where these hands can play it: in its own octave, else in the one away from the other hand, else in
    /// the other; with the setting that came of it. Null: in none.</summary>
    public static (ValueList<KeptBar> Bars, Arrangement Setting)? Played(
        Arrangement arrangement,
        OwnFigure figure,
        int first,
        CancellationToken cancellation
    )
    {
        var solution = Reworking.Of(arrangement);
        var away = figure.Hand == Hand.Left ? -1 : 1;
        foreach (var octaves in new[] { 0, away, -away })
        {
            if (
                Over(solution, figure, first, octaves, out _) is { } bars
                && Reworking.Rework(arrangement, Reworking.With(arrangement.Brief.Kept, bars), cancellation).Arrangement
                    is { } after
            )
            {
                return (bars, after);
            }
        }
        return null;
    }

    /// <summary>The figure as bars to be kept, so many octaves from its own.</summary>
    public static ValueList<KeptBar>? Over(
        Solution solution,
        OwnFigure figure,
        int first,
        int octaves,
        out Diagnostic? fault
    )
    {
        fault = null;
        var lattice = solution.Lattice;
        if (first + figure.Bars > lattice.Bars.Length)
        {
            fault = new Diagnostic(
                Severity.Error,
                Place.Whole,
                FigureMessages.TooLong(figure.Bars, lattice.Bars.Length - first)
            );
            return null;
        }
        var kept = new List<KeptBar>();
        for (var bar = 0; bar < figure.Bars; bar++)
        {
            var strokes = new List<KeptStroke>();
            foreach (var stroke in figure.Strokes.Where(s => s.Bar == bar))
            {
                if (ChordAt(lattice, first + bar, stroke.At) is not { } chord)
                {
                    fault = NoChord(lattice.Bars[first + bar]);
                    return null;
                }
                var pitches = stroke
                    .Tones.Select(t => t.Over(chord, figure.Hand))
                    .Select(p => p with { Octave = p.Octave + octaves })
                    .Distinct()
                    .Order()
                    .ToValueList();
                var role = figure.Hand == Hand.Right ? "fill" : stroke.Role;
                strokes.Add(
                    new KeptStroke(stroke.At, stroke.Length, pitches, role, stroke.Rolled, [], stroke.Voice, null)
                );
            }
            kept.Add(
                Preferring.GoesBesideTheTune(figure.Kind, figure.Hand)
                    ? BesideTheTune(solution, first + bar, strokes)
                    : InPlaceOfTheTune(lattice, first + bar, figure.Hand, strokes)
            );
        }
        return kept.ToValueList();
    }

    /// <summary>The chord at a place in a bar; null: none.</summary>
    public static ChordSymbol? ChordAt(Lattice lattice, int bar, ScoreTime at)
    {
        var chord = lattice.ChordAt(lattice.Bars[bar].Start + (int)at.Round(lattice.Tick)).Chord;
        return chord.IsNoChord ? null : chord;
    }

    public static Diagnostic NoChord(LatticeBar bar) =>
        new(Severity.Error, Place.AtBar(bar.Number), FigureMessages.NoChord);

    // The tune goes before the figure: where both strike, the figure is silent, and what the tune holds ends where the
    // figure begins. The bar's other fillers give way to it.
    private static KeptBar BesideTheTune(Solution solution, int bar, List<KeptStroke> strokes)
    {
        var now = Spots.Of(solution, bar, Hand.Right);
        var tune = now.Strokes.Where(s => s.Tune is not null).ToList();
        strokes.RemoveAll(s => tune.Exists(t => t.At == s.At));
        var cut = tune.Select(t =>
            strokes.Find(s => s.At > t.At && s.At < t.At + t.Length) is { } next
                ? t with
                {
                    Length = next.At - t.At,
                }
                : t
        );
        return now with { Strokes = cut.Concat(strokes).OrderBy(s => s.At).ToValueList() };
    }

    private static KeptBar InPlaceOfTheTune(Lattice lattice, int bar, Hand hand, List<KeptStroke> strokes)
    {
        var (start, end) = (lattice.Bars[bar].Start, lattice.Bars[bar].End);
        var tune = Enumerable
            .Range(0, lattice.Notes.Length)
            .Where(i => hand == Hand.Right && lattice.Notes[i].Start >= start && lattice.Notes[i].Start < end);
        return new KeptBar(bar, hand, strokes.ToValueList()) { LeftOut = tune.ToValueList() };
    }
}
