using Stridewright.Music;
using Stridewright.Practice.Lessons;
using Stridewright.Practice.Listening;

namespace Stridewright.Practice.Tests.Lessons;

/// <summary>A lesson follows what is known of the player.</summary>
public sealed class TakesInLessonsTests
{
    private const string Piece = "last-ferry-but-one";

    [Fact]
    public void A_clean_take_of_a_step_leaves_out_what_leads_to_it()
    {
        var made = LessonPieces.OfSetting(Piece, new());
        var step = made.Steps.Last(s => s.Hands == StepHands.Left);
        var again = LessonPieces.OfSetting(
            Piece,
            new() { Takes = [Played("monday", step, step.Test.BeatsPerMinute + 2, made)] }
        );

        var skipped = again.Skipped.Select(s => s.Step.Id).ToList();
        Assert.Equal(made.Steps.Where(s => s.Hands == StepHands.Left && s.Id != step.Id).Select(s => s.Id), skipped);
        Assert.All(again.Skipped, s => Assert.Contains("monday", s.Why, StringComparison.Ordinal));
        Assert.Contains(again.Steps, s => s.Id == step.Id);
        Assert.Contains("100 % right", again.Heard[0], StringComparison.Ordinal);
        // It is taken up at its test.
        var task = again.Plan.Days[0].Tasks.First(t => t.Item == step.Id && t.Kind == TaskKind.Test);
        Assert.Equal(step.Test.BeatsPerMinute, task.BeatsPerMinute);
    }

    [Fact]
    public void Three_clean_takes_in_a_row_pass_the_test()
    {
        var made = LessonPieces.OfSetting(Piece, new());
        var step = made.Steps.First(s => s.Hands == StepHands.Right);
        NamedTake Take(string name, double beats) => Played(name, step, beats, made);
        var fast = step.Test.BeatsPerMinute + 2;
        var passed = LessonPieces.OfSetting(
            Piece,
            new() { Takes = [Take("a", fast), Take("b", fast), Take("c", fast)] }
        );
        Assert.Contains(passed.Skipped, s => s.Step.Id == step.Id);
        // A slow one between them breaks the row.
        var broken = LessonPieces.OfSetting(
            Piece,
            new() { Takes = [Take("a", fast), Take("b", fast / 2), Take("c", fast)] }
        );
        Assert.Contains(broken.Steps, s => s.Id == step.Id);
    }

    [Fact]
    public void A_slow_take_sets_the_tempo_at_which_the_plan_begins()
    {
        var made = LessonPieces.OfSetting(Piece, new());
        var step = made.Steps.First(s => s.Hands == StepHands.Left);
        var beats = Math.Round((step.Tempo.From + step.Test.BeatsPerMinute) / 2);
        var again = LessonPieces.OfSetting(Piece, new() { Takes = [Played("slow", step, beats, made)] });
        double First(Lesson lesson) =>
            lesson.Plan.Days[0].Tasks.First(t => t.Item == step.Id && t.Kind == TaskKind.Step).BeatsPerMinute!.Value;
        Assert.True(First(again) > First(made), $"{First(again)} after {First(made)}");
        Assert.True(First(again) <= beats + 1, $"{First(again)}, shown {beats}");
    }

    [Fact]
    public void What_goes_wrong_in_a_take_comes_first_among_the_drills()
    {
        var made = LessonPieces.OfSetting(Piece, new());
        var last = made.Steps[^1];
        var score = ExpectedScore.Of(ScoreNotes.Of(last.Score));
        // The left hand stumbles in one bar: its lowest notes a third too high.
        var bar = made.Drills.First(d => d.Kind == DrillKind.Leap).Bars[0];
        var notes = score.Notes.Select(n =>
        {
            var isWrong = n.Hand == Hand.Left && score.Bars[n.Bar].Written == bar && n.Key < 50;
            var onset = 1 + n.Beats * Seconds(made, last.Test.BeatsPerMinute);
            return new PlayedNote(onset, onset + 0.1, n.Key + (isWrong ? 4 : 0), 64);
        });
        var take = new Take(notes.OrderBy(n => n.Onset).ThenBy(n => n.Key).ToValueList());
        var again = LessonPieces.OfSetting(Piece, new() { Takes = [new("tuesday", take)] });

        Assert.Contains(bar, again.Drills[0].Bars);
        Assert.NotEmpty(again.Drills[0].Heard);
        Assert.Contains("takes show", again.Drills[0].Why, StringComparison.Ordinal);
        Assert.Contains(again.Plan.Days[0].Tasks, t => t.Item == again.Drills[0].Id);
    }

    [Fact]
    public void A_take_of_another_piece_changes_nothing()
    {
        var made = LessonPieces.OfSetting(Piece, new());
        var other = LessonPieces.OfSetting("fog-at-the-landing", new());
        var again = LessonPieces.OfSetting(Piece, new() { Takes = [Played("other", other.Steps[^1], 120, other)] });
        Assert.Equal(made.Steps, again.Steps);
        Assert.Equal(made.Plan, again.Plan);
        Assert.Contains("no step of this piece", again.Heard[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Hands_that_were_measured_to_land_such_leaps_need_not_begin_without_them()
    {
        var made = LessonPieces.OfSetting(Piece, new());
        Assert.Equal(StepKind.LeftInPlace, made.Steps.First(s => s.Hands == StepHands.Left).Kind);
        var sure = LessonPieces.OfSetting(Piece, new() { Hands = new() { LeapBitsPerSecond = 30 } });
        Assert.Contains(sure.Skipped, s => s.Step.Kind == StepKind.LeftInPlace);
    }

    [Fact]
    public void The_same_piece_hands_time_and_takes_give_the_same_lesson()
    {
        var wish = new LessonWish { Days = 9, Minutes = 40 };
        Assert.Equal(LessonPieces.OfSetting(Piece, wish), LessonPieces.OfSetting(Piece, wish));
        Assert.Equal(LessonPieces.OfScore(Piece, wish), LessonPieces.OfScore(Piece, wish));
    }

    [Fact]
    public void A_score_that_hands_cannot_hold_is_refused_with_its_place()
    {
        var score = LessonPieces.OfScore(Piece, new()).Goal;
        var refused = LessonMaker.Of(score, new() { Hands = new() { SpanMm = 150 } });
        Assert.Null(refused.Lesson);
        Assert.Contains("bar ", refused.Refusal!.Message, StringComparison.Ordinal);
    }

    private static double Seconds(Lesson lesson, double beats) => 60 / (beats * lesson.Beat.Length.ToQuarters());

    // Every note of a step where it is written, at a tempo in beats.
    private static NamedTake Played(string name, PathStep step, double beats, Lesson lesson)
    {
        var score = ExpectedScore.Of(ScoreNotes.Of(step.Score));
        return new(name, Takes.Played.Take(score, n => 1 + n.Beats * Seconds(lesson, beats)));
    }
}
