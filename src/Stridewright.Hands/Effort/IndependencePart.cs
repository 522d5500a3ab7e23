using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>How often a hand's strokes go their own way.</summary>
/// <param name="Strokes">All strokes of the hand.</param>
/// <param name="Syncopated">Held through a stronger place.</param>
/// <param name="Marked">Of these: the other hand strikes meanwhile.</param>
/// <param name="Crossed">Strokes in beats that the hands divide into parts of which neither fits into the other's, as three
/// against two or four.</param>
/// <param name="Alone">Without a stroke of the other hand, in bars where both play.</param>
internal readonly record struct RhythmCount(int Strokes, int Syncopated, int Marked, int Crossed, int Alone)
{
    public static RhythmCount operator +(RhythmCount a, RhythmCount b) =>
        new(
            a.Strokes + b.Strokes,
            a.Syncopated + b.Syncopated,
            a.Marked + b.Marked,
            a.Crossed + b.Crossed,
            a.Alone + b.Alone
        );
}

/// <summary>Rhythm against the beat, which a foot or the other hand keeps, and against the other hand.</summary>
internal static class IndependencePart
{
    /// <summary>Share of syncopated strokes: a bar of printed rags has one to two in eight (Volk and de Haas 2013).</summary>
    private const double DemandingShare = 0.25;

    // Syncopation is the load; that the other hand marks the beat under it, that the hands divide the beat differently, and
    // that they strike apart, adds to it (working weights, common practice: hands together are harder than each alone).
    private const double MarkedWeight = 0.25,
        CrossedWeight = 0.75,
        AloneWeight = 0.05;

    public static double Amount(EffortScope scope)
    {
        var count = scope.Against;
        if (count.Strokes == 0)
        {
            return 0;
        }
        var own =
            count.Syncopated + MarkedWeight * count.Marked + CrossedWeight * count.Crossed + AloneWeight * count.Alone;
        return EffortNumbers.Bend(own / count.Strokes / DemandingShare);
    }

    /// <summary>What a hand does in each bar.</summary>
    public static RhythmCount[] ByBar(Passage passage, List<Onset> onsets, List<Onset> other)
    {
        var counts = new RhythmCount[passage.Bars.Count];
        var starts = other.ConvertAll(o => o.Start);
        for (int first = 0, next; first < onsets.Count; first = next)
        {
            var bar = onsets[first].Bar;
            for (next = first + 1; next < onsets.Count && onsets[next].Bar == bar; next++) { }
            var (from, end) = (passage.StartOf(bar), passage.StartOf(bar) + passage.Bars[bar].Length);
            var isBoth = After(starts, from, inclusive: true) is { } start && start < end;
            for (var i = first; i < next; i++)
            {
                var onset = onsets[i];
                var held = passage.IsSyncopated(onset);
                var met = starts.BinarySearch(onset.Start) >= 0;
                var marked = held && After(starts, onset.Start, inclusive: false) is { } mark && mark < onset.End;
                counts[bar] += new RhythmCount(
                    1,
                    held ? 1 : 0,
                    marked ? 1 : 0,
                    isBoth && IsCrossed(passage, bar, onset, onsets, first, next, starts) ? 1 : 0,
                    isBoth && !met ? 1 : 0
                );
            }
        }
        return counts;
    }

    private static ScoreTime? After(List<ScoreTime> starts, ScoreTime time, bool inclusive)
    {
        var index = starts.BinarySearch(time);
        index = index >= 0 ? (inclusive ? index : index + 1) : ~index;
        return index < starts.Count ? starts[index] : null;
    }

    private static bool IsCrossed(
        Passage passage,
        int bar,
        Onset onset,
        List<Onset> own,
        int first,
        int next,
        List<ScoreTime> others
    )
    {
        var beat = passage.Bars[bar].Metre.Beat;
        var place = onset.At.Per(beat);
        if (place.Denominator == 1)
        {
            return false; // on the beat nothing crosses
        }
        var from = passage.StartOf(bar) + beat * (place.Numerator / place.Denominator);
        var (mine, theirs) = (1L, 1L);
        for (var i = first; i < next; i++)
        {
            if (own[i].Start >= from && own[i].Start < from + beat)
            {
                mine = Common(mine, (own[i].Start - from).Per(beat).Denominator);
            }
        }
        var at = others.BinarySearch(from);
        for (var i = at >= 0 ? at : ~at; i < others.Count && others[i] < from + beat; i++)
        {
            theirs = Common(theirs, (others[i] - from).Per(beat).Denominator);
        }
        return theirs > 1 && mine % theirs != 0 && theirs % mine != 0;
    }

    private static long Common(long a, long b)
    {
        var (x, y) = (a, b);
        while (y > 0)
        {
            (x, y) = (y, x % y);
        }
        return a / x * b;
    }
}
