using Stridewright.Music;

namespace Stridewright.Practice.Listening;

/// <summary>
/// Lays a take along some bars of a score where more than these may have been played. The take is laid along the bars alone
/// and along the whole score; only where the whole explains clearly more of it, the notes that are found in other bars are
/// outside, and what remains is laid along the bars anew. A take of the bars alone is thus never spread over other bars of
/// the same music.
/// </summary>
public static class PartAligner
{
    // Matches that a jump costs, as in telling another piece (Thresholds.NotesAJump).
    private static readonly double AJump = Reporting.Thresholds.NotesAJump.Value;

    /// <param name="whole">The score, in the hands that were to be played.</param>
    /// <param name="isWanted">Whether a bar was to be heard.</param>
    public static Alignment Align(ExpectedScore whole, Func<ExpectedBar, bool> isWanted, Take take)
    {
        ArgumentNullException.ThrowIfNull(whole);
        ArgumentNullException.ThrowIfNull(isWanted);
        ArgumentNullException.ThrowIfNull(take);
        var part = whole.Within(isWanted);
        var alone = Aligner.Align(part, take);
        if (part.Notes.Count == whole.Notes.Count)
        {
            return alone;
        }
        var all = Aligner.Align(whole, take);
        if (Explained(all) < Explained(alone) + AJump)
        {
            return alone;
        }
        var barOf = new int?[take.Notes.Count];
        var noteOf = new ExpectedNote?[take.Notes.Count];
        foreach (var pair in all.Pairs.Where(p => p.IsMatch))
        {
            var note = whole.Notes[pair.Expected!.Value];
            (barOf[pair.Played!.Value], noteOf[pair.Played.Value]) = (note.Bar, note);
        }
        var isInside = Nearest(barOf, take).Select(bar => bar is { } b && isWanted(whole.Bars[b])).ToList();
        var inside = Enumerable.Range(0, take.Notes.Count).Where(i => isInside[i]).ToList();
        if (inside.Count == 0)
        {
            return alone;
        }
        var heard = Aligner.Align(part, take with { Notes = inside.Select(i => take.Notes[i]).ToValueList() });
        return new Alignment(
            part,
            take,
            heard.Pairs.Select(p => p with { Played = p.Played is { } i ? inside[i] : null }).ToValueList(),
            heard
                .Runs.Select(r =>
                    r with
                    {
                        FirstPlayed = inside[r.FirstPlayed],
                        PlayedEnd = inside[r.PlayedEnd - 1] + 1,
                    }
                )
                .ToValueList()
        )
        {
            Outside = Enumerable
                .Range(0, take.Notes.Count)
                .Where(i => !isInside[i])
                .Select(i => new OutsideNote(i, noteOf[i]))
                .ToValueList(),
        };
    }

    private static double Explained(Alignment alignment) =>
        alignment.Pairs.Count(p => p.IsMatch) - AJump * Math.Max(0, alignment.Runs.Count - 1);

    // What is no note of the score belongs to where the nearest one in time is.
    private static IEnumerable<int?> Nearest(int?[] bars, Take take)
    {
        var known = Enumerable.Range(0, bars.Length).Where(i => bars[i] is not null).ToList();
        double Apart(int a, int b) => Math.Abs(take.Notes[a].Onset - take.Notes[b].Onset);
        return bars.Select((bar, i) => bar ?? (known.Count == 0 ? null : bars[known.MinBy(k => Apart(k, i))]));
    }
}
