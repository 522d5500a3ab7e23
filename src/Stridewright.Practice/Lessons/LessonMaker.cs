using Stridewright.Arranging;
using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>Makes lessons. The same piece, hands, time and takes give the same lesson.</summary>
public static class LessonMaker
{
    private const double SlowerBy = 0.95,
        SlowestShare = 0.5;

    /// <summary>A lesson on a score as it stands: its steps are thinned out of it.</summary>
    public static LessonResult Of(Score score, LessonWish wish)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(wish);
        return Made(score, StepParts.Of, wish);
    }

    /// <summary>A lesson on a setting of a tune: its steps are the easier levels of the same setting.</summary>
    public static LessonResult Of(
        Tune tune,
        Arrangement arrangement,
        LessonWish wish,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(tune);
        ArgumentNullException.ThrowIfNull(arrangement);
        ArgumentNullException.ThrowIfNull(wish);
        return Made(arrangement.Score, goal => StepParts.Of(tune, arrangement, goal, cancellation), wish);
    }

    private static LessonResult Made(Score score, Func<Score, StepParts> partsOf, LessonWish wish)
    {
        if (!Timeline.Of(score).Any(s => s.End > s.Start))
        {
            return Refused(LessonMessages.NoNotes);
        }
        var remarks = new List<string>();
        if (Playable(score, wish.Hands, remarks, out var fault) is not var (goal, pace))
        {
            return Refused(fault!);
        }
        var steps = new StepMaking(goal, pace, wish.Hands).Of(partsOf(goal));
        var standing = Standing.Of(steps, wish.Takes, pace);
        var (needed, skipped) = new Skipping(standing, wish.Hands).Of(steps);
        var drills = new DrillMaking(goal, pace, wish.Hands, steps, standing, wish.PageEnds).Of();
        var assessed = Assess.Of(goal, wish.Hands);
        return new(
            new Lesson
            {
                Title = score.Title,
                Player = wish.Player,
                Goal = goal,
                Beat = pace.Beat,
                BeatsPerMinute = pace.BeatsPerMinute,
                ComfortableBeats = assessed.Comfortable is { } c ? Math.Floor(c.Speed * pace.BeatsPerMinute) : null,
                Effort = assessed.Verdict.Effort.Overall,
                Steps = needed.ToValueList(),
                Skipped = skipped.ToValueList(),
                Drills = drills.ToValueList(),
                Plan = new Planning(needed, drills, standing, wish).Of(),
                Cautions = assessed.Cautions.Count > 0 ? assessed.Cautions : Caution.General,
                Heard = standing.Sentences,
                Remarks = remarks.ToValueList(),
            },
            null
        );
    }

    // The score at its tempo, or at a slower one at which nothing is too fast; null: these hands cannot hold it at any.
    private static (Score Goal, Pace Pace)? Playable(
        Score score,
        PlayerHands hands,
        List<string> remarks,
        out Diagnostic? refusal
    )
    {
        var printed = Pace.Of(score);
        refusal = null;
        for (var share = 1.0; share >= SlowestShare; share *= SlowerBy)
        {
            var beats = share == 1 ? printed.BeatsPerMinute : Math.Floor(printed.BeatsPerMinute * share);
            var pace = printed with { BeatsPerMinute = beats };
            var slowed = share == 1 ? score : printed.Slowed(score, beats);
            var verdict = Judge.Check(slowed, hands);
            if (verdict.IsPlayable)
            {
                if (share < 1)
                {
                    remarks.Add(LessonMessages.TakenSlower(printed.BeatsPerMinute, beats));
                }
                return (slowed, pace);
            }
            var first = verdict.Faults[0];
            refusal ??= new Diagnostic(
                Severity.Error,
                Place.Whole,
                LessonMessages.NotPlayable(verdict.Faults.Count, $"{first.Place}, {first.Message}")
            );
            if (!verdict.Faults.All(f => f.Kind is FaultKind.Leap or FaultKind.RepeatedKey or FaultKind.RepeatedOctave))
            {
                break;
            }
        }
        return null;
    }

    private static LessonResult Refused(string why) => Refused(new Diagnostic(Severity.Error, Place.Whole, why));

    private static LessonResult Refused(Diagnostic why) => new(null, why);
}
