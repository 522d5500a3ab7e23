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
        var told = new HashSet<string>();
        var numbers = new Dictionary<int, string>();
        foreach (var bar in Reasons.Of(arrangement))
        {
            var telling = bar
                .Reasons.Where(r => Telling.Weight(r) > 0 && !told.Contains(Telling.Topic(r)))
                .DistinctBy(Telling.Topic)
                .OrderByDescending(Telling.Weight)
                .Take(MostInABar)
                .ToList();
            if (telling.Count == 0)
            {
                continue;
            }
            told.UnionWith(telling.Select(Telling.Topic));
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
}
