using System.Text.Json;
using Stridewright.Testing;
using Stridewright.Workbench;
using Stridewright.Workbench.Reports;
using static Stridewright.Cli.Tests.RealProgram;

namespace Stridewright.Cli.Tests;

public sealed class LessonCommandTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("stridewright-lesson-");

    private static string Sample => Path.Combine(Corpus.CheckoutRoot, "samples", "last-ferry-but-one.abc");

    public void Dispose() => _folder.Delete(recursive: true);

    private string At(string name) => Path.Combine(_folder.FullName, name);

    [Fact]
    public void What_is_asked_reaches_the_request()
    {
        var useCases = new FakeUseCases();
        var run = CliRun.Of(
            useCases,
            [
                .. "lesson a.abc --player ada.player --level 3 --days 14 --minutes 45 --takes x.mid y.mid".Split(' '),
                .. "--out lessons --format musicxml,pdf --paper letter --replace".Split(' '),
            ]
        );
        Assert.Equal(0, run.ExitCode);
        Assert.Equal(
            new LessonRequest
            {
                Piece = "a.abc",
                Player = "ada.player",
                Level = 3,
                Days = 14,
                Minutes = 45,
                Takes = ["x.mid", "y.mid"],
                OutputFolder = "lessons",
                Formats = [OutputFormat.MusicXml, OutputFormat.Pdf],
                Paper = Paper.Letter,
                Replace = true,
            },
            useCases.AskedForLesson
        );
    }

    [Theory]
    [InlineData(LessonOutcome.Written, 0)]
    [InlineData(LessonOutcome.Refused, 1)]
    [InlineData(LessonOutcome.Unreadable, 2)]
    [InlineData(LessonOutcome.BadWish, 2)]
    [InlineData(LessonOutcome.Cancelled, 130)]
    public void The_exit_code_tells_what_came_of_it(LessonOutcome outcome, int code)
    {
        var answer = new LessonReport { Outcome = outcome, File = "a" };
        Assert.Equal(code, CliRun.Of(new FakeUseCases { LessonAnswer = answer }, "lesson", "a").ExitCode);
    }

    [Fact]
    public void A_tune_gives_a_booklet_a_lesson_file_and_every_step_and_drill_and_a_take_of_a_step_is_known_again()
    {
        var (code, output, error) = Run("lesson", Sample, "--format", "musicxml,midi", "--out", At("a"), "--json");
        Assert.Equal((0, ""), (code, error));
        var lesson = JsonDocument.Parse(output).RootElement.GetProperty("lesson");
        var file = JsonDocument.Parse(File.ReadAllBytes(At("a/last-ferry-but-one.lesson.json"))).RootElement;
        Assert.True(JsonElement.DeepEquals(lesson, file));
        Assert.Equal((1, "lesson"), (file.GetProperty("version").GetInt32(), file.GetProperty("kind").GetString()));
        Assert.True(File.Exists(At("a/last-ferry-but-one.lesson.pdf")) || !OperatingSystem.IsLinux());
        var scores = file.GetProperty("steps").EnumerateArray().Concat(file.GetProperty("drills").EnumerateArray());
        Assert.All(scores, s => Assert.True(File.Exists(At("a/" + s.GetProperty("file").GetString()))));
        // Every task is of a step or drill of the lesson.
        var ids = scores.Select(s => s.GetProperty("id").GetString()).ToHashSet();
        var tasks = file.GetProperty("days").EnumerateArray().SelectMany(d => d.GetProperty("tasks").EnumerateArray());
        Assert.All(tasks, t => Assert.True(t.GetProperty("item").GetString() is not { } id || ids.Contains(id)));

        var last = file.GetProperty("steps").EnumerateArray().Last(s => s.GetProperty("hands").GetString() == "left");
        var take = At($"a/last-ferry-but-one.{last.GetProperty("id").GetString()}.mid");
        (code, output, error) = Run("lesson", Sample, "--takes", take, "--out", At("b"), "--json");
        Assert.Equal((0, ""), (code, error));
        lesson = JsonDocument.Parse(output).RootElement.GetProperty("lesson");
        Assert.Contains("100 % right", lesson.GetProperty("heard")[0].GetString(), StringComparison.Ordinal);
        Assert.All(
            lesson.GetProperty("skipped").EnumerateArray(),
            s => Assert.StartsWith("left-", s.GetProperty("id").GetString(), StringComparison.Ordinal)
        );
        Assert.NotEmpty(lesson.GetProperty("skipped").EnumerateArray());
    }

    [Fact]
    public void A_score_of_two_staves_is_learned_as_it_stands_and_the_same_lesson_is_the_same_bytes()
    {
        Run("arrange", Sample, "--format", "musicxml", "--out", At(""));
        var score = At("last-ferry-but-one.musicxml");
        var (code, first, error) = Run("lesson", score, "--out", At("a"));
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("left-1", first, StringComparison.Ordinal);
        var (again, second, _) = Run("lesson", score, "--out", At("a"));
        Assert.Equal(0, again);
        Assert.DoesNotContain("\n  written", second, StringComparison.Ordinal);
        Assert.Contains("\n  unchanged", second, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_made_a_lesson_of_is_told_in_a_sentence()
    {
        Run("arrange", Sample, "--format", "musicxml,midi", "--out", At(""));
        File.WriteAllText(At("broken.musicxml"), "<score-partwise><part>");
        File.WriteAllText(At("empty.abc"), "");
        File.WriteAllText(At("small.player"), "player Small\nspan 150\n");
        var score = At("last-ferry-but-one.musicxml");
        (string[] Args, int Code, string Says)[] cases =
        [
            ([At("none.abc")], 2, "there is no such file"),
            ([At("broken.musicxml")], 2, "broken.musicxml:line 1"),
            ([At("empty.abc")], 2, "empty"),
            ([Sample, "--minutes", "500"], 2, "--minutes: 500 is not within 10 to 120"),
            ([Sample, "--days", "0"], 2, "--days: 0 is not within 1 to 60"),
            ([Sample, "--level", "9"], 2, "--level:"),
            ([Sample, "--takes", score], 2, "this is no MIDI file"),
            ([Sample, "--player", At("none.player")], 2, "--player:"),
        ];
        foreach (var (args, expected, says) in cases)
        {
            var (code, _, error) = Run(["lesson", .. args, "--out", At("x")]);
            Assert.True(
                code == expected && error.Contains(says, StringComparison.Ordinal),
                $"{string.Join(' ', args)}: {code} {error}"
            );
            Assert.Single(error.TrimEnd().Split('\n'));
        }
        Assert.False(Directory.Exists(At("x")));
    }
}
