using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Puts the most telling reasons under a score as numbered notes: at most two a bar, what holds again and again
/// only where it is met first.</summary>
public static class NumberedNotes
{
    private const int MostInABar = 2;

    /// <summary>The score of an arrangement with its notes; nothing that sounds is changed.</summary>
    public static Score Under(Arrangement arrangement)
    {
        ArgumentNullException.ThrowIfNull(arrangement);
        var notes = new List<string>();
        var numbers = new Dictionary<int, string>();
        foreach (var (bar, telling) in Told(Reasons.Of(arrangement)))
        {
            var first = notes.Count + 1;
            notes.AddRange(telling.Select(r => ReasonMessages.Note(bar.Number, r)));
            numbers[bar.Bar] = string.Join(
                ", ",
                Enumerable.Range(first, telling.Count).Select(n => n.ToString(CultureInfo.InvariantCulture))
            );
        }
        return arrangement.Score with
        {
            Footnotes = notes.ToValueList(),
            Bars = arrangement
                .Score.Bars.Select(
                    (bar, i) =>
                        numbers.TryGetValue(i, out var footnote)
                            ? bar with
                            {
                                Directions = [.. bar.Directions, new Direction(ScoreTime.Zero) { Footnote = footnote }],
                            }
                            : bar
                )
                .ToValueList(),
        };
    }

    /// <summary>The same about some bars by themselves, one sentence each.</summary>
    /// <param name="first">Index of the first bar.</param>
    /// <param name="count">How many bars.</param>
    public static ValueList<string> About(Arrangement arrangement, int first, int count)
    {
        ArgumentNullException.ThrowIfNull(arrangement);
        var bars = Reasons.Of(arrangement).Where(b => b.Bar >= first && b.Bar < first + count);
        return Told(bars).SelectMany(b => b.Reasons.Select(r => ReasonMessages.Note(b.Bar.Number, r))).ToValueList();
    }

    // Bars with what is told of them; a topic is told once.
    private static IEnumerable<(BarReasons Bar, List<Reason> Reasons)> Told(IEnumerable<BarReasons> bars)
    {
        var told = new HashSet<string>();
        foreach (var bar in bars)
        {
            var telling = bar
                .Reasons.Where(r => Telling.Weight(r) > 0 && !told.Contains(Telling.Topic(r)))
                .DistinctBy(Telling.Topic)
                .OrderByDescending(Telling.Weight)
                .Take(MostInABar)
                .ToList();
            if (telling.Count > 0)
            {
                told.UnionWith(telling.Select(Telling.Topic));
                yield return (bar, telling);
            }
        }
    }
}
