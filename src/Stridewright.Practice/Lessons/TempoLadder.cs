using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>Tempi from slow to fast, in whole beats a minute: from 48 to 96 they are 48, 50, 53, 56, 58, 61, 64, 68, 71, 74,
/// 78, 82, 86, 91, 95, 96 (common practice: some 5 % more after three correct passes).</summary>
public static class TempoLadder
{
    /// <summary>The rungs, each once, rising; the first one is <paramref name="from"/> and the last one
    /// <paramref name="to"/>, both rounded.</summary>
    public static ValueList<double> Of(double from, double to)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(from);
        var last = Math.Round(Math.Max(from, to));
        var rungs = new List<double>();
        for (var tempo = from; Math.Round(tempo) < last; tempo *= 1 + LessonLimits.Rung.Value)
        {
            var rung = Math.Max(1, Math.Round(tempo));
            if (rungs.Count == 0 || rung > rungs[^1])
            {
                rungs.Add(rung);
            }
        }
        rungs.Add(Math.Max(1, last));
        return rungs.Distinct().ToValueList();
    }
}
