using Stridewright.Practice.Lessons;
using Stridewright.Testing;

namespace Stridewright.Workbench.Tests.Pocket;

public sealed class LessonPocketTests
{
    [Fact]
    public void Todays_list_has_every_task_with_its_score_and_tempo_and_no_score_that_nobody_asks_for()
    {
        var lesson = Lesson();
        var wish = LessonPocket.Of(lesson);
        var today = lesson.Plan.Days[0].Tasks;
        Assert.Equal(today.Count, wish.Today.Count);
        Assert.Same(lesson.Goal, wish.Parts[0].Score);
        foreach (var (task, told) in today.Zip(wish.Today))
        {
            Assert.EndsWith(task.Words, told.Text, StringComparison.Ordinal);
            Assert.Equal(task.Minutes, told.Minutes);
            // The piece is in 2/4: its beat is a quarter.
            Assert.Equal(task.BeatsPerMinute, told.QuartersPerMinute);
            var step = lesson.Steps.FirstOrDefault(s => s.Id == task.Item);
            var drill = lesson.Drills.FirstOrDefault(d => d.Id == task.Item);
            Assert.Equal(task.Item is null, told.Part is null);
            if (told.Part is { } part)
            {
                Assert.Same(step?.Score ?? drill!.Score, wish.Parts[part].Score);
            }
        }
        Assert.Equal(
            Enumerable.Range(1, wish.Parts.Count - 1),
            wish.Today.Select(t => t.Part).OfType<int>().Where(p => p > 0).Distinct().Order()
        );
    }

    private static Lesson Lesson()
    {
        using var tools = new StandardTools();
        var abc = File.ReadAllBytes(Path.Combine(Corpus.CheckoutRoot, "samples", "ferry-bell.abc"));
        using var stream = new MemoryStream(abc);
        var tune = tools.ReadAbc(stream, null).Value![0];
        var setting = tools.Arrange(tune, new(), CancellationToken.None).Arrangement!;
        return LessonMaker
            .Of(tune, setting, new LessonWish { Player = "Ada", Minutes = 40 }, CancellationToken.None)
            .Lesson!;
    }
}
