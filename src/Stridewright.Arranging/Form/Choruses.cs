using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>One strain of a form as it came through.</summary>
/// <param name="Part">As its heading, such as <c>A</c> or <c>Trio</c>.</param>
/// <param name="Bar">Printed number of its first bar.</param>
/// <param name="Notes">Notes of the tune in it.</param>
/// <param name="Kept">Of these, on top within one grid unit of their place in the finished score.</param>
/// <param name="RightDiffers">Share, 0 to 1, of the right hand's strokes that are other keys or at other places than when the
/// strain was heard before; null: it was not.</param>
/// <param name="LeftDiffers">The same of the left hand's.</param>
public sealed record ChorusKept(
    string Part,
    string Bar,
    int Notes,
    int Kept,
    double? RightDiffers,
    double? LeftDiffers
);

/// <summary>Holds the strains of a finished score against the tune and against each other.</summary>
internal static class Choruses
{
    public static ValueList<ChorusKept> Of(Lattice lattice, Score score)
    {
        var right = Struck(lattice, score, Hand.Right);
        var left = Struck(lattice, score, Hand.Left);
        var found = new List<ChorusKept>();
        var heard = new Dictionary<string, (int Start, int End)>();
        foreach (var (first, last) in Strains(lattice))
        {
            var span = (Start: lattice.Bars[first].Start, lattice.Bars[last].End);
            bool Within(int tick) => tick >= span.Start && tick < span.End;
            var notes = lattice.Notes.Where(n => Within(n.Start)).ToList();
            var kept = notes.Count(n =>
                Enumerable
                    .Range(n.Start - Lattice.TicksPerUnit, 2 * Lattice.TicksPerUnit + 1)
                    .Any(t => right.TryGetValue(t, out var keys) && keys[^1] == n.Key)
            );
            var part = lattice.Bars[first].Treatment.Part;
            (int, int)? before = heard.TryGetValue(part, out var there) ? there : null;
            heard[part] = span;
            found.Add(
                new ChorusKept(
                    part,
                    lattice.Bars[first].Number,
                    notes.Count + lattice.LostAt.Count(Within),
                    kept,
                    Differing(right, before, span),
                    Differing(left, before, span)
                )
            );
        }
        return found.ToValueList();
    }

    private static Dictionary<int, ValueList<int>> Struck(Lattice lattice, Score score, Hand hand) =>
        Timeline
            .Of(score)
            .Where(s => s.Hand == hand && s.Start.IsMultipleOf(lattice.Tick))
            .GroupBy(s => (int)s.Start.Per(lattice.Tick).Numerator)
            .ToDictionary(g => g.Key, g => g.Select(s => s.Key).Order().ToValueList());

    private static double? Differing(
        Dictionary<int, ValueList<int>> struck,
        (int Start, int End)? before,
        (int Start, int End) now
    )
    {
        if (before is not { } span)
        {
            return null;
        }
        var (first, second) = (Of(span), Of(now));
        return 1 - (double)second.Count(first.Contains) / Math.Max(1, Math.Max(first.Count, second.Count));

        HashSet<(int, ValueList<int>)> Of((int Start, int End) within) =>
            struck
                .Where(s => s.Key >= within.Start && s.Key < within.End)
                .Select(s => (s.Key - within.Start, s.Value))
                .ToHashSet();
    }

    private static IEnumerable<(int First, int Last)> Strains(Lattice lattice)
    {
        for (var first = 0; first < lattice.Bars.Length; )
        {
            var treatment = lattice.Bars[first].Treatment;
            var last = first;
            while (
                last + 1 < lattice.Bars.Length
                && lattice.Bars[last + 1].Treatment is { Heading: null } next
                && next.Part == treatment.Part
            )
            {
                last++;
            }
            if (treatment.Part.Length > 0 && !treatment.IsAdded)
            {
                yield return (first, last);
            }
            first = last + 1;
        }
    }
}
