using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Says of every bar of a setting why it is as it is, read off what the search found.</summary>
public static class Reasons
{
    /// <summary>The claims bar by bar, one list per bar of the score: first what was asked for and which limit bound, then
    /// the left hand, then the right. Empty for an arrangement that was not made by <see cref="Arranger"/>.</summary>
    public static ValueList<BarReasons> Of(Arrangement arrangement)
    {
        ArgumentNullException.ThrowIfNull(arrangement);
        if (arrangement.Solution is not { } solution)
        {
            return [];
        }
        var (lattice, score) = (solution.Lattice, arrangement.Score);
        // A left hand alone may be written without its pick-up.
        var first = lattice.Bars.Length - score.Bars.Count;
        var hasRight = !score.LeftHandOnly;
        var piece = new PieceReader(solution, Wanted(solution), arrangement.BeatsPerMinute, first);
        var left = LeftOf(solution, first).ToLookup(r => r.Bar);
        var right = hasRight ? new RightReader(solution, first) : null;
        return score.Bars.Select((bar, i) => new BarReasons(i, bar.Number, [.. Of(i)])).ToValueList();

        IEnumerable<Reason> Of(int i) =>
            piece.Of(i + first, hasRight).Concat(left[i]).Concat(right?.Of(i + first) ?? []);
    }

    private static double Wanted(Solution solution)
    {
        var brief = solution.Stage.Brief;
        var level = Math.Max(brief.LeftLevel, solution.HasNotes ? brief.RightLevel : 0);
        return brief.BeatsPerMinute ?? Feels.Tempo(solution.Lattice.Feel, level);
    }

    private static IEnumerable<Reason> LeftOf(Solution solution, int first)
    {
        var prices = new LeftPrices(solution);
        var (basses, voicings) = (new BassReader(solution, prices), new VoicingReader(solution, prices));
        var kept = solution.Stage.Brief.Kept.Where(k => k.Hand == Hand.Left).Select(k => k.Bar).ToHashSet();
        foreach (var places in Enumerable.Range(0, prices.Slots.Length).GroupBy(i => prices.Slots[i].Bar))
        {
            if (solution.Lattice.Bars[places.Key].Treatment.Right == RightManner.ThumbTune)
            {
                // The left hand has the tune: what was asked for says it all.
                continue;
            }
            var bar = places.Key - first;
            var strokes = places.Select(basses.At).OfType<BassStroke>().ToValueList();
            if (strokes.Count > 0)
            {
                yield return new BassReason(bar, strokes);
            }
            var chord = (VoicingReason?)null;
            foreach (var i in places.Where(_ => !kept.Contains(places.Key)))
            {
                // A chord that is struck again in its bar was explained there.
                var voicing = voicings.At(i, bar);
                var again = chord is not null && voicing?.Ground == VoicingGround.Stays;
                chord = voicing ?? chord;
                Reason?[] found =
                [
                    basses.LimitAt(i, bar),
                    again ? null : voicing,
                    again ? null : voicings.ThinAt(i, bar),
                    basses.RunFrom(i, bar),
                ];
                foreach (var reason in found.OfType<Reason>())
                {
                    yield return reason;
                }
            }
            if (Break(solution, places.Key) is { } onsets)
            {
                yield return new BreakReason(bar, onsets);
            }
        }
    }

    // Strokes of the right hand after the first beat, where the left rests from there on and was not told to; null where
    // it does not.
    private static int? Break(Solution solution, int index)
    {
        var bar = solution.Lattice.Bars[index];
        var struck = solution.Left.Notes.Where(n => n.Slot.Bar == index).ToList();
        var rests =
            struck.Count == 1
            && struck[0].Slot.Tick == bar.Start
            && index < solution.Lattice.Bars.Length - 1
            && bar.Treatment.Left == LeftManner.Stride;
        var onsets = solution.Right.Notes.Count(n => n.Tick > bar.Start && n.Tick < bar.End);
        return rests && onsets >= Breaks.BusyOnsets ? onsets : null;
    }
}
