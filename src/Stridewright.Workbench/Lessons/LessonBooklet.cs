using System.Text;
using Stridewright.Engraving;
using Stridewright.Music;
using Stridewright.Practice.Lessons;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>A lesson as a booklet: what it holds, today, the piece, the steps, the drills, the days, reasons and cautions.</summary>
internal sealed class LessonBooklet(ITools tools, Lesson lesson, Paper paper, CancellationToken cancellation)
{
    private static readonly ValueList<double> TaskWidths = [0.08, 0.38, 0.12, 0.36, 0.06];
    private static readonly ValueList<double> StepWidths = [0.32, 0.42, 0.11, 0.09, 0.06];
    private const int ShortAlone = 36,
        ShortTogether = 18; // bars

    private readonly List<BookletPart> _parts = [];
    private string _problem = "";

    /// <param name="pages">The piece; null: it is engraved.</param>
    /// <returns>Null, with the reason, when something cannot be engraved.</returns>
    public EngravedPages? Of(EngravedPages? pages, out string problem)
    {
        Front();
        Today();
        pages ??= Engraved(lesson.Goal, new PageWish(paper));
        Music("score", pages);
        Steps();
        Drills();
        Days();
        Reasons();
        problem = _problem;
        return problem.Length > 0 ? null : tools.ToBook(lesson.Title, _parts, paper);
    }

    private void Front()
    {
        Add(new BookletSpace(1));
        Add(new BookletHeading(lesson.Title, 26) { Centred = true });
        Add(new BookletHeading(WorkbenchMessages.LessonFor(lesson.Player), 14) { Centred = true, Italic = true });
        Add(new BookletSpace(8));
        var metre = ReportOf.MainMetre(lesson.Goal).ToString();
        foreach (var fact in WorkbenchMessages.LessonFacts(lesson, metre, ReportOf.CountedBars(lesson.Goal)))
        {
            Add(new BookletText(fact, 11));
        }
        Add(new BookletText(WorkbenchMessages.BookletSteps, 11));
        Add(new BookletSpace(8));
        Content(WorkbenchMessages.Today, "today");
        Content(WorkbenchMessages.TheScore, "score");
        Content(WorkbenchMessages.ThePath, "path");
        foreach (var step in lesson.Steps)
        {
            Content(step.Name, PlaceOf(step), 0.04);
        }
        if (lesson.Drills.Count > 0)
        {
            Content(WorkbenchMessages.TheDrills, "drills");
        }
        Content(WorkbenchMessages.ThePlan, "days");
        Content(WorkbenchMessages.TheReasons, "reasons");

        void Content(string text, string mark, double indent = 0) =>
            Add(
                new BookletRow(["", text, "@" + mark], [indent, 0.92 - indent, 0.08]) { Points = indent > 0 ? 10 : 11 }
            );
    }

    // What is a part of the piece is played from its pages.
    private static string PlaceOf(PathStep step) => step.IsOfThePiece ? "score" : "step-" + step.Id;

    private void Today()
    {
        if (lesson.Plan.Days is [var day, ..])
        {
            Add(new BookletHeading(WorkbenchMessages.Today, 18) { NewPage = true, Mark = "today" });
            Add(new BookletText(WorkbenchMessages.TodayIntro(day), 10.5));
            Add(new BookletSpace(2));
            Add(new BookletRow(WorkbenchMessages.TaskHeads(lesson.Beat), TaskWidths) { Bold = true, Ruled = true });
            foreach (var task in day.Tasks)
            {
                Add(Row(task));
            }
            Add(new BookletSpace(3));
            Add(new BookletText(lesson.Cautions[^2].Sentence, 10) { Italic = true });
        }
    }

    private BookletRow Row(PlanTask task)
    {
        var step = lesson.Steps.FirstOrDefault(s => s.Id == task.Item);
        var drill = lesson.Drills.FirstOrDefault(d => d.Id == task.Item);
        var mark =
            step is not null ? PlaceOf(step)
            : drill is not null ? "drill-" + drill.Id
            : "";
        return new(
            [
                WorkbenchMessages.MinutesOf(task),
                WorkbenchMessages.TaskName(task, step?.Name ?? drill?.Name),
                task.BeatsPerMinute is { } beats ? WorkbenchMessages.Beats(beats) : "",
                task.Words,
                mark.Length > 0 ? "@" + mark : "",
            ],
            TaskWidths
        )
        {
            Ruled = true,
        };
    }

    private void Steps()
    {
        Add(new BookletHeading(WorkbenchMessages.ThePath, 18) { NewPage = true, Mark = "path" });
        Add(new BookletText(WorkbenchMessages.StepsIntro(lesson)));
        Add(new BookletText(WorkbenchMessages.CleanMeans(lesson.Steps[^1].Test)));
        Add(new BookletSpace(2));
        Add(new BookletRow(WorkbenchMessages.StepHeads, StepWidths) { Bold = true, Ruled = true });
        foreach (var step in lesson.Steps)
        {
            Add(
                new BookletRow(
                    [
                        step.Name,
                        step.Aim,
                        WorkbenchMessages.TempoOf(step.Tempo),
                        WorkbenchMessages.EffortOf(step.Effort),
                        "@" + PlaceOf(step),
                    ],
                    StepWidths
                )
                {
                    Ruled = true,
                }
            );
        }
        Add(new BookletSpace(4));
        foreach (var step in lesson.Steps.Where(s => !s.IsOfThePiece))
        {
            if (IsShort(step))
            {
                Strip(step);
            }
            else
            {
                Music("step-" + step.Id, Engraved(step.Score, new PageWish(paper)));
            }
        }
    }

