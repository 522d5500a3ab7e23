using Stridewright.Music;
using Stridewright.Practice.Lessons;

namespace Stridewright.Practice.Tests.Lessons;

/// <summary>The plan never breaks its own limits, whatever the piece and the time.</summary>
public sealed class PlanTests
{
    private const int Seed = 20261127,
        Plans = 400;

    [Fact]
    public void No_plan_breaks_a_limit()
    {
        var random = new Random(Seed);
        var names = LessonPieces.Names.ToList();
        for (var n = 0; n < Plans; n++)
        {
            var (_, made) = LessonPieces.All[random.Next(LessonPieces.All.Count)];
            var wish = new LessonWish
            {
                Days = random.Next(LessonWish.FewestDays, LessonWish.MostDays + 1),
                Minutes = random.Next(LessonWish.FewestMinutes, LessonWish.MostMinutes + 1),
            };
            var plan = Planned(made, wish);
            Check(plan, made, wish, $"plan {n}: {made.Title}, {wish.Days} days of {wish.Minutes} minutes");
        }
    }

    [Fact]
    public void In_time_every_plan_comes_to_the_piece()
    {
        foreach (var (name, made) in LessonPieces.All)
        {
            var plan = Planned(made, new() { Days = LessonWish.MostDays, Minutes = 45 });
            Assert.True(
                plan.Left.Count == 0,
                $"{name}: {string.Join(", ", plan.Left)} left after {plan.Days.Count} days"
            );
        }
    }

    [Fact]
    public void What_comes_after_a_step_waits_until_its_test_has_had_time_for_its_takes()
    {
        foreach (var (name, made) in LessonPieces.All)
        {
            var plan = Planned(made, new() { Days = 20, Minutes = 45 });
            foreach (var step in made.Steps)
            {
                var later = made.Steps.Where(s => s.After.Contains(step.Id)).Select(s => s.Id).ToHashSet();
                if (plan.Days.FirstOrDefault(d => d.Tasks.Any(t => later.Contains(t.Item!))) is not { } begins)
                {
                    continue;
                }
                var given = plan
                    .Days.Where(d => d.Number < begins.Number)
                    .SelectMany(d => d.Tasks)
                    .Where(t => t.Kind == TaskKind.Test && t.Item == step.Id)
                    .Sum(t => t.Minutes);
                // The step prints the tempo of its test.
                var printed = step.Score.Bars.SelectMany(b => b.Directions).First(d => d.QuartersPerMinute is not null);
                var quarters = Timeline.PlayOrder(step.Score).Sum(i => step.Score.Bars[i].Length.ToQuarters());
                var needed = step.Test.CleanTakes * quarters / printed.QuartersPerMinute!.Value;
                Assert.True(given >= needed - 0.01, $"{name}, {step.Id}: {given} minutes of {needed:0.0}");
            }
        }
    }

    [Fact]
    public void What_is_learned_comes_again_the_next_day()
    {
        foreach (var (name, made) in LessonPieces.All)
        {
            var plan = Planned(made, new() { Days = 20, Minutes = 45 });
            foreach (var (day, next) in plan.Days.Zip(plan.Days.Skip(1)))
            {
                foreach (var test in day.Tasks.Where(t => t.Kind == TaskKind.Test))
                {
                    var after = made.Steps.Where(s => s.After.Contains(test.Item!)).Select(s => s.Id);
                    Assert.True(
                        next.Tasks.Any(t => t.Item == test.Item || after.Contains(t.Item)),
                        $"{name}, day {next.Number}: {test.Item} does not come again"
                    );
                }
            }
        }
    }

    // Common practice: a learner wants to hear both hands before the first week is out.
    [Fact]
    public void In_a_week_of_half_hours_both_hands_are_tested_together()
    {
        foreach (var name in LessonPieces.Names)
        {
            var made = LessonPieces.OfSetting(name, new LessonWish());
            var first = made.Steps.First(s => s.Hands == StepHands.Together).Id;
            var plan = Planned(made, new() { Days = 7, Minutes = 30 });
            Assert.True(
                plan.Days.Any(d => d.Tasks.Any(t => t.Kind == TaskKind.Test && t.Item == first)),
                $"{name}: {first} is not tested"
            );
        }
    }

    private static Plan Planned(Lesson made, LessonWish wish) =>
        new Planning(made.Steps, made.Drills, Standing.Of([], [], Pace.Of(made.Goal)), wish).Of();

    private static void Check(Plan plan, Lesson lesson, LessonWish wish, string where)
    {
        Assert.InRange(plan.Days.Count, 1, wish.Days);
        var (up, done) = (0, new HashSet<string>());
        foreach (var day in plan.Days)
        {
            var at = $"{where}, day {day.Number}";
            Assert.True(day.Minutes <= wish.Minutes, $"{at} has {day.Minutes} minutes");
            Assert.All(day.Tasks, t => Assert.True(t.Minutes > 0, at));
            Breaks(day, at);
            Slices(day, at);
            HardInTheMiddle(day, lesson, at);
            DrillsInTheirPlace(day, lesson, done, at);
            Tempi(day, lesson, at);
            // Steps wait for those they are made of.
            foreach (var task in day.Tasks.Where(t => t.Kind is TaskKind.Step or TaskKind.Test))
            {
                Assert.All(
                    lesson.Steps.First(s => s.Id == task.Item).After,
                    id => Assert.True(done.Contains(id), $"{at}: {task.Item}")
                );
            }
            done.UnionWith(day.Tasks.Where(t => t.Kind == TaskKind.Test).Select(t => t.Item!));
        }
        // BAPAM: at most ten minutes more than the day before, three days up, then hold.
        foreach (var (first, second) in plan.Days.Zip(plan.Days.Skip(1)))
        {
            Assert.True(second.Minutes <= first.Minutes + 10, $"{where}, day {second.Number}");
            up = second.Minutes > first.Minutes ? up + 1 : 0;
            Assert.True(up <= 3, $"{where}, day {second.Number} is the {up}th with more");
        }
        Assert.True(plan.Days[0].Minutes <= 30, where);
    }

