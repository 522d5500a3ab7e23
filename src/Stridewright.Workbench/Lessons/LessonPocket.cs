using Stridewright.Music;
using Stridewright.Practice.Lessons;
using Stridewright.Workbench.Pocket;

namespace Stridewright.Workbench;

/// <summary>What of a lesson goes into a file for a phone: the piece, today's list, and the steps and drills that it asks for.</summary>
internal static class LessonPocket
{
    public static PocketWish Of(Lesson lesson)
    {
        var tasks = lesson.Plan.Days is [var today, ..] ? today.Tasks : [];
        var asked = tasks.Select(t => t.Item).OfType<string>().Distinct().ToList();
        var all = lesson
            .Steps.Select(s => (s.Id, s.Name, s.Score))
            .Concat(lesson.Drills.Select(d => (d.Id, d.Name, d.Score)))
            .ToList();
        // The piece is there already.
        var parts = all.Where(p => asked.Contains(p.Id) && !ReferenceEquals(p.Score, lesson.Goal)).ToList();
        var quarters = lesson.Beat.Length.ToQuarters();
        return new()
        {
            Title = lesson.Title,
            Player = lesson.Player,
            Parts = [new(lesson.Title, lesson.Goal), .. parts.Select(p => new PocketPart(p.Name, p.Score))],
            Today = tasks
                .Select(t => new PocketTask(WorkbenchMessages.TaskOf(all.Find(p => p.Id == t.Item).Name, t.Words))
                {
                    // What is not among the others is the piece; a break is nothing to lay out.
                    Part = t.Item is null ? null : parts.FindIndex(p => p.Id == t.Item) + 1,
                    QuartersPerMinute = t.BeatsPerMinute * quarters,
                    Minutes = t.Minutes,
                })
                .ToValueList(),
        };
    }
}
