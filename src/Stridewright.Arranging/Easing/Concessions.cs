using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Something given up in some bars, so that the piece asks no more than was wished.</summary>
/// <param name="Ease">What.</param>
/// <param name="Bars">Printed numbers of the bars.</param>
public sealed record Concession(Ease Ease, ValueList<string> Bars);

/// <summary>Finds what a setting has given up.</summary>
public static class Concessions
{
    /// <summary>What the left hand gave up for the hands' reach and speed and for the player's wishes, a sentence a kind, each
    /// with its bars: read off the reasons.</summary>
    public static ValueList<Diagnostic> ForHands(ValueList<BarReasons> reasons) =>
        reasons
            .SelectMany(b => b.Reasons.OfType<LimitReason>().Select(r => (r.Kind, b.Number)))
            .Where(l => l.Kind is not (LimitKind.Thinned or LimitKind.Slower or LimitKind.StrainDearer))
            .GroupBy(l => l.Kind, l => l.Number)
            .OrderBy(g => g.Key)
            .Select(g => new Diagnostic(
                Severity.Note,
                Place.Whole,
                ArrangingMessages.ForHands(g.Key, g.Distinct().ToList())
            ))
            .ToValueList();

    /// <summary>What an easier setting has given up against the fuller one it was made from.</summary>
    internal static ValueList<Concession> Of(Arrangement full, Arrangement eased)
    {
        var (before, after) = (Counts(full), Counts(eased));
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
    private static int[][] Counts(Arrangement arrangement)
    {
        var solution = arrangement.Solution!;
        var counts = solution.Lattice.Bars.Select(_ => new int[(int)Ease.TwoNotes + 1]).ToArray();
        foreach (var note in solution.Left.Notes)
        {
            var width = note.Shape.High - note.Shape.Low;
            var count = counts[note.Slot.Bar];
            count[(int)Ease.Tenths] += note.Shape.Kind is LeftKind.Tenth or LeftKind.RolledTenth ? 1 : 0;
            count[(int)Ease.Octaves] += note.Shape.Kind != LeftKind.Chord && width == 12 ? 1 : 0;
        }
        foreach (var note in solution.Right.Notes)
        {
            var count = counts[solution.Lattice.BarAt(note.Tick)];
            count[(int)Ease.InnerNotes] += note.Below.Count > 1 ? 1 : 0;
            count[(int)Ease.Octaves] += note.Below.Any(p => note.Top.Midi - p.Midi == 12) ? 1 : 0;
            count[(int)Ease.TwoNotes] += note.Below.Count > 0 ? 1 : 0;
        }
        return counts;
    }
}
