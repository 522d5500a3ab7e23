using Stridewright.Engraving;
using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>Turns a measured style into a chart: the figures worth a mark on paper, section by section.</summary>
internal static class StyleCharts
{
    /// <summary>Shares that are smaller here and in print are left to the text, and larger ones that are not known of print
    /// too.</summary>
    private const double Least = 0.02,
        LeastAlone = 0.05;

    public static StyleChart Of(ProfiledScore score) =>
        new(
            score.Title.Length > 0 ? score.Title : score.File,
            WorkbenchMessages.ChartOf(score.Style),
            score
                .Style.Figures.Where(IsDrawn)
                .GroupBy(f => f.Section)
                .Select(g => new ChartSection(g.Key, g.Select(Row).ToValueList()))
                .ToValueList()
        );

    // Shares side by side are a table, not a mark.
    private static bool IsDrawn(MeasuredFigure figure) =>
        figure.Unit != "share"
        || figure.Values.Count == 1
            && (
                figure.Reference.Count > 0
                    ? Math.Max(figure.Values[0], figure.Reference[0]) >= Least
                    : figure.Values[0] >= LeastAlone
            );

    private static ChartRow Row(MeasuredFigure figure) =>
        new(
            figure.Words,
            figure.Unit switch
            {
                "share" => ChartUnit.Share,
                "key" => ChartUnit.Key,
                _ => ChartUnit.Number,
            },
            figure.Values,
            figure.Reference
        );
}
