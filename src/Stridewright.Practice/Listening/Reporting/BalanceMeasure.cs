namespace Stridewright.Practice.Listening.Reporting;

/// <summary>How loud bass, chords and tune are against each other.</summary>
internal static class BalanceMeasure
{
    /// <summary>Basses are the left-hand strokes whose lowest note lies below the hand's middle, chords those above it with
    /// several notes; the tune is the right hand's highest note. All null where every key is equally loud, as in files that
    /// were not played.</summary>
    public static BalanceHeard Of(HandStrokes strokes, Take take)
    {
        if (take.Notes.Select(n => n.Velocity).Distinct().Count() < 2)
        {
            return new(null, null, null);
        }
        var middle = Listener.Median(strokes.Left.Select(s => (double)s.Low)) ?? 0;
        return new(
            Mean(strokes.Left.Where(s => s.Low < middle)),
            Mean(strokes.Left.Where(s => s.Low >= middle && s.Notes.Count > 1)),
            Mean(strokes.Right)
        );
    }

    private static double? Mean(IEnumerable<HandStroke> strokes) =>
        strokes.Select(s => (double?)s.Velocity).DefaultIfEmpty().Average();
}
