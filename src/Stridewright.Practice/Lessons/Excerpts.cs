using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>Parts of a score as scores: some of its bars, one of its hands.</summary>
public static class Excerpts
{
    /// <summary>Bars from one to another, as they are written; what sounds at the first is struck, what sounds past the last is
    /// let go. Repeats are kept only where the whole score is taken or <paramref name="repeats"/> are wished. Tempo and swing
    /// in force stand at the first bar.</summary>
    public static Score Bars(Score score, int first, int last, bool repeats = false)
    {
        ArgumentNullException.ThrowIfNull(score);
        if (first == 0 && last == score.Bars.Count - 1)
        {
            return score;
        }
        var bars = score.Bars.Skip(first).Take(last - first + 1).ToArray();
        if (!repeats)
        {
            bars = [.. bars.Select(b => b with { Marks = BarMarks.None })];
        }
        bars[0] = Begun(score, first, bars[0]);
        bars[^1] = bars[^1] with { Marks = bars[^1].Marks with { FinalBarAfter = true, DoubleBarAfter = false } };
        return Ties.Mended(score with { Bars = bars.ToValueList(), Footnotes = [] });
    }

    /// <summary>One hand of a score on a staff of its own.</summary>
    public static Score Hand(Score score, Hand hand)
    {
        ArgumentNullException.ThrowIfNull(score);
        return score with
        {
            LeftHandOnly = hand == Music.Hand.Left,
            RightHandOnly = hand == Music.Hand.Right,
            Bars = score
                .Bars.Select(b =>
                    b with
                    {
                        Voices = b.Voices.Where(v => v.Hand == hand).ToValueList(),
                        Above = hand == Music.Hand.Right ? b.Above : [],
                        // Nobody needs the chord of a pick-up that the hand does not play.
                        Chords = b.Implicit && IsSilent(b, hand) ? [] : b.Chords,
                    }
                )
                .ToValueList(),
        };
    }

    private static bool IsSilent(ScoreBar bar, Hand hand) =>
        bar.Voices.All(v => v.Hand != hand || v.Events.All(e => e.Notes.Count == 0));

    /// <summary>Two hands that were apart, with all else as in the piece.</summary>
    public static Score Together(Score goal, Score right, Score left)
    {
        ArgumentNullException.ThrowIfNull(goal);
        ArgumentNullException.ThrowIfNull(right);
        ArgumentNullException.ThrowIfNull(left);
        return goal with
        {
            Bars = goal
                .Bars.Select(
                    (bar, i) =>
                        bar with
                        {
                            Voices = right.Bars[i].Voices.Concat(left.Bars[i].Voices).ToValueList(),
                            Above = [],
                        }
                )
                .ToValueList(),
        };
    }

    // What is in force where an excerpt begins.
    private static ScoreBar Begun(Score score, int first, ScoreBar bar)
    {
        var before = score.Bars.Take(first).SelectMany(b => b.Directions).ToList();
        var here = bar.Directions.Where(d => d.At.IsZero).ToList();
        var added = new List<Direction>();
        if (
            !here.Exists(d => d.BeatsPerMinute is not null)
            && before.FindLast(d => d.BeatsPerMinute is not null) is { } tempo
        )
        {
            added.Add(
                new Direction(ScoreTime.Zero) { BeatsPerMinute = tempo.BeatsPerMinute, BeatUnit = tempo.BeatUnit }
            );
        }
        if (!here.Exists(d => d.Swing is not null) && before.FindLast(d => d.Swing is not null) is { } swing)
        {
            added.Add(new Direction(ScoreTime.Zero) { Swing = swing.Swing });
        }
        return added.Count == 0 ? bar : bar with { Directions = [.. added, .. bar.Directions] };
    }
}
