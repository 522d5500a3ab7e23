namespace Stridewright.Practice.Listening.Reporting;

/// <summary>A step that lasted much longer than those around it.</summary>
/// <param name="After">The stroke that came late.</param>
/// <param name="Beats">What was lost, in beats.</param>
internal sealed record Hesitation(HandStroke After, double Beats);

/// <summary>Finds where the player stopped: a step longer than the tempo before it and after it asks, so that a ritardando
/// is none, nor a slower tempo from here on.</summary>
internal static class Hesitations
{
    private const int Around = 4; // steps on either side
    private const int Fewest = 2;
    private const double LongestStep = 4; // quarters; over a longer rest nobody counts

    public static List<Hesitation> Find(IReadOnlyList<HandStroke> strokes, Func<int, double> beatOf)
    {
        var found = new List<Hesitation>();
        for (var i = 1; i < strokes.Count; i++)
        {
            var (a, b) = (strokes[i - 1], strokes[i]);
            var step = b.Beats - a.Beats;
            if (a.Run != b.Run || step > LongestStep)
            {
                continue;
            }
            if (Tempo(strokes, i - Around, i - 1) is { } before && Tempo(strokes, i + 1, i + Around) is { } after)
            {
                var quarter = Math.Max(before, after);
                var lost = (b.Onset - a.Onset - step * quarter) / (quarter * beatOf(b.Bar));
                if (lost > Thresholds.Hesitation.Value && !IsRegained(strokes, i, quarter))
                {
                    found.Add(new Hesitation(b, lost));
                }
            }
        }
        return found;
    }

    // The next stroke comes where it would have without: one stroke was late, nobody stopped.
    private static bool IsRegained(IReadOnlyList<HandStroke> strokes, int i, double quarter)
    {
        var (before, late) = (strokes[i - 1], strokes[i]);
        if (i + 1 == strokes.Count || strokes[i + 1] is not { } next || next.Run != late.Run)
        {
            return false;
        }
        var own = late.Onset - before.Onset - (late.Beats - before.Beats) * quarter;
        var left = next.Onset - before.Onset - (next.Beats - before.Beats) * quarter;
        return left < own / 2;
    }

    // Median length of a quarter over the steps that end at these strokes.
    private static double? Tempo(IReadOnlyList<HandStroke> strokes, int from, int to)
    {
        var lengths = new List<double>();
        for (var i = Math.Max(1, from); i <= Math.Min(strokes.Count - 1, to); i++)
        {
            var (a, b) = (strokes[i - 1], strokes[i]);
            if (a.Run == b.Run && b.Onset > a.Onset)
            {
                lengths.Add((b.Onset - a.Onset) / (b.Beats - a.Beats));
            }
        }
        lengths.Sort();
        return lengths.Count < Fewest ? null : lengths[lengths.Count / 2];
    }
}
