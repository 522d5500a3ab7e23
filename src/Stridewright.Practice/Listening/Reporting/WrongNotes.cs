namespace Stridewright.Practice.Listening.Reporting;

/// <summary>A note that was asked for and the other key that was struck for it.</summary>
/// <param name="Steps">Semitones from the asked key to the struck one.</param>
internal sealed record WrongNote(int Expected, int Played, int Steps)
{
    public bool IsOctave => Steps % 12 == 0;
}

/// <summary>Tells wrong notes from missing and extra ones: a key struck where one is missing stands for it.</summary>
internal static class WrongNotes
{
    private const double Apart = 0.2; // seconds between where a note should be and the key that stands for it
    private const int Farthest = 24; // semitones
    private const double SecondsASemitone = 0.015; // what a semitone further is worth in time

    public static IReadOnlyList<WrongNote> Find(Alignment alignment, Func<int, double?> whenDue)
    {
        var (score, take) = (alignment.Score.Notes, alignment.Take.Notes);
        var extra = alignment
            .Pairs.Where(p => p.Expected is null)
            .Select(p => p.Played!.Value)
            .OrderBy(p => take[p].Onset)
            .ToList();
        var onsets = extra.ConvertAll(p => take[p].Onset);
        var possible = new List<(double Cost, int Expected, int Played)>();
        foreach (var pair in alignment.Pairs.Where(p => p.Played is null))
        {
            var expected = pair.Expected!.Value;
            if (whenDue(expected) is not { } due)
            {
                continue;
            }
            var from = onsets.BinarySearch(due - Apart);
            for (var i = from < 0 ? ~from : from; i < extra.Count && onsets[i] <= due + Apart; i++)
            {
                var steps = Math.Abs(take[extra[i]].Key - score[expected].Key);
                if (steps is > 0 and <= Farthest)
                {
                    var far = steps % 12 == 0 ? 1 : steps;
                    possible.Add((Math.Abs(onsets[i] - due) + far * SecondsASemitone, expected, extra[i]));
                }
            }
        }
        var (wrong, asked, struck) = (new List<WrongNote>(), new HashSet<int>(), new HashSet<int>());
        foreach (
            var (_, expected, played) in possible.OrderBy(p => p.Cost).ThenBy(p => p.Expected).ThenBy(p => p.Played)
        )
        {
            if (!asked.Contains(expected) && !struck.Contains(played))
            {
                wrong.Add(new WrongNote(expected, played, take[played].Key - score[expected].Key));
                asked.Add(expected);
                struck.Add(played);
            }
        }
        return wrong;
    }
}
