using Stridewright.Music;
using Stridewright.Practice.Listening.Search;

namespace Stridewright.Practice.Listening;

/// <summary>
/// Lays a take along a score note by note, in two stages as in published note alignment (coarse path, then notes within
/// it: Nakamura, Yoshii and Katayose 2017; Peter and others 2023, TISMIR 6(1)). First the player's path through the chords
/// of the score (<see cref="PathSearch"/>), which follows hesitations, skips, restarts and jumps; then, between two jumps,
/// the notes of each key by time alone (<see cref="KeyMatching"/>), so that hands apart, rolled chords and swapped
/// neighbours do no harm. The second stage is done again with the times that it found.
/// </summary>
public static class Aligner
{
    private const int Rounds = 3;
    private const int Beyond = 3; // chords before and after a stretch that may belong to it
    private const double LeastReach = 0.35; // seconds
    private const double MostReach = 1.2;
    private const double ReachInQuarters = 0.9;
    private const double GraceLength = 0.09; // seconds that a grace note is expected to take

    /// <summary>The alignment; without any match where the take has nothing of the score.</summary>
    public static Alignment Align(ExpectedScore score, Take take)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(take);
        var chords = new ChordTable(score.Notes);
        var path = PathSearch.Find(chords, take.Notes);
        var pairs = new List<NotePair>();
        var runs = new List<Run>();
        var isPlayed = new bool[score.Notes.Count];
        var isMatched = new bool[take.Notes.Count];
        var stretches = Stretch.Of(path);
        foreach (var stretch in stretches)
        {
            foreach (var (expected, played) in Match(score, take, chords, path, stretch))
            {
                pairs.Add(new NotePair(expected, played));
                (isPlayed[expected], isMatched[played]) = (true, true);
            }
            runs.Add(
                new Run(
                    stretch.FirstPlayed,
                    stretch.PlayedEnd,
                    chords.Beats[stretch.FirstChord],
                    chords.Beats[stretch.LastChord]
                )
            );
        }
        pairs.AddRange(Left(isPlayed).Select(i => new NotePair(i, null)));
        pairs.AddRange(Left(isMatched).Select(i => new NotePair(null, i)));
        return new Alignment(score, take, pairs.ToValueList(), runs.ToValueList());
    }

    private static IEnumerable<int> Left(bool[] taken) => Enumerable.Range(0, taken.Length).Where(i => !taken[i]);

    private static List<(int Expected, int Played)> Match(
        ExpectedScore score,
        Take take,
        ChordTable chords,
        PathPoint[] path,
        Stretch stretch
    )
    {
        var first = Math.Max(0, stretch.FirstChord - Beyond);
        var last = Math.Min(chords.Count - 1, stretch.LastChord + Beyond);
        var known = Enumerable
            .Range(stretch.FirstPlayed, stretch.PlayedEnd - stretch.FirstPlayed)
            .Where(n => path[n].Step != PathStep.Beside)
            .Select(n => (path[n].Chord, take.Notes[n].Onset));
        var pairs = new List<(int Expected, int Played)>();
        for (var round = 0; round < Rounds; round++)
        {
            var map = new TimeMap(chords, first, last, known);
            pairs = ByKey(score, take, chords, map, stretch, first, last, pairs);
            if (pairs.Count == 0)
            {
                break;
            }
            known = pairs
                .Where(p => score.Notes[p.Expected].Grace == 0)
                .Select(p => (chords.ChordOf[p.Expected], take.Notes[p.Played].Onset))
                .ToList();
        }
        return pairs;
    }

    private static List<(int Expected, int Played)> ByKey(
        ExpectedScore score,
        Take take,
        ChordTable chords,
        TimeMap map,
        Stretch stretch,
        int first,
        int last,
        List<(int Expected, int Played)> before
    )
    {
        var onsetOf = before.ToDictionary(p => p.Expected, p => take.Notes[p.Played].Onset);
        var expected = new Dictionary<int, List<(int Note, double At)>>();
        for (var i = chords.First(first); i < chords.End(last); i++)
        {
            var note = score.Notes[i];
            // Where a note was found before, the others of its chord say when it should be.
            var own = note.Grace == 0 && onsetOf.TryGetValue(i, out var onset) ? onset : double.NaN;
            var at = map.At(chords.ChordOf[i], own) - GraceLength * note.Grace;
            if (!expected.TryGetValue(note.Key, out var list))
            {
                expected[note.Key] = list = [];
            }
            list.Add((i, at));
        }
        var played = Enumerable
            .Range(stretch.FirstPlayed, stretch.PlayedEnd - stretch.FirstPlayed)
            .GroupBy(n => take.Notes[n].Key);
        var reach = Math.Clamp(map.Quarter * ReachInQuarters, LeastReach, MostReach);
        var pairs = new List<(int Expected, int Played)>();
        foreach (var group in played)
        {
            if (expected.TryGetValue(group.Key, out var asked))
            {
                var (notes, struck) = (asked.OrderBy(a => a.At).ToList(), group.ToList());
                var found = KeyMatching.Pair(
                    notes.Select(a => a.At).ToArray(),
                    struck.Select(n => take.Notes[n].Onset).ToArray(),
                    reach
                );
                pairs.AddRange(
                    found
                        .Select((p, e) => (Expected: notes[e].Note, Played: p))
                        .Where(p => p.Played >= 0)
                        .Select(p => (p.Expected, struck[p.Played]))
                );
            }
        }
        return pairs;
    }
}
