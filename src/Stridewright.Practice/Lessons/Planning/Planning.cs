using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>
/// Forecasts the days: each hand's step at hand and the one together side by side, drills that belong to them, and what is
/// done again after one, three and seven days. Every tempo climbs its ladder as if all went well; where it does not, the same
/// day is played again, and takes that are heard set the plan right.
/// </summary>
internal sealed class Planning
{
    private const int FirstDay = 30,
        RungsASlice = 3,
        FewDrills = 20,
        SomeDrills = 45,
        AllHands = 3;
    private static readonly int[] Returns = [(int)LessonLimits.Again.Value, 3, 7];

    private readonly LessonWish _wish;
    private readonly List<PlanItem> _steps;
    private readonly List<PlanItem> _drills;

    public Planning(IReadOnlyList<PathStep> steps, IReadOnlyList<Drill> drills, Standing standing, LessonWish wish)
    {
        _wish = wish;
        _steps = [.. steps.Select(s => new PlanItem(s, standing.BeginAt(s)))];
        _drills = [.. drills.Select(d => new PlanItem(d))];
    }

    public Plan Of()
    {
        var days = new List<Day>();
        var (before, up) = (0, 0);
        for (var number = 1; number <= _wish.Days; number++)
        {
            var day = Day(number, Most(before, up));
            if (day.Tasks.Count > 0)
            {
                days.Add(day);
            }
            up = before > 0 && day.Minutes > before ? up + 1 : 0;
            before = day.Minutes;
            if (_steps.TrueForAll(s => s.DoneOn is not null))
            {
                break;
            }
        }
        return new()
        {
            Days = days.ToValueList(),
            Limits = LessonLimits.OfPlan.ToValueList(),
            Left = _steps.Where(s => s.DoneOn is null).Select(s => s.Id).ToValueList(),
        };
    }

    // How much the player has done so far is not known: the first day has half an hour at most; then it grows by no more than
    // ten minutes a day, on three days running, and holds for one.
    private int Most(int before, int up) =>
        before == 0 ? Math.Min(_wish.Minutes, FirstDay)
        : up == (int)LessonLimits.DaysUp.Value ? Math.Min(_wish.Minutes, before)
        : Math.Min(_wish.Minutes, before + (int)LessonLimits.MoreADay.Value);

    private Day Day(int number, int minutes)
    {
        var current = Current().ToList();
        var items = current.Concat(Drills(current, minutes)).Concat(Reviews(number, current)).ToList();
        if (items.Count == 0)
        {
            return new(number, []);
        }
        var easy = _steps.FindLast(s => s.DoneOn is not null) ?? current.MinBy(s => s.Effort)!;
        var slots = Session.Fill(items, minutes);
        foreach (var item in items)
        {
            item.BeginDay();
        }
        var tasks = new List<PlanTask>();
        foreach (var slot in slots)
        {
            if (slot.IsAfterBreak)
            {
                tasks.Add(new(TaskKind.Break, (int)LessonLimits.Rest.Value, null, null, LessonMessages.BreakWords));
            }
            tasks.Add(Task(slot, easy, number, current));
        }
        foreach (var item in items)
        {
            item.EndDay(number);
        }
        return new(number, tasks.ToValueList());
    }

    private PlanTask Task(SessionSlot slot, PlanItem easy, int day, List<PlanItem> current)
    {
        if (slot.Item is not { } item)
        {
            var kind = slot.IsFirst ? TaskKind.WarmUp : TaskKind.PlayThrough;
            var words = slot.IsFirst ? LessonMessages.WarmUpWords : LessonMessages.PlayThroughWords;
            return new(kind, slot.Minutes, easy.Id, easy.Slowest, words);
        }
        if (item.DoneOn is not null)
        {
            var words = LessonMessages.ReviewWords(item.TakeMinutes, slot.Minutes);
            return new(TaskKind.Review, slot.Minutes, item.Id, item.Tempo, words);
        }
        var (task, beats) = item.Visit(RungsASlice, slot.Minutes);
        return task switch
        {
            TaskKind.Test => new(
                task,
                slot.Minutes,
                item.Id,
                beats,
                LessonMessages.TestWords(item.Test!, item.TakeMinutes, slot.Minutes)
            ),
            TaskKind.Drill => new(
                task,
                slot.Minutes,
                item.Id,
                beats,
                LessonMessages.DrillWords(item.Drill!.Kind, IsAhead(item.Drill, current))
            ),
            _ => new(task, slot.Minutes, item.Id, beats, LessonMessages.StepWords(day)),
        };
    }

    // The first step of each hand, and of both together, whose way is free.
    private IEnumerable<PlanItem> Current() =>
        Enum.GetValues<StepHands>()
            .Select(hands =>
                _steps.Find(s => s.Step!.Hands == hands && s.DoneOn is null) is { } next && IsFree(next) ? next : null
            )
            .OfType<PlanItem>();

    // Its notes as written are not yet learned, nor being learned.
    private bool IsAhead(Drill drill, List<PlanItem> current) =>
        !current.Exists(c => c.Id == drill.Step) && !IsDone(drill.Step);

    private bool IsFree(PlanItem step) => step.Step!.After.All(IsDone);

    // What is no step of the plan the player does not need.
    private bool IsDone(string step) => _steps.Find(s => s.Id == step) is not { DoneOn: null };

    // What takes asked for; rhythms, which are tapped first; leaps and changes of chord, which begin small, from the step before
    // theirs; the rest with its own step.
    private IEnumerable<PlanItem> Drills(List<PlanItem> current, int minutes)
    {
        var open = current.Concat(_steps.Where(s => s.DoneOn is not null)).Select(s => s.Id).ToHashSet();
        var next = current
            .Select(c =>
                _steps.Where(s => s.Step!.Hands == c.Step!.Hands).SkipWhile(s => s != c).ElementAtOrDefault(1)?.Id
            )
            .ToHashSet();
        return _drills
            .Where(d => d.DoneOn is null)
            .Where(d =>
                d.Drill!.Heard.Count > 0
                || d.Drill.Kind == DrillKind.Rhythm
                || open.Contains(d.Drill.Step)
                || (d.Drill.Kind is DrillKind.Leap or DrillKind.ChordChange && next.Contains(d.Drill.Step))
            )
            .Take(
                minutes <= FewDrills ? 1
                : minutes > SomeDrills ? 3
                // With both hands and each of them to learn there is time for one.
                : current.Count < AllHands ? 2
                : 1
            );
    }

    // Of each hand the last step that is done, some days after.
    private IEnumerable<PlanItem> Reviews(int day, List<PlanItem> current) =>
        Enum.GetValues<StepHands>()
            .Select(hands => _steps.FindLast(s => s.Step!.Hands == hands && s.DoneOn is not null))
            .OfType<PlanItem>()
            .Where(s => Returns.Contains(day - s.DoneOn!.Value) && !current.Contains(s));
}
