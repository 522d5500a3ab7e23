using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// Where strains meet: a pick-up stands in the last bar before its strain, so that no beat is added (common practice). The
/// notes there give way where the tune does not need them.
/// </summary>
internal static class PickUps
{
    public static bool Is(IReadOnlyList<TuneBar> strain) =>
        strain.Count > 1 && strain[0].Length < strain[0].Metre.BarLength;

    /// <summary>The bar with the pick-up at its end; null where there is no room for it.</summary>
    /// <param name="givesWay">The bar's own notes under the pick-up may go.</param>
    public static TuneBar? Joined(TuneBar bar, TuneBar pickUp, bool givesWay)
    {
        var full = bar.Metre.BarLength;
        var at = bar.Length < full ? bar.Length : full - pickUp.Length;
        if (
            bar.Metre.BarLength != pickUp.Metre.BarLength
            || at + pickUp.Length > full
            || at <= ScoreTime.Zero
            || (!givesWay && bar.Notes.Any(n => n.At >= at))
        )
        {
            return null;
        }
        var notes = bar.Notes.Where(n => n.At < at).Select(n => Until(n, at));
        var chords = bar.Chords.Where(c => c.At < at || (c.At < full && pickUp.Chords.Count == 0));
        return bar with
        {
            Length = at + pickUp.Length,
            Notes = [.. notes, .. pickUp.Notes.Select(n => n with { At = n.At + at })],
            Chords = [.. chords, .. pickUp.Chords.Select(c => c with { At = c.At + at })],
        };
    }

    /// <summary>A bar that leaves room for a pick-up, filled up with silence.</summary>
    public static TuneBar Filled(TuneBar bar) =>
        bar.Length < bar.Metre.BarLength ? bar with { Length = bar.Metre.BarLength } : bar;

    /// <summary>A note that ends at a place in its bar, or before.</summary>
    public static TuneNote Until(TuneNote note, ScoreTime end) =>
        note.At + note.Length < end ? note : note with { Length = end - note.At, TiedToNext = false };
}
