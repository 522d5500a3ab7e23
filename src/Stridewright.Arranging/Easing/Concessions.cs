using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Something given up in some bars, so that the piece asks no more than was wished.</summary>
/// <param name="Ease">What.</param>
/// <param name="Bars">Printed numbers of the bars.</param>
public sealed record Concession(Ease Ease, ValueList<string> Bars);

/// <summary>Finds what a setting has given up.</summary>
public static class Concessions
{
    // From this level on the right hand has more than single notes.
    private const int FirstThick = 4;

    /// <summary>What a setting gave up for the hands' reach and speed and for the player's wishes, a sentence a kind, each
    /// with its bars: the left hand's read off the reasons, the right hand's off a setting for the usual hands.</summary>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellation"/> is signalled.</exception>
    public static ValueList<Diagnostic> ForHands(
        Tune tune,
        Arrangement arrangement,
        ValueList<BarReasons> reasons,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(arrangement);
        return [.. OfLeft(reasons), .. OfRight(tune, arrangement, cancellation)];
    }

    private static IEnumerable<Diagnostic> OfRight(Tune tune, Arrangement arrangement, CancellationToken cancellation)
    {
        var (brief, usual) = (arrangement.Brief, new PlayerHands());
        if (brief.Hands == usual || brief.RightLevel < FirstThick || arrangement.Score.LeftHandOnly)
        {
            return [];
        }
        // The hands alone differ: what was eased for the effort is eased there too, and what somebody kept is nobody's loss.
        var free = brief with
        {
            Hands = usual,
            MostEffort = null,
            Settled = brief.Settled is { } settled ? new Settled { Eased = settled.Eased } : null,
            Kept = [],
        };
        var full = Arranger.Arrange(tune, free, cancellation).Arrangement;
        if (full is null || full.Score.Bars.Count != arrangement.Score.Bars.Count)
        {
            return [];
        }
        var kept = brief
            .Kept.Where(k => k.Hand == Hand.Right)
            .Select(k => arrangement.Score.Bars[k.Bar].Number)
            .ToHashSet();
        return Of(full, arrangement, Hand.Right)
            .Select(c => c with { Bars = c.Bars.Where(b => !kept.Contains(b)).ToValueList() })
            .Where(c => c.Bars.Count > 0)
            .Select(c => Note(ArrangingMessages.ForHands(c.Ease, c.Bars)));
    }

    private static IEnumerable<Diagnostic> OfLeft(ValueList<BarReasons> reasons) =>
        reasons
            .SelectMany(b => b.Reasons.OfType<LimitReason>().Select(r => (r.Kind, b.Number)))
            .Where(l => l.Kind is not (LimitKind.Thinned or LimitKind.Slower or LimitKind.StrainDearer))
            .GroupBy(l => l.Kind, l => l.Number)
            .OrderBy(g => g.Key)
            .Select(g => Note(ArrangingMessages.ForHands(g.Key, g.Distinct().ToList())));

    private static Diagnostic Note(string sentence) => new(Severity.Note, Place.Whole, sentence);

    /// <summary>What an easier setting has given up against the fuller one it was made from.</summary>
    /// <param name="hand">Whose; null: both.</param>
    internal static ValueList<Concession> Of(Arrangement full, Arrangement eased, Hand? hand = null)
    {
        var (before, after) = (Counts(full, hand), Counts(eased, hand));
        return Enum.GetValues<Ease>()
            .Where(e => e != Ease.None)
            .Select(ease => new Concession(
                ease,
                Enumerable
                    .Range(0, before.Length)
                    .Where(bar => after[bar][(int)ease] < before[bar][(int)ease])
                    .Select(bar => full.Score.Bars[bar].Number)
                    .ToValueList()
            ))
            .Where(c => c.Bars.Count > 0)
            .ToValueList();
    }

    // Per bar, how many strokes have each of what may be given up.
    private static int[][] Counts(Arrangement arrangement, Hand? hand)
    {
        var solution = arrangement.Solution!;
        var counts = solution.Lattice.Bars.Select(_ => new int[(int)Ease.TwoNotes + 1]).ToArray();
        foreach (var note in hand == Hand.Right ? [] : solution.Left.Notes)
        {
            var width = note.Shape.High - note.Shape.Low;
            var count = counts[note.Slot.Bar];
            count[(int)Ease.Tenths] += note.Shape.Kind is LeftKind.Tenth or LeftKind.RolledTenth ? 1 : 0;
            count[(int)Ease.Octaves] += note.Shape.Kind != LeftKind.Chord && width == 12 ? 1 : 0;
        }
        foreach (var note in hand == Hand.Left ? [] : solution.Right.Notes)
        {
            var count = counts[solution.Lattice.BarAt(note.Tick)];
            count[(int)Ease.InnerNotes] += note.Below.Count > 1 ? 1 : 0;
            count[(int)Ease.Octaves] += note.Below.Any(p => note.Top.Midi - p.Midi == 12) ? 1 : 0;
            count[(int)Ease.TwoNotes] += note.Below.Count > 0 ? 1 : 0;
        }
        return counts;
    }
}
