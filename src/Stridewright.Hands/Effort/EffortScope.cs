namespace Stridewright.Hands;

/// <summary>What one hand does in one bar or in the whole: what the parts of effort are measured on.</summary>
/// <param name="Seconds">How long it lasts.</param>
/// <param name="Against">What its rhythm does against the beat and the other hand.</param>
/// <param name="Print">What is printed for it.</param>
internal sealed record EffortScope(HandPart Part, double Seconds, RhythmCount Against, PrintCount Print)
{
    public List<Onset> Onsets => Part.Onsets;

    public double StrokesPerSecond => Seconds > 0 ? Onsets.Count / Seconds : 0;
}

/// <summary>Numbers that several parts of effort share.</summary>
internal static class EffortNumbers
{
    /// <summary>More of the same adds ever less: 0 of nothing, towards 1.</summary>
    public static double Bend(double load) => 1 - Math.Exp(-load);

    public static double Mean(List<Onset> onsets, Func<Onset, double> value) =>
        onsets.Count == 0 ? 0 : onsets.Average(value);

    /// <summary>Linear between neighbours; 0 of nothing.</summary>
    public static double Percentile(List<double> sorted, double share)
    {
        if (sorted.Count == 0)
        {
            return 0;
        }
        var place = (sorted.Count - 1) * share;
        var below = (int)place;
        var above = Math.Min(below + 1, sorted.Count - 1);
        return sorted[below] + (sorted[above] - sorted[below]) * (place - below);
    }
}
