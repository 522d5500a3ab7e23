using Stridewright.Practice.Lessons;
using Stridewright.Practice.Listening;
using Stridewright.Workbench.Sheets;

namespace Stridewright.Workbench.Listening;

/// <summary>The drill of a lesson that answers a remark on a take.</summary>
internal static class TakeDrills
{
    /// <param name="kind">Of the remark, such as <c>leap</c>.</param>
    /// <param name="bar">Id of a bar that it is about.</param>
    /// <returns>Null: the lesson has none for it; then its bars are rehearsed.</returns>
    public static Drill? For(Sheet sheet, Take? take, string kind, string bar, CancellationToken cancellation)
    {
        var arrangement = sheet.Arrangement!;
        var wish = new LessonWish
        {
            Hands = arrangement.Brief.Hands,
            Takes = take is null ? [] : [new NamedTake(sheet.Tune.Title, take)],
        };
        var written = arrangement.Score.Bars.ToList().FindIndex(b => b.Id == bar);
        var drills = LessonMaker.Of(sheet.Piece!.Tune, arrangement, wish, cancellation).Lesson?.Drills ?? [];
        return drills
            .Where(d => d.Bars.Contains(written) && d.Serves.Any(s => HeardOf.KindOf(s) == kind))
            .OrderBy(d =>
                DrillServes.For(d.Serves.First(s => HeardOf.KindOf(s) == kind)).ToList().IndexOf(d.Kind)
                    is >= 0
                        and var i
                    ? i
                    : int.MaxValue
            )
            .FirstOrDefault();
    }

    /// <summary>A drill on its picture, and as it is heard.</summary>
    public static async Task<DrillSeen> Seen(SheetDesk desk, Drill drill, CancellationToken cancellation)
    {
        var alone = drill.Score with { Title = "", Subtitle = null, Composer = null, Footnotes = [] };
        var picture = await desk.Picture(alone, cancellation);
        return new(
            drill.Name,
            drill.Claim,
            drill.How,
            System.Text.Encoding.UTF8.GetString(picture),
            Heard.Of(drill.Score, desk.Tools.Perform(drill.Score))
        );
    }
}
