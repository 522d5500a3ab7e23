using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// Right hand, when: every tune note's place on the grid and the filled rhythm of each cell, the cheapest over the whole
/// tune. State between cells: the last two units, whether the next cell's first note is taken early, whether the last
/// note was pushed late, displaced notes running, and cells since the hands last met on a beat.
/// </summary>
internal static class Ragging
{
    private const int Unit = Lattice.TicksPerUnit;
    private const int States = 256;
    private const int MostDisplacedRunning = 3;

    /// <summary>Largest share of displaced tune notes: trial on 29 tunes.</summary>
    private const double MostDisplaced = 0.2;
    private const double MostLate = 0.2;
    private const long DearestExtra = 12_000;

    /// <summary>Share of bars with a short-long-short figure at raggedness 0.5: single printed rags have up to 65 %.</summary>
    private const double MostFigured = 0.6;

    /// <summary>Share of tune notes, at raggedness up to 0.5, whose places the level below cannot take: less than the tenth
    /// that may differ between levels.</summary>
    private const double MostNew = 0.08;
    private const long DearestTie = 8000;
    private const int TieHalvings = 5;

    /// <summary>From this level on every rhythm is open; what is below simplifies the level above it.</summary>
    private const int FullLevel = 4;

    public static Ragged Solve(Lattice lattice, Brief brief, RagWeights weights, CancellationToken cancellation) =>
        Solve(lattice, brief, weights, [], null, cancellation);

    /// <param name="settled">Extra prices found before, of this level and those above: one search at each; none: they are
    /// looked for.</param>
    /// <param name="above">The next level's rhythm, if it is known; nothing that is held changes it.</param>
    public static Ragged Solve(
        Lattice lattice,
        Brief brief,
        RagWeights weights,
        ValueList<RagExtra> settled,
        Ragged? above,
        CancellationToken cancellation
    ) => Devices.Place(lattice, Rhythm(lattice, brief, weights, settled, above, cancellation), brief);

    private static Ragged Rhythm(
        Lattice lattice,
        Brief brief,
        RagWeights weights,
        ValueList<RagExtra> settled,
        Ragged? above,
        CancellationToken cancellation
    )
    {
        var fuller =
            above is null && brief.RightLevel < FullLevel
                ? Solve(
                    lattice.Free(),
                    brief with
                    {
                        RightLevel = brief.RightLevel + 1,
                    },
                    weights,
                    settled.Skip(1).ToValueList(),
                    null,
                    cancellation
                )
                : above;
        var cells = RagCell.Cut(lattice);
        var path = new LayeredPath();
        var likings = new Dictionary<(int Tick, int Pattern), long>();
        return settled.Count > 0
            ? At(settled[0])
            : Multiplier.Least(
                DearestTie,
                TieHalvings,
                tie => Limited(lattice, brief, new RagExtra { Tie = tie }, At),
                r => !MustFollow(lattice, cells, r, brief)
            );

        Ragged At(RagExtra extra)
        {
            var rules = new RagRules(lattice, brief, weights, extra, likings, fuller);
            return Solve(path, lattice, cells, rules, cancellation) with { Fuller = fuller, Extra = extra };
        }
    }

    // Displaced, late and syncopated notes are held down one after the other.
    private static Ragged Limited(Lattice lattice, Brief brief, RagExtra extra, Func<RagExtra, Ragged> at)
    {
        while (true)
        {
            var ragged = at(extra);
            var (early, late) = Displaced(lattice, ragged);
            var figured = Figures.Share(Figures.Patterns(lattice, ragged.Onsets));
            var next = extra with
            {
                Displacement = extra.Displacement + (early + late > MostDisplaced * lattice.Notes.Length ? 700 : 0),
                Lateness = extra.Lateness + (late > MostLate * (early + late) ? 1500 : 0),
                Syncopation = extra.Syncopation + (figured > MostFigured + (brief.Raggedness - 0.5) ? 400 : 0),
            };
            if (next == extra || next.Sum > DearestExtra)
            {
                return ragged;
            }
            extra = next;
        }
    }