    // Two of them or more fit on a page.
    private static bool IsShort(PathStep step) =>
        step.Score.Bars.Count <= (step.Hands == StepHands.Together ? ShortTogether : ShortAlone);

    private void Strip(PathStep step)
    {
        if (Engraved(step.Score, new PageWish(paper) { Strip = true }) is { } music)
        {
            Add(
                new BookletGroup([
                    new BookletHeading(step.Name, 12.5),
                    new BookletText(WorkbenchMessages.StepHead(step), 10),
                    new BookletStrip(Encoding.UTF8.GetString(music.Svg[0])),
                    new BookletSpace(4),
                ])
                {
                    Mark = "step-" + step.Id,
                }
            );
        }
    }

    private void Drills()
    {
        if (lesson.Drills.Count == 0)
        {
            return;
        }
        Add(new BookletHeading(WorkbenchMessages.TheDrills, 18) { NewPage = true, Mark = "drills" });
        foreach (var drill in lesson.Drills)
        {
            if (Engraved(drill.Score, new PageWish(paper) { Strip = true }) is not { } music)
            {
                return;
            }
            Add(
                new BookletGroup([
                    new BookletHeading(drill.Name, 12.5),
                    new BookletText(WorkbenchMessages.DrillHead(drill, LessonMessages.BeatName(lesson.Beat)), 10),
                    .. drill.How.Select((how, i) => new BookletText(how, 10) { Label = Number(i + 1) }),
                    new BookletStrip(Encoding.UTF8.GetString(music.Svg[0])),
                    new BookletSpace(3),
                ])
                {
                    Mark = "drill-" + drill.Id,
                }
            );
        }
    }

    private void Days()
    {
        Add(new BookletHeading(WorkbenchMessages.ThePlan, 18) { NewPage = true, Mark = "days" });
        Add(new BookletText(WorkbenchMessages.DaysIntro(lesson.Plan)));
        foreach (var day in lesson.Plan.Days)
        {
            Add(
                new BookletGroup([
                    new BookletHeading(WorkbenchMessages.DayHead(day), 11.5),
                    .. day
                        .Tasks.Where(t => t.Item is not null)
                        .GroupBy(t => (t.Kind, t.Item))
                        .Select(item => Row([.. item])),
                    new BookletSpace(2),
                ])
            );
        }
    }

    private BookletRow Row(PlanTask[] slices)
    {
        var beats = slices.Select(t => t.BeatsPerMinute!.Value);
        return new(
            [
                WorkbenchMessages.SlicesOf(slices),
                WorkbenchMessages.TaskName(slices[0], NameOf(slices[0].Item)),
                WorkbenchMessages.TempoOf(new(beats.Min(), beats.Max())),
            ],
            [0.16, 0.66, 0.18]
        );
    }

    private string? NameOf(string? id) =>
        lesson.Steps.FirstOrDefault(s => s.Id == id)?.Name ?? lesson.Drills.FirstOrDefault(d => d.Id == id)?.Name;

    private void Reasons()
    {
        Add(new BookletHeading(WorkbenchMessages.TheReasons, 18) { NewPage = true, Mark = "reasons" });
        Section(WorkbenchMessages.Health, lesson.Cautions.Select(c => c.Sentence));
        Add(new BookletText(WorkbenchMessages.After(lesson.Cautions[0].Source), 9.5) { Italic = true });
        Section(WorkbenchMessages.Remarked, lesson.Remarks);
        Section(WorkbenchMessages.HeardHead, lesson.Heard);
        Section(WorkbenchMessages.Skipped, lesson.Skipped.Select(WorkbenchMessages.SkippedStep));
        Section(WorkbenchMessages.WhyDrills, lesson.Drills.Select(d => $"{d.Name}: {d.Why}"));
        Section(WorkbenchMessages.LimitsHead, lesson.Plan.Limits.Select(WorkbenchMessages.Limit));
    }

    private void Section(string head, IEnumerable<string> sentences)
    {
        var all = sentences.ToList();
        if (all.Count > 0)
        {
            Add(new BookletSpace(2));
            Add(new BookletHeading(head, 12.5));
            _parts.AddRange(all.Select(s => new BookletText(s) { Label = "·" }));
        }
    }

    private void Music(string mark, EngravedPages? pages)
    {
        if (pages is not null)
        {
            Add(new BookletPages(pages.Svg.Select(Encoding.UTF8.GetString).ToValueList()) { Mark = mark });
        }
    }

    private EngravedPages? Engraved(Score score, PageWish wish)
    {
        var reading = tools.Engrave(tools.ToMusicXml(score), wish, cancellation);
        if (reading.Value is null && _problem.Length == 0)
        {
            _problem = WorkbenchMessages.NotEngraved(reading.Diagnostics is [var fault, ..] ? fault.Message : "");
        }
        return reading.Value;
    }

    private static string Number(int number) => FormattableString.Invariant($"{number}.");

    private void Add(BookletPart part) => _parts.Add(part);
}
