namespace Stridewright.Practice.Listening.Reporting;

/// <summary>How even the left hand's strokes are, and whether the tempo creeps.</summary>
internal static class LeftHandMeasure
{
    private const int FewestSteps = 5; // of two bars
    private const int FewestBars = 8;

    /// <summary>
    /// Unevenness of two bars that begin at a bar: the standard deviation of the steps between its strokes, in seconds a
    /// quarter, about the straight line through them, over their mean. A step that hesitates is not counted.
    /// </summary>
    public static double? Unevenness(IReadOnlyList<HandStroke> strokes, Func<HandStroke, bool> isHesitation)
    {
        var steps = new List<(double At, double Length)>();
        for (var i = 1; i < strokes.Count; i++)
        {
            var (a, b) = (strokes[i - 1], strokes[i]);
            if (a.Run == b.Run && b.Beats - a.Beats is > 0 and <= 1.01 && !isHesitation(b) && !b.Rolled && !a.Rolled)
            {
                steps.Add(((a.Beats + b.Beats) / 2, (b.Onset - a.Onset) / (b.Beats - a.Beats)));
            }
        }
        if (steps.Count < FewestSteps)
        {
            return null;
        }
        var (x, y) = (steps.Average(s => s.At), steps.Average(s => s.Length));
        var xx = steps.Sum(s => (s.At - x) * (s.At - x));
        var slope = xx > 0 ? steps.Sum(s => (s.At - x) * (s.Length - y)) / xx : 0;
        var rest = steps.Sum(s => Math.Pow(s.Length - y - slope * (s.At - x), 2));
        return Math.Sqrt(rest / (steps.Count - 2)) / y;
    }

    /// <summary>
    /// Tempo at the end over tempo at the beginning, less 1, on the line through the logarithms of the bars' tempi; the very
    /// last bar is left out, since it may slacken. A tempo that breathes and comes back does not drift.
    /// </summary>
    public static double? Drift(IReadOnlyList<HeardBar> bars)
    {
        var tempi = bars.Where(b => b.QuartersPerMinute is not null)
            .SkipLast(1)
            .Select(b => Math.Log(b.QuartersPerMinute!.Value))
            .ToList();
        if (tempi.Count < FewestBars)
        {
            return null;
        }
        var (x, y) = ((tempi.Count - 1) / 2.0, tempi.Average());
        var slope = tempi.Select((t, i) => (i - x) * (t - y)).Sum() / tempi.Select((_, i) => (i - x) * (i - x)).Sum();
        return Math.Exp(slope * (tempi.Count - 1)) - 1;
    }
}
