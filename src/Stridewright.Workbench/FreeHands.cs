using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Workbench;

/// <summary>Where a page can be turned: a hand has struck before the bar line what it has to, and strikes nothing more until
/// the bar line or later, for as long as it takes to turn a page.</summary>
internal static class FreeHands
{
    /// <summary>Seconds that turning a page takes one hand, from the last stroke to the next (a working value, common
    /// practice).</summary>
    public const double Turning = 1;

    /// <summary>Ids of the bars after which a hand is free.</summary>
    public static ValueList<string> After(Score score)
    {
        var quarters = UsualTempo.QuartersPerMinute(score.Bars[0].Metre);
        var (start, ends) = (0.0, new List<double>());
        var strokes = new Dictionary<Hand, List<double>> { [Hand.Right] = [], [Hand.Left] = [] };
        foreach (var bar in score.Bars)
        {
            quarters = bar.Directions.Select(d => d.QuartersPerMinute).LastOrDefault(q => q is not null) ?? quarters;
            foreach (var (hand, at) in bar.Voices.SelectMany(v => v.Events.Where(Strikes).Select(e => (v.Hand, e.At))))
            {
                strokes[hand].Add(start + at.ToQuarters() * 60 / quarters);
            }
            start += bar.Length.ToQuarters() * 60 / quarters;
            ends.Add(start);
        }
        foreach (var times in strokes.Values)
        {
            times.Sort();
        }
        return score
            .Bars.SkipLast(1)
            .Where((_, i) => score.LeftHandOnly || strokes.Values.Any(times => IsFree(times, ends[i])))
            .Select(b => b.Id)
            .ToValueList();
    }

    private static bool Strikes(ScoreEvent e) => e.Notes.Any(n => !n.TieStop);

    // Sums of times differ in their last places from one another.
    private static bool IsFree(List<double> times, double barLine)
    {
        const double Same = 1e-6;
        var next = times.FindIndex(t => t >= barLine - Same);
        return next <= 0 || times[next] - times[next - 1] >= Turning - Same;
    }
}
