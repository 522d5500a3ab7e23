namespace Stridewright.Practice.Listening.Reporting;

/// <summary>When beats were played: the line through strokes, in each stretch without a jump.</summary>
internal sealed class BeatLine(IReadOnlyList<HandStroke> strokes)
{
    private const double Near = 1.01; // quarters between strokes that a beat may lie between

    /// <summary>The second at which a place of the score was played in a stretch; null: no stroke is near.</summary>
    public double? At(int run, double beats)
    {
        var (low, high) = (0, strokes.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            var s = strokes[middle];
            (low, high) = s.Run < run || (s.Run == run && s.Beats < beats - 1e-6) ? (middle + 1, high) : (low, middle);
        }
        if (low < strokes.Count && strokes[low].Run == run && ExpectedScore.AreTogether(strokes[low].Beats, beats))
        {
            return strokes[low].Onset;
        }
        if (low == 0 || low == strokes.Count || strokes[low].Run != run || strokes[low - 1].Run != run)
        {
            return null;
        }
        var (before, after) = (strokes[low - 1], strokes[low]);
        return beats - before.Beats > Near || after.Beats - beats > Near
            ? null
            : before.Onset + (beats - before.Beats) / (after.Beats - before.Beats) * (after.Onset - before.Onset);
    }

    /// <summary>Length of a quarter around a place, in seconds; null: no strokes are near.</summary>
    public double? QuarterAt(int run, double beats) =>
        At(run, beats - 0.5) is { } before && At(run, beats + 0.5) is { } after && after > before
            ? after - before
            : null;
}