    // True where more notes are taken early over a beat or pushed late than the level below can leave out and still stand
    // in this one. Ties over mid-bar begin one level before those over the bar line.
    private static bool MustFollow(Lattice lattice, RagCell[] cells, Ragged ragged, Brief brief)
    {
        var starts = cells.Select(c => c.Start).ToHashSet();
        int middle = 0,
            others = 0;
        foreach (var onset in ragged.Onsets.Where(o => !o.IsFiller))
        {
            var start = lattice.Notes[onset.Tune].Start;
            if (onset.Tick > start || (onset.Tick < start && start == lattice.Bars[lattice.BarAt(start)].Start))
            {
                others++;
            }
            else if (onset.Tick < start && starts.Contains(start))
            {
                middle++;
            }
        }
        var most = (MostNew + MostNew * 2 * Math.Max(0, brief.Raggedness - 0.5)) * lattice.Notes.Length;
        return brief.RightLevel < FullLevel ? middle > most : others + Math.Max(0, middle - most) > most;
    }

    /// <summary>The search of this level alone, at what was settled, to be looked into.</summary>
    public static OpenSearch<RagCandidate> Open(
        Lattice lattice,
        Brief brief,
        RagWeights weights,
        RagCell[] cells,
        Ragged found
    )
    {
        var rules = new RagRules(lattice, brief, weights, found.Extra, [], found.Fuller);
        var lister = new RagCandidates(lattice, cells, rules);
        return new(c => Solve(new LayeredPath(), lattice, cells, rules, c), lister.Of);
    }

    /// <summary>Displaced notes of the tune.</summary>
    public static (int Early, int Late) Displaced(Lattice lattice, Ragged ragged)
    {
        int early = 0,
            late = 0;
        foreach (var onset in ragged.Onsets)
        {
            if (!onset.IsFiller)
            {
                early += onset.Tick < lattice.Notes[onset.Tune].Start ? 1 : 0;
                late += onset.Tick > lattice.Notes[onset.Tune].Start ? 1 : 0;
            }
        }
        return (early, late);
    }

    private static Ragged Solve(
        LayeredPath path,
        Lattice lattice,
        RagCell[] cells,
        RagRules rules,
        CancellationToken cancellation
    )
    {
        path.Restart();
        var lists = new RagCandidate[cells.Length][];
        var lister = new RagCandidates(lattice, cells, rules);
        for (var i = 0; i < cells.Length; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            var cell = cells[i];
            var candidates = lists[i] = lister.Of(i);
            path.OpenLayer(States);
            var before = i == 0 ? [] : path.EarlierCosts;
            for (var c = 0; c < candidates.Length; c++)
            {
                ref readonly var candidate = ref candidates[c];
                if (i == 0)
                {
                    if (!candidate.InEarly && !candidate.InLate)
                    {
                        path.Start(Next(0, cell, candidate).State, candidate.Cost, c);
                    }
                    continue;
                }
                var flags = (candidate.InEarly ? 4 : 0) | (candidate.InLate ? 8 : 0);
                // By the two last units before.
                for (var tail = 0; tail < 4; tail++)
                {
                    var join = candidate.Cost + rules.JoinPrice(cell, tail, candidate.Pattern);
                    for (var from = tail | flags; from < States; from += 16)
                    {
                        if (before[from] < LayeredPath.Never)
                        {
                            var (state, price) = Next(from, cell, candidate);
                            path.Offer(from, state, before[from] + join + price, c);
                        }
                    }
                }
            }
        }
        var (cost, steps) = path.Best() ?? throw new InvalidOperationException("the plain tune is always a way");
        var chosen = steps.Select((s, i) => lists[i][s.Choice]).ToArray();
        return new Ragged(lister.Onsets(chosen), cost);
    }

    // The state after a candidate, and the price of what only the state knows.
    private static (int State, long Price) Next(int from, in RagCell cell, in RagCandidate candidate)
    {
        var run = (from >> 4) & 3;
        var apart = (from >> 6) & 3;
        var price = 0L;
        var placing = candidate.Placing;
        if (placing == 0)
        {
            run = cell.Notes > 0 ? 0 : run;
        }
        for (var n = 0; n < Math.Min(cell.Notes, 16) && placing != 0; n++)
        {
            run = (candidate.Placing >> (2 * n) & 3) == 0 ? 0 : run + 1;
            if (run > MostDisplacedRunning)
            {
                run = MostDisplacedRunning;
                price += RagWeights.Forced;
            }
        }
        var meets = (candidate.Pattern >> (cell.Units - 1) & 1) == 1;
        apart = meets ? 0 : apart + 1;
        if (apart > 3)
        {
            apart = 3;
            price += RagWeights.Forced / 4;
        }
        var tail = cell.Units > 1 ? candidate.Pattern & 3 : candidate.Pattern & 1;
        var state = tail | (candidate.OutEarly ? 4 : 0) | (candidate.OutLate ? 8 : 0) | (run << 4) | (apart << 6);
        return (state, price);
    }
}
