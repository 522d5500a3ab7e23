using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Finds the places where figures of a kind belong, and puts them there.</summary>
internal static class Preferring
{
    /// <summary>True for what stands in gaps of the tune and takes nothing from it.</summary>
    public static bool GoesBesideTheTune(FigureKind? kind, Hand hand) =>
        hand == Hand.Right && kind is FigureKind.Fill or FigureKind.Run;

    /// <summary>Semitones, 0 to 11, from the root of a bar's last chord up to the root that follows; null: none does.</summary>
    public static int? LeadsBy(Lattice lattice, int bar)
    {
        if (bar + 1 >= lattice.Bars.Length || lattice.Bars[bar].Marks.RepeatEnd > 0)
        {
            return null;
        }
        var from = lattice.ChordAt(lattice.Bars[bar].End - 1).Chord;
        var to = lattice.ChordAt(lattice.Bars[bar + 1].Start).Chord;
        return from.IsNoChord || to.IsNoChord ? null : (to.Root.PitchClass - from.Root.PitchClass + 12) % 12;
    }

    /// <summary>The setting with figures of one kind and hand put in turn where they belong and can be played.</summary>
    /// <param name="bars">Bars where figures begin.</param>
    public static Arrangement Put(
        Arrangement arrangement,
        IEnumerable<OwnFigure> figures,
        out ValueList<int> bars,
        CancellationToken cancellation
    )
    {
        var begun = new List<int>();
        var fit = figures.Where(f => f is { Kind: not null, Strokes.Count: > 0 } && Plays(arrangement, f.Hand));
        foreach (var alike in fit.ToList().GroupBy(f => (f.Kind, f.Hand)))
        {
            var turn = alike.ToList();
            for (var bar = 0; bar < Reworking.Of(arrangement).Lattice.Bars.Length; bar++)
            {
                foreach (var figure in turn)
                {
                    cancellation.ThrowIfCancellationRequested();
                    if (
                        Belongs(Reworking.Of(arrangement), figure, bar)
                        && FigurePlacing.Played(arrangement, figure, bar, cancellation) is var (_, setting)
                    )
                    {
                        arrangement = setting;
                        begun.Add(bar);
                        turn = [.. turn.Where(f => f != figure), figure];
                        break;
                    }
                }
            }
        }
        bars = begun.Order().ToValueList();
        return arrangement;
    }

    private static bool Plays(Arrangement arrangement, Hand hand) =>
        hand == Hand.Left || !arrangement.Score.LeftHandOnly;

    private static bool Belongs(Solution solution, OwnFigure figure, int first)
    {
        var bars = solution.Lattice.Bars;
        var last = first + figure.Bars - 1;
        return last < bars.Length
            && Enumerable
                .Range(first, figure.Bars)
                .All(i =>
                    !bars[i].IsShort
                    && (figure.BarLength is not { } length || solution.Lattice.Tick * bars[i].Length == length)
                    && (i == first || !bars[i].SeamBefore)
                    && !solution.Stage.Brief.Kept.Any(k => k.Bar == i && k.Hand == figure.Hand)
                )
            && figure.Kind switch
            {
                FigureKind.Introduction => IsIntroduction(bars[first])
                    && IsIntroduction(bars[last])
                    && !(last + 1 < bars.Length && IsIntroduction(bars[last + 1])),
                FigureKind.Ending => last == bars.Length - 1,
                FigureKind.Run => bars[last].EndsPhrase
                    && LeadsBy(solution.Lattice, last) is { } by
                    && (figure.LeadsBy ?? by) == by
                    && (figure.Hand == Hand.Left || LeavesRoom(solution, figure, first)),
                _ => LeavesRoom(solution, figure, first),
            };
    }

    private static bool IsIntroduction(LatticeBar bar) =>
        bar.Treatment is { IsAdded: true, Part: Forming.IntroductionName };

    // A gap: the plain tune rests or holds a note for three quarters of a bar at least, and as it is ragged it strikes nothing
    // between the figure's first stroke and the end of its last. A left hand's figure may begin before the gap.
    private static bool LeavesRoom(Solution solution, OwnFigure figure, int first)
    {
        var lattice = solution.Lattice;
        var bar = lattice.Bars[first];
        var begin = figure.Hand == Hand.Right ? Ticks(figure.Strokes[0]) : bar.Start + bar.Length / 2;
        var end = figure.Strokes.Max(s => Ticks(s) + (int)s.Length.Round(lattice.Tick));
        var before = lattice.Notes.LastOrDefault(n => n.Start < begin)?.Start ?? 0;
        var after = lattice.Notes.FirstOrDefault(n => n.Start >= begin)?.Start ?? lattice.End;
        return 4 * (after - before) >= 3 * bar.Length
            && !solution.Right.Notes.Any(n => !n.IsFiller && n.Tick >= begin && n.Tick < end);

        int Ticks(OwnFigureStroke stroke) =>
            lattice.Bars[first + stroke.Bar].Start + (int)stroke.At.Round(lattice.Tick);
    }
}
