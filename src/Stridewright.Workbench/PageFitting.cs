using Stridewright.Arranging;
using Stridewright.Music;

namespace Stridewright.Workbench;

/// <summary>Fits the form of a setting to the pages it may take: engraves it, and asks for more or fewer bars by what a page
/// has held so far.</summary>
internal sealed class PageFitting(ITools tools, Paper paper)
{
    private const int Tries = 6;

    /// <summary>Bars that a page holds or somewhat more, to begin with: engraving far too long a piece takes its time.</summary>
    private const int BarsAPage = 36;

    /// <summary>The longest setting found that takes at most so many pages.</summary>
    public ArrangeResult Arrange(Tune tune, Brief brief, int pages, CancellationToken cancellation)
    {
        var result = WithAtMost(BarsAPage * pages);
        ArrangeResult? best = null;
        var (fits, tooMany, leastPages) = (0, int.MaxValue, int.MaxValue);
        for (var attempt = 0; result.Arrangement is { } arrangement; attempt++)
        {
            var engraving = tools.Engrave(tools.ToMusicXml(arrangement.Score), new PageWish(paper), cancellation);
            if (engraving.Value is not { } engraved)
            {
                var reason = engraving.Diagnostics is [var fault, ..] ? fault.Message : "";
                return Refused(WorkbenchMessages.NotCounted(reason));
            }
            var (bars, count) = (arrangement.Score.Bars.Count, engraved.Svg.Count);
            leastPages = Math.Min(leastPages, count);
            if (count <= pages && bars > fits)
            {
                (best, fits) = (result, bars);
            }
            else if (count > pages)
            {
                tooMany = Math.Min(tooMany, bars);
            }
            // A page holds about as many bars as the pages so far.
            var next = count == pages ? 0 : Math.Min(bars * pages / count, tooMany - 1);
            if (attempt == Tries || next <= fits)
            {
                break;
            }
            result = WithAtMost(next);
            if (result.Arrangement is { } same && same.Score.Bars.Count == bars)
            {
                break;
            }
        }
        return best
            ?? (leastPages == int.MaxValue ? result : Refused(WorkbenchMessages.NoRoomOnPages(pages, leastPages)));

        ArrangeResult WithAtMost(int bars) =>
            tools.Arrange(tune, brief with { Form = brief.Form ?? FormLine.Usual, MostBars = bars }, cancellation);
    }

    private static ArrangeResult Refused(string why) =>
        new(null, new Diagnostic(Severity.Error, Music.Place.Whole, why));
}
