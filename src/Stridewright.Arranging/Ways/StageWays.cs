using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Ways through one bar of each stage's search graph, each as what has to be held so that it is taken.</summary>
internal static class StageWays
{
    /// <summary>In order of the stages, cheapest first; the cheapest itself may be among them.</summary>
    public static IEnumerable<(WayKind Kind, long Dearer, Func<Lattice, Lattice> Hold)> Of(
        Solution solution,
        int bar,
        int each,
        CancellationToken cancellation
    )
    {
        var lattice = Released(solution.Lattice, bar, Hand.Right);
        var stage = solution.Stage with { Lattice = lattice };
        var (start, end) = (lattice.Bars[bar].Start, lattice.Bars[bar].End);
        var isUsual = !Devices.IsUnfilled(lattice.Bars[bar].Treatment.Right);
        if (solution.HasNotes && isUsual)
        {
            foreach (var (dearer, held) in Rhythms(stage, solution.Ragged, bar, each, cancellation))
            {
                yield return (WayKind.Rhythm, dearer, Right(held));
            }
            var onsets = solution.Ragged.Onsets;
            var mine = Where(onsets.Length, i => onsets[i].Tick >= start && onsets[i].Tick < end);
            var search = Filling.Open(stage, solution.Ragged, solution.Homes, cancellation);
            foreach (var (dearer, tops) in Ways(search, mine, each, cancellation))
            {
                var held = mine.Select((o, i) => new HeldRight(onsets[o].Tick, onsets[o].Tune) { Top = tops[i] });
                yield return (WayKind.Fills, dearer, Right(held.ToValueList()));
            }
        }
        if (solution.HasNotes)
        {
            var line = Filling.Solve(stage, solution.Ragged, solution.Homes, cancellation);
            var search = Texturing.Open(
                stage,
                line,
                solution.Homes,
                solution.Settled.RightStrain,
                solution.Settled.Thin(lattice, line)
            );
            var mine = Where(line.Notes.Length, i => line.Notes[i].Tick >= start && line.Notes[i].Tick < end);
            foreach (var (dearer, below) in Ways(search, mine, each, cancellation))
            {
                var held = mine.Select(
                    (n, i) =>
                        new HeldRight(line.Notes[n].Tick, line.Notes[n].Tune)
                        {
                            Top = line.Notes[n].Top,
                            Below = below[i],
                        }
                );
                yield return (WayKind.Texture, dearer, Right(held.ToValueList()));
            }
        }
        foreach (var way in Lefts(solution, bar, each, cancellation))
        {
            yield return way;
        }

        Func<Lattice, Lattice> Right(ValueList<HeldRight> held) =>
            other => Holding(other, bar, b => b with { Right = held, LeftOut = [] });
    }

    private static IEnumerable<(WayKind Kind, long Dearer, Func<Lattice, Lattice> Hold)> Lefts(
        Solution solution,
        int bar,
        int each,
        CancellationToken cancellation
    )
    {
        var lattice = Released(solution.Lattice, bar, Hand.Left);
        var search = Striding.Open(
            solution.Stage with
            {
                Lattice = lattice,
            },
            solution.Right,
            solution.Homes,
            solution.Settled.LeftStrain,
            solution.Settled.RunPrice ?? 0,
            cancellation
        );
        var graph = search.Graph(cancellation);
        var mine = Where(graph.Layers, i => search.Choices(i)[0].Slot.Bar == bar);
        foreach (var (dearer, notes) in Ways(search, graph, mine, each))
        {
            var held = notes
                .Where(n => !n.Shape.IsRest)
                .Select(n => new HeldLeft(n.Slot.Tick, n.Slot.End, n.Shape.Kind, n.Shape.Pitches)
                {
                    Broken = n.Shape.Broken,
                })
                .ToValueList();
            yield return (WayKind.LeftHand, dearer, other => Holding(other, bar, b => b with { Left = held }));
        }
    }

    private static IEnumerable<(long Dearer, ValueList<HeldRight> Held)> Rhythms(
        Stage stage,
        Ragged ragged,
        int bar,
        int each,
        CancellationToken cancellation
    )
    {
        var lattice = stage.Lattice;
        var cells = RagCell.Cut(lattice);
        var search = Ragging.Open(lattice, stage.Brief, stage.Prices.Ragging, cells, ragged);
        var mine = Where(cells.Length, i => cells[i].Bar == bar);
        var (start, end) = (lattice.Bars[bar].Start, lattice.Bars[bar].End);
        foreach (var (dearer, candidates) in Ways(search, mine, each, cancellation))
        {
            var all = cells.Select(_ => (RagCandidate?)null).ToArray();
            for (var i = 0; i < mine.Count; i++)
            {
                all[mine[i]] = candidates[i];
            }
            var held = HeldCells
                .Struck(lattice, cells, all)
                .Where(o => o.Tick >= start && o.Tick < end)
                .Select(o => new HeldRight(o.Tick, o.Tune));
            yield return (dearer, held.ToValueList());
        }
    }

    private static IEnumerable<(long Dearer, T[] What)> Ways<T>(
        OpenSearch<T> search,
        List<int> layers,
        int each,
        CancellationToken cancellation
    ) => layers.Count == 0 ? [] : Ways(search, search.Graph(cancellation), layers, each);

    // One more than asked for: the cheapest is there too.
    private static IEnumerable<(long Dearer, T[] What)> Ways<T>(
        OpenSearch<T> search,
        SearchGraph graph,
        List<int> layers,
        int each
    )
    {
        if (layers.Count == 0 || graph.Result is not { } best)
        {
            return [];
        }
        var choices = layers.Select(search.Choices).ToList();
        return graph
            .Ways(layers[0], layers[^1], each + 1)
            .Select(way => (way.Cost - best.Cost, way.Choices.Select((c, i) => choices[i][c]).ToArray()));
    }

    private static List<int> Where(int count, Func<int, bool> holds) => [.. Enumerable.Range(0, count).Where(holds)];

    private static Lattice Released(Lattice lattice, int bar, Hand hand) =>
        lattice.Bars[bar].Held is null
            ? lattice
            : Holding(
                lattice,
                bar,
                b => hand == Hand.Left ? b with { Left = null } : b with { Right = null, LeftOut = [] }
            );

    private static Lattice Holding(Lattice lattice, int bar, Func<HeldBar, HeldBar> change)
    {
        var bars = lattice.Bars.ToArray();
        var held = change(bars[bar].Held ?? new HeldBar());
        bars[bar] = bars[bar] with { Held = held is { Right: null, Left: null } ? null : held };
        return lattice with { Bars = bars };
    }
}
