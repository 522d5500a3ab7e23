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
    private const int FewestNotes = 3; // of a stretch between two jumps
    private const double LeastShare = 0.3; // of its played notes that are the score's

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
            var found = StretchMatching.Find(score, take, chords, path, stretch);
            if (stretches.Count > 1 && found.Count < Math.Max(FewestNotes, LeastShare * stretch.Count))
            {
                continue; // a chance likeness, not a jump
            }
            foreach (var (expected, played) in found)
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
}
