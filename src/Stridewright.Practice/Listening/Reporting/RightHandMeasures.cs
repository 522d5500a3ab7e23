namespace Stridewright.Practice.Listening.Reporting;

/// <summary>One anticipation as played.</summary>
/// <param name="Share">Lead before the beat as a share of the written lead: 1 as written, 0 on the beat.</param>
internal sealed record Anticipation(HandStroke Stroke, double Share)
{
    public int Bar => Stroke.Bar;
}

/// <summary>Where the right hand stands against the left: anticipations and swung pairs.</summary>
internal static class RightHandMeasures
{
    private const double LongestLead = 0.5; // quarters

    /// <summary>Right-hand strokes between two left-hand ones that are held through the next of these, at most an eighth
    /// before it; their lead is measured against that stroke as it was played. In swung eighths an off-beat is expected
    /// where the swing has it.</summary>
    public static List<Anticipation> Anticipations(HandStrokes strokes, Func<int, double> swingOf)
    {
        var line = new BeatLine(strokes.Left);
        var found = new List<Anticipation>();
        var next = 0;
        foreach (var stroke in strokes.Right)
        {
            while (next < strokes.Left.Count && IsBefore(strokes.Left[next], stroke))
            {
                next++;
            }
            if (next == strokes.Left.Count)
            {
                break;
            }
            var beat = strokes.Left[next];
            var lead = beat.Beats - stroke.Beats;
            if (
                beat.Run == stroke.Run
                && lead > 1e-6
                && lead <= LongestLead + 1e-6
                && stroke.Length > lead + 1e-6
                && line.QuarterAt(beat.Run, beat.Beats) is { } quarter
            )
            {
                var asked = Swung(stroke.Beats, lead, swingOf(stroke.Bar));
                found.Add(new Anticipation(stroke, (beat.Onset - stroke.Onset) / (asked * quarter)));
            }
        }
        return found;
    }

    private static bool IsBefore(HandStroke left, HandStroke right) =>
        left.Run < right.Run || (left.Run == right.Run && left.Beats <= right.Beats + 1e-6);

    private static double Swung(double at, double lead, double swing) =>
        Math.Abs(lead - 0.5) < 1e-6 && swing > 1 ? 1 / (1 + swing) : lead;

    /// <summary>Played ratios of long to short: pairs of a beat, its half and the next beat, nothing between them.</summary>
    /// <param name="unitOf">Length of the beat that is halved, in quarters, in a bar.</param>
    public static List<double> Swing(HandStrokes strokes, Func<int, double> unitOf, Func<HandStroke, double> placeOf)
    {
        var left = new BeatLine(strokes.Left);
        var (right, ratios) = (strokes.Right, new List<double>());
        for (var i = 0; i < right.Count; i++)
        {
            var (off, unit) = (right[i], unitOf(right[i].Bar));
            var place = placeOf(off) / unit;
            if (Math.Abs(place - Math.Floor(place) - 0.5) > 1e-6)
            {
                continue;
            }
            var on = At(right, i - 1, off, off.Beats - unit / 2, left);
            var then = At(right, i + 1, off, off.Beats + unit / 2, left);
            if (on < off.Onset && off.Onset < then)
            {
                var ratio = (off.Onset - on.Value) / (then.Value - off.Onset);
                if (ratio <= Thresholds.SwingKept.Value && ratio >= 1 / Thresholds.SwingKept.Value)
                {
                    ratios.Add(ratio);
                }
            }
        }
        return ratios;
    }

    // The right hand's own neighbour; where it has none at that place, the left hand's beat.
    private static double? At(IReadOnlyList<HandStroke> right, int i, HandStroke off, double beats, BeatLine left)
    {
        if (i >= 0 && i < right.Count && right[i].Run == off.Run)
        {
            if (ExpectedScore.AreTogether(right[i].Beats, beats))
            {
                return right[i].Onset;
            }
            if (Math.Abs(right[i].Beats - off.Beats) < Math.Abs(beats - off.Beats))
            {
                return null;
            }
        }
        return left.At(off.Run, beats);
    }
}
