using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>One strain of a form as it came through.</summary>
/// <param name="Part">As its heading, such as <c>A</c> or <c>Trio</c>.</param>
/// <param name="Bar">Printed number of its first bar.</param>
/// <param name="Notes">Notes of the tune in it.</param>
/// <param name="Kept">Of these, on top within one grid unit of their place in the finished score.</param>
/// <param name="Differs">Share, 0 to 1, of the right hand's strokes that are other keys or at other places than when the
/// strain was heard before; null: it was not.</param>
public sealed record ChorusKept(string Part, string Bar, int Notes, int Kept, double? Differs);

/// <summary>Holds the strains of a finished score against the tune and against each other.</summary>
internal static class Choruses
{
    public static ValueList<ChorusKept> Of(Lattice lattice, Score score)
    {
        var struck = Timeline
            .Of(score)
            .Where(s => s.Hand == Hand.Right && s.Start.IsMultipleOf(lattice.Tick))
            .GroupBy(s => (int)s.Start.Per(lattice.Tick).Numerator)
            .ToDictionary(g => g.Key, g => g.Select(s => s.Key).Order().ToValueList());
        var found = new List<ChorusKept>();
        var heard = new Dictionary<string, HashSet<(int, ValueList<int>)>>();
        foreach (var (first, last) in Strains(lattice))
        {
            var (start, end) = (lattice.Bars[first].Start, lattice.Bars[last].End);
            var notes = lattice.Notes.Where(n => n.Start >= start && n.Start < end).ToList();
            var kept = notes.Count(n =>
                Enumerable
                    .Range(n.Start - Lattice.TicksPerUnit, 2 * Lattice.TicksPerUnit + 1)
                    .Any(t => struck.TryGetValue(t, out var keys) && keys[^1] == n.Key)
            );
            var strokes = struck
                .Where(s => s.Key >= start && s.Key < end)
                .Select(s => (s.Key - start, s.Value))
                .ToHashSet();
            var part = lattice.Bars[first].Treatment.Part;
            double? differs = heard.TryGetValue(part, out var before)
                ? 1 - (double)strokes.Count(before.Contains) / Math.Max(1, Math.Max(strokes.Count, before.Count))
                : null;
            heard[part] = strokes;
            var lost = lattice.LostAt.Count(t => t >= start && t < end);
            found.Add(new ChorusKept(part, lattice.Bars[first].Number, notes.Count + lost, kept, differs));
        }
        return found.ToValueList();
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
