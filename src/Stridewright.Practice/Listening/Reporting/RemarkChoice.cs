using Stridewright.Music;

namespace Stridewright.Practice.Listening.Reporting;

/// <summary>Chooses what is told: at most three remarks a page of music, and of these the one or two to work on next.</summary>
internal static class RemarkChoice
{
    public static TakeReport Choose(TakeReport report, IReadOnlyList<TakeRemark> all)
    {
        var ordered = all.OrderBy(r => r.FirstBar).ThenBy(r => r.Kind).ThenBy(r => r.Hand).ToList();
        var told = ordered
            .GroupBy(r => r.FirstBar / (int)Thresholds.BarsAPage.Value)
            .SelectMany(page => Heaviest(page).Take((int)Thresholds.RemarksAPage.Value))
            .ToList();
        return report with
        {
            All = ordered.ToValueList(),
            Remarks = told.OrderBy(r => r.FirstBar).ThenBy(r => r.Kind).ToValueList(),
            Next = Heaviest(told).Take((int)Thresholds.Next.Value).ToValueList(),
        };
    }

    private static IEnumerable<TakeRemark> Heaviest(IEnumerable<TakeRemark> remarks) =>
        remarks.OrderByDescending(r => r.Weight).ThenBy(r => r.FirstBar).ThenBy(r => r.Kind);
}
