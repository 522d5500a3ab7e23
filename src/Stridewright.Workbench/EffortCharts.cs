using Stridewright.Engraving;
using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>Turns a judged score into a chart of its effort, bar by bar.</summary>
internal static class EffortCharts
{
    public static EffortChart Of(string file, JudgedScore score)
    {
        var faulty = score.Spots.Select(s => s.Bar).ToHashSet(StringComparer.Ordinal);
        var hardest = score.Hardest.Select(h => h.Bar).ToHashSet(StringComparer.Ordinal);
        return new(
            score.Title.Length > 0 ? score.Title : Path.GetFileName(file),
            WorkbenchMessages.EffortChart(score),
            score
                .BarEfforts.Select(b => new EffortColumn(b.Bar, b.Right, b.Left)
                {
                    IsFaulty = faulty.Contains(b.Bar),
                    IsHard = hardest.Contains(b.Bar),
                })
                .ToValueList()
        );
    }
}
