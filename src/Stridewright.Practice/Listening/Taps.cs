using Stridewright.Music;
using Stridewright.Practice.Listening.Search;

namespace Stridewright.Practice.Listening;

/// <summary>
/// The rhythm of two hands tapped against a click, without a keyboard: one key stands for each hand. Since the click says
/// when each stroke is due, no path is sought: the taps of each hand are paired with its strokes by time alone, with the
/// most gain that pairs in order can have.
/// </summary>
public static class Taps
{
    /// <summary>Keys that stand for the hands in a take of taps, too far apart to be taken for each other.</summary>
    public const int RightKey = 84,
        LeftKey = 48;

    private const double Reach = 0.3; // seconds from where a stroke is due; beyond, only between its neighbours

    /// <summary>One note for each stroke of a hand, with the id of its outer one: the highest of the right hand's, the lowest
    /// of the left hand's. Grace notes are not tapped.</summary>
    public static ExpectedScore Rhythm(ExpectedScore score)
    {
        ArgumentNullException.ThrowIfNull(score);
        return score with
        {
            Notes = score
                .Notes.Where(n => n.Grace == 0)
                .GroupBy(n => (n.Beats, n.Hand))
                .Select(Stroke)
                .OrderBy(n => n.Beats)
                .ThenBy(n => n.Hand)
                .ToValueList(),
        };
    }

    /// <param name="rhythm">Of <see cref="Rhythm"/>.</param>
    /// <param name="taps">Keys are <see cref="RightKey"/> and <see cref="LeftKey"/>.</param>
    /// <param name="due">When a note is due by the click, in seconds of the take; null: it is not played this time.</param>
    public static Alignment Align(ExpectedScore rhythm, Take taps, Func<ExpectedNote, double?> due)
    {
        ArgumentNullException.ThrowIfNull(rhythm);
        ArgumentNullException.ThrowIfNull(taps);
        ArgumentNullException.ThrowIfNull(due);
        var pairs = new List<NotePair>();
        foreach (var key in (int[])[RightKey, LeftKey])
        {
            var strokes = rhythm
                .Notes.Index()
                .Where(n => n.Item.Key == key)
                .Select(n => (n.Index, At: due(n.Item)))
                .Where(n => n.At is not null)
                .Select(n => (n.Index, At: n.At!.Value))
                .ToList();
            var appointments = strokes
                .Select(
                    (s, i) =>
                        new Appointment(
                            s.Index,
                            s.At,
                            i == 0 ? s.At - Reach : strokes[i - 1].At,
                            i + 1 == strokes.Count ? s.At + Reach : strokes[i + 1].At
                        )
                )
                .ToList();
            var played = taps.Notes.Index().Where(n => n.Item.Key == key).ToList();
            pairs.AddRange(
                KeyMatching
                    .Pair(appointments, played.ConvertAll(p => p.Item.Onset), Reach)
                    .Select(p => new NotePair(strokes[p.Expected].Index, played[p.Played].Index))
            );
        }
        var (found, tapped) = (
            pairs.Select(p => p.Expected!.Value).ToHashSet(),
            pairs.Select(p => p.Played!.Value).ToHashSet()
        );
        ValueList<Run> runs =
            pairs.Count == 0
                ? []
                :
                [
                    new Run(
                        0,
                        taps.Notes.Count,
                        found.Min(i => rhythm.Notes[i].Beats),
                        found.Max(i => rhythm.Notes[i].Beats)
                    ),
                ];
        pairs.AddRange(Left(rhythm.Notes.Count, found).Select(i => new NotePair(i, null)));
        pairs.AddRange(Left(taps.Notes.Count, tapped).Select(i => new NotePair(null, i)));
        return new Alignment(rhythm, taps, pairs.ToValueList(), runs);
    }

    private static ExpectedNote Stroke(IEnumerable<ExpectedNote> notes)
    {
        var ordered = notes.OrderBy(n => n.Key).ToList();
        var outer = ordered[0].Hand == Hand.Right ? ordered[^1] : ordered[0];
        return outer with { Key = outer.Hand == Hand.Right ? RightKey : LeftKey, Rolled = false, Ornamented = false };
    }

    private static IEnumerable<int> Left(int count, HashSet<int> taken) =>
        Enumerable.Range(0, count).Where(i => !taken.Contains(i));
}