    // BAPAM: five minutes in every half-hour.
    private static void Breaks(Day day, string at)
    {
        var playing = 0;
        foreach (var task in day.Tasks)
        {
            playing = task.Kind == TaskKind.Break ? 0 : playing + task.Minutes;
            Assert.True(playing <= 30, $"{at}: {playing} minutes without a break");
            Assert.True(task.Kind != TaskKind.Break || task.Minutes == 5, at);
        }
        Assert.True(day.Tasks[0].Kind != TaskKind.Break && day.Tasks[^1].Kind != TaskKind.Break, at);
    }

    private static void Slices(Day day, string at)
    {
        var playing = day.Tasks.Where(t => t.Kind != TaskKind.Break).ToList();
        var work = playing.Where(t => t.Kind is not (TaskKind.WarmUp or TaskKind.PlayThrough)).ToList();
        var items = work.Select(t => t.Item).Distinct().Count();
        foreach (var (first, second) in work.Zip(work.Skip(1)))
        {
            Assert.True(items == 1 || first.Item != second.Item, $"{at}: {first.Item} twice running");
        }
        Assert.All(work.GroupBy(t => t.Item), g => Assert.True(g.Sum(t => t.Minutes) <= 15, $"{at}: {g.Key}"));
        Assert.All(work, t => Assert.True(t.Minutes <= 5, at));
    }

    // Common practice: nobody drills the beat or the chords of bars whose notes are a step ahead, nor drills without
    // learning something.
    private static void DrillsInTheirPlace(Day day, Lesson lesson, HashSet<string> done, string at)
    {
        Assert.Contains(day.Tasks, t => t.Kind is TaskKind.Step or TaskKind.Test);
        var drilled = day.Tasks.Where(t => t.Kind == TaskKind.Drill).Select(t => t.Item).ToHashSet();
        foreach (var drill in lesson.Drills.Where(d => drilled.Contains(d.Id)))
        {
            var step = lesson.Steps.First(s => s.Id == drill.Step);
            if (drill.Kind is not (DrillKind.Rhythm or DrillKind.Leap or DrillKind.ChordChange))
            {
                Assert.True(IsOpen(step), $"{at}: {drill.Id} is ahead of {step.Id}");
            }
        }

        // Done, or what comes before it is.
        bool IsOpen(PathStep step) => step.After.All(done.Contains);
    }

    private static void HardInTheMiddle(Day day, Lesson lesson, string at)
    {
        var playing = day.Tasks.Where(t => t.Kind != TaskKind.Break).ToList();
        var work = playing.Where(t => t.Kind is not (TaskKind.WarmUp or TaskKind.PlayThrough)).ToList();
        double Effort(string? id) =>
            lesson.Steps.FirstOrDefault(s => s.Id == id)?.Effort ?? lesson.Drills.First(d => d.Id == id).Effort;
        if (work.Select(t => t.Item).Distinct().Count() < 2)
        {
            return;
        }
        var hardest = work.Max(t => Effort(t.Item));
        double whole = playing.Sum(t => t.Minutes);
        var clock = 0.0;
        foreach (var task in playing)
        {
            // Two items may be as hard as each other; then one of them may stand anywhere.
            if (
                work.Contains(task)
                && Effort(task.Item) >= hardest
                && work.Where(w => Effort(w.Item) >= hardest).Select(w => w.Item).Distinct().Count() == 1
            )
            {
                Assert.True(
                    clock / whole >= 0.2 - 1e-9 && (clock + task.Minutes) / whole <= 0.8 + 1e-9,
                    $"{at}: {task.Item} at {clock} of {whole}"
                );
            }
            clock += task.Minutes;
        }
    }

    private static void Tempi(Day day, Lesson lesson, string at)
    {
        foreach (
            var item in day
                .Tasks.Where(t => t.Kind is TaskKind.Step or TaskKind.Test or TaskKind.Drill)
                .GroupBy(t => t.Item)
        )
        {
            var range =
                lesson.Steps.FirstOrDefault(s => s.Id == item.Key)?.Tempo
                ?? lesson.Drills.First(d => d.Id == item.Key).Tempo;
            var ladder = range.Ladder.ToList();
            var rungs = item.Select(t => ladder.IndexOf(t.BeatsPerMinute!.Value)).ToList();
            Assert.All(rungs, r => Assert.True(r >= 0, $"{at}: {item.Key} off its ladder"));
            Assert.Equal(rungs.Order(), rungs);
            Assert.True(rungs[^1] - rungs[0] <= 5, $"{at}: {item.Key} rises {rungs[^1] - rungs[0]} rungs");
        }
    }
}
