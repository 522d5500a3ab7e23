using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Reads off a solution what was asked for in each bar, what of its harmony was changed, and what had to give
/// way in the whole piece.</summary>
internal sealed class PieceReader(Solution solution, double wanted, double printed, int first)
{
    private readonly Lattice _lattice = solution.Lattice;
    private readonly HashSet<int> _leftFell = [.. LeftPlayed.FellBack(solution.Lattice, solution.Left)];
    private readonly HashSet<int> _rightFell =
    [
        .. solution.HasNotes ? RightPlayed.FellBack(solution.Lattice, solution.Right, solution.Left) : [],
    ];
    private readonly ILookup<int, HarmonyReason> _changes = Changes(solution, first).ToLookup(c => c.Bar);

    /// <summary>The claims about a bar of the lattice that stand before those on its notes.</summary>
    /// <param name="hasRight">The right hand is in the score.</param>
    public IEnumerable<Reason> Of(int bar, bool hasRight)
    {
        var (treatment, at) = (solution.Plan.Lattice.Bars[bar].Treatment, bar - first);
        var given = _lattice.Bars[bar].Treatment;
        if (treatment.Heading is not null && treatment.Part.Length > 0)
        {
            yield return new PartReason(at, treatment.Part, treatment.Chorus);
        }
        if (at == 0)
        {
            foreach (var limit in Throughout(hasRight))
            {
                yield return limit;
            }
        }
        foreach (var change in _changes[at])
        {
            yield return change;
        }
        foreach (var kept in solution.Stage.Brief.Kept.Where(k => k.Bar == bar && (hasRight || k.Hand == Hand.Left)))
        {
            yield return new KeptReason(at, kept.Hand);
        }
        if (treatment.Left != LeftManner.Stride)
        {
            yield return new LeftMannerReason(
                at,
                treatment.Left,
                _leftFell.Contains(bar) || given.Left != treatment.Left
            );
        }
        if (
            hasRight
            && treatment.Right != RightManner.Ragged
            && (!AskedTextures.Names(treatment.Right) || HasTune(bar))
        )
        {
            yield return new RightMannerReason(
                at,
                treatment.Right,
                _rightFell.Contains(bar) || given.Right != treatment.Right
            );
        }
        if (hasRight && solution.Settled.ThinBars.Contains(bar))
        {
            yield return new LimitReason(at, Hand.Right, default, LimitKind.Thinned, [], 0, 0);
        }
    }

    private bool HasTune(int bar) => solution.Right.Notes.Any(n => !n.IsFiller && _lattice.BarAt(n.Tick) == bar);

    private IEnumerable<LimitReason> Throughout(bool hasRight)
    {
        if (printed < wanted)
        {
            yield return new LimitReason(0, null, default, LimitKind.Slower, [], wanted, printed);
        }
        foreach (var (hand, price) in Strains())
        {
            if (price > Settled.UsualStrain && (hasRight || hand == Hand.Left))
            {
                var times = price / Settled.UsualStrain;
                yield return new LimitReason(0, hand, default, LimitKind.StrainDearer, [], times, 1);
            }
        }
    }

    private IEnumerable<(Hand, long)> Strains() =>
        [(Hand.Right, solution.Settled.RightStrain), (Hand.Left, solution.Settled.LeftStrain)];

    // A change is claimed wherever its bar of the tune is played and its chords stand there and are struck: not where the
    // left hand leaves them out.
    private static IEnumerable<HarmonyReason> Changes(Solution solution, int first)
    {
        var (lattice, bars) = (solution.Lattice, solution.Plan.Piece.Tune.Bars);
        var perWhole = lattice.Scale.Per(lattice.Tick);
        var start = 0;
        foreach (var bar in bars)
        {
            var end = start + Math.Max(1, (int)(bar.Length * perWhole).Round(new ScoreTime(1, 1)));
            foreach (var change in solution.Plan.HarmonyChanges.Where(c => c.Bar == bar.Number))
            {
                if (
                    Standing(lattice, start, end, change) is { } tick
                    && lattice.BarAt(tick) is var at
                    && at >= first
                    && IsStruck(lattice.Bars[at])
                )
                {
                    yield return new HarmonyReason(at - first, lattice.Tick * (tick - lattice.Bars[at].Start), change);
                }
            }
            start = end;
        }
    }

    private static bool IsStruck(LatticeBar bar) =>
        bar.Treatment.Left is not (LeftManner.StopTime or LeftManner.Break or LeftManner.Silent);

    // Where in a stretch the chords of a change begin; null: they do not stand there.
    private static int? Standing(Lattice lattice, int start, int end, HarmonyChange change)
    {
        var after = change.After.Split(' ');
        var spans = lattice.Chords;
        for (var i = 0; i < spans.Length && spans[i].Start < end; i++)
        {
            if (spans[i].End <= start)
            {
                continue;
            }
            var stand = spans.Skip(i).Select(s => s.Chord.ToString()).Take(after.Length);
            if (stand.SequenceEqual(after))
            {
                return Math.Max(start, spans[i].Start);
            }
        }
        return null;
    }
}
