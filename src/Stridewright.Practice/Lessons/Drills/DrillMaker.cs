using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Practice.Listening.Reporting;

namespace Stridewright.Practice.Lessons;

/// <summary>A drill before it has its number.</summary>
internal sealed record DrillDraft(
    DrillKind Kind,
    Hand? Hand,
    ValueList<int> Bars,
    string Claim,
    Score Score,
    double Effort
)
{
    public KeyMove? Move { get; init; }

    /// <summary>Tempo that it leads to, in beats.</summary>
    public double Beats { get; init; }
}

/// <summary>Makes single drills from places of the piece.</summary>
internal sealed class DrillMaker(Score goal, Pace pace, PlayerHands hands, Effort effort)
{
    private const int Octaves = 4,
        LeastNear = 5,
        BarsOfBeat = 4,
        BarsOfRhythm = 2;
    private const double SlowerBy = 0.95,
        SlowestShare = 0.4;
    private readonly List<LineStroke> _line = UpperLine.Of(RightThinning.Line(Excerpts.Hand(goal, Hand.Right)));

    public Drill Drill(DrillDraft draft, int number, string step, ValueList<RemarkKind> heard)
    {
        var name = LessonMessages.NameOf(draft.Kind, goal, draft.Bars);
        return new()
        {
            Id = LessonMessages.IdOf(draft.Kind, number),
            Kind = draft.Kind,
            Hand = draft.Hand,
            Name = name,
            Claim = draft.Claim,
            How = LessonMessages.HowTo(draft.Kind),
            Why = LessonMessages.Why(draft.Kind, draft.Effort, MostOf(draft), heard),
            Score = draft.Score with { Title = name, Subtitle = draft.Claim },
            Bars = draft.Bars,
            Serves = DrillServes.Of(draft.Kind).ToValueList(),
            Tempo = new(Math.Round(draft.Beats * LessonLimits.Begin.Value), draft.Beats),
            Effort = draft.Effort,
            Step = step,
            Heard = heard,
            Move = draft.Move,
        };
    }

    /// <summary>Out to the chord and back to the bass, from near by to as far as it is written.</summary>
    public DrillDraft? Leap(StrokePair pair)
    {
        var metre = goal.Bars[pair.From.Bar].Metre;
        var chord = pair.To.Pitches;
        var lines = new List<DrillScore.Pair>();
        foreach (var (bass, words) in Widening(pair))
        {
            lines.Add(new(bass, chord, false, words));
            lines.Add(new(bass, chord, true, ""));
            lines.Add(new(chord, bass, false, ""));
            lines.Add(new(chord, bass, true, ""));
        }
        var unit = DrillScore.Unit(metre, pair.Apart);
        var score = DrillScore.OfPairs("", metre, goal.Bars[pair.From.Bar].Key, unit, lines);
        return
            Draft(DrillKind.Leap, Hand.Left, pair.Bars.Distinct(), LessonMessages.LeapClaim(goal, pair), score)
                is { } made
            ? made with
            {
                Move = pair.Move,
            }
            : null;
    }

    // The bass nearest the chord first, then ever lower ones of its chord, down to the written one.
    private static IEnumerable<(ValueList<Pitch> Bass, string Words)> Widening(StrokePair pair)
    {
        var real = pair.From.Low;
        // Tones of bass and chord in the octaves between them, none so near that it is no leap.
        var lower = pair
            .To.Pitches.Prepend(real)
            .SelectMany(p => Enumerable.Range(real.Octave, Octaves).Select(o => p with { Octave = o }))
            .Where(p => p.Midi > real.Midi && p.Midi <= pair.To.Low.Midi - LeastNear)
            .DistinctBy(p => p.Midi)
            .OrderByDescending(p => p.Midi)
            .ToList();
        // Three distances are enough: the nearest, one about half way, the written one.
        var middle = (pair.To.Low.Midi + real.Midi) / 2;
        var steps =
            lower.Count > 1 ? new[] { lower[0], lower.Skip(1).MinBy(p => Math.Abs(p.Midi - middle)) } : [.. lower];
        return
        [
            .. steps.Select((p, i) => ((ValueList<Pitch>)[p], i == 0 ? LessonMessages.Near : LessonMessages.Wider)),
            (pair.From.Pitches, LessonMessages.AsWritten),
        ];
    }

    /// <summary>Two chords to and fro.</summary>
    public DrillDraft? Change(StrokePair pair)
    {
        var bar = goal.Bars[pair.From.Bar];
        var unit = DrillScore.Unit(bar.Metre, ScoreTime.Quarter);
        var (first, second) = (pair.From.Pitches, pair.To.Pitches);
        var score = DrillScore.OfPairs(
            "",
            bar.Metre,
            bar.Key,
            unit,
            [
                new(first, second, false, LessonMessages.Slowly),
                new(second, first, false, ""),
                new(first, second, true, LessonMessages.Quickly),
                new(second, first, true, ""),
            ]
        );
        var claim = LessonMessages.ChangeClaim(goal, pair);
        return Draft(DrillKind.ChordChange, Hand.Left, pair.Bars.Distinct(), claim, score) is { } made
            ? made with
            {
                Move = pair.Move,
            }
            : null;
    }

    /// <summary>Bars with syncopation in the right hand, the most first, none right beside an earlier one.</summary>
    public IEnumerable<int> SyncopatedBars()
    {
        var counts = Syncopated().GroupBy(s => s.Bar).ToDictionary(g => g.Key, g => g.Sum(s => 1 + (int)s.Kind));
        var taken = new List<int>();
        foreach (
            var bar in counts
                .OrderByDescending(c => c.Value)
                .ThenByDescending(c => effort.Bars[c.Key].Right)
                .ThenBy(c => c.Key)
                .Select(c => c.Key)
        )
        {
            if (taken.TrueForAll(t => Math.Abs(t - bar) > BarsOfRhythm))
            {
                taken.Add(bar);
                yield return bar;
            }
        }
    }

    /// <summary>The rhythm of a bar and the one after it: tapped by both hands, on one note over the left hand, as
    /// written.</summary>
    public DrillDraft? Rhythm(int bar)
    {
        var (_, last) = Running(bar, bar, Math.Min(bar + BarsOfRhythm - 1, goal.Bars.Count - 1));
        var found = Syncopated().Where(s => s.Bar >= bar && s.Bar <= last).ToList();
        if (found.Count == 0)
        {
            return null;
        }
        var written = Excerpts.Bars(goal, bar, last);
        var onOne = OneNote.Of(written, Hand.Right);
        var score = DrillScore.InTurn(
            "",
            [
                (LessonMessages.Tapped, OneNote.Of(onOne, Hand.Left)),
                (LessonMessages.OnOneNote, onOne),
                (LessonMessages.AsWritten, written),
            ]
        );
        var claim = LessonMessages.RhythmClaim(goal, bar, last, [.. found.Select(s => s.Kind)]);
        return Draft(DrillKind.Rhythm, null, Enumerable.Range(bar, last - bar + 1), claim, score);
    }

    private IEnumerable<(int Bar, SyncopationKind Kind)> Syncopated()
    {
        var (bar, start) = (0, ScoreTime.Zero);
        foreach (var found in Syncopations.In(goal, _line))
        {
            while (bar + 1 < goal.Bars.Count && _line[found.Index].Start >= start + goal.Bars[bar].Length)
            {
                start += goal.Bars[bar++].Length;
            }
            yield return (bar, found.Kind);
        }
    }

    /// <summary>How often the right hand has two keys or more together in a bar.</summary>
    public int ChordsIn(int bar) => Chords(goal.Bars[bar]).Count();

    private static IEnumerable<ScoreEvent> Chords(ScoreBar bar) =>
        bar.Voices.Where(v => v.Hand == Hand.Right).SelectMany(v => v.Events).Where(e => e.Notes.Count > 1);

    /// <summary>The chords of a bar and the next: the outer notes and what lies between; of octaves the thumb, then both.</summary>
    public DrillDraft? Frame(int bar)
    {
        var (_, last) = Running(bar, bar, Math.Min(bar + 1, goal.Bars.Count - 1));
        var written = Excerpts.Bars(Excerpts.Hand(goal, Hand.Right), bar, last);
        var (chords, inner) = (0, 0);
        foreach (var e in written.Bars.SelectMany(Chords))
        {
            chords++;
            inner += e.Notes.Count - 2;
        }
        var score = DrillScore.InTurn(
            "",
            inner > 0
                ? [(LessonMessages.OuterNotes, RightThinning.Frame(written)), (LessonMessages.AsWritten, written)]
                :
                [
                    (LessonMessages.ThumbAlone, RightThinning.Thumb(written)),
                    (LessonMessages.TopAlone, RightThinning.Line(written)),
                    (LessonMessages.AsWritten, written),
                ]
        );
        var claim = LessonMessages.FrameClaim(goal, bar, last, chords, inner);
        return Draft(DrillKind.Frame, Hand.Right, Enumerable.Range(bar, last - bar + 1), claim, score);
    }

    /// <summary>The left hand alone over four bars.</summary>
    public DrillDraft? Beat(int bar)
    {
        var first = Math.Max(0, Math.Min(bar - 1, goal.Bars.Count - BarsOfBeat));
        first += goal.Bars[first].Implicit && goal.Bars.Count > BarsOfBeat ? 1 : 0; // not from a pick-up
        (first, var last) = Running(bar, first, Math.Min(first + BarsOfBeat, goal.Bars.Count) - 1);
        if (first == last && bar > 0)
        {
            return Beat(bar - 1);
        }
        var score = DrillScore.InTurn(
            "",
            [(LessonMessages.CountAloud, Excerpts.Bars(Excerpts.Hand(goal, Hand.Left), first, last))]
        );
        var claim = LessonMessages.BeatClaim(goal, first, last);
        return Draft(DrillKind.Beat, Hand.Left, Enumerable.Range(first, last - first + 1), claim, score);
    }

    /// <summary>Two bars before a bar line and two after it.</summary>
    /// <param name="bar">Index of the bar after the line.</param>
    public DrillDraft? Join(DrillKind kind, int bar)
    {
        if (bar < 1 || bar >= goal.Bars.Count)
        {
            return null;
        }
        var (first, last) = Running(bar, Math.Max(0, bar - 2), Math.Min(bar + 1, goal.Bars.Count - 1));
        var excerpt = Excerpts.Bars(goal, first, last);
        var score = DrillScore.InTurn("", [(LessonMessages.OverTheLine, excerpt)]);
        var claim = LessonMessages.JoinClaim(goal, bar);
        return Draft(kind, null, Enumerable.Range(first, last - first + 1), claim, score);
    }

    // Of some bars those around one that are played one after the other: one ending does not follow another.
    private (int First, int Last) Running(int bar, int first, int last)
    {
        bool Follows(int next) =>
            goal.Bars[next - 1].Marks.Ending.Count == 0
            || goal.Bars[next].Marks.Ending.Count == 0
            || goal.Bars[next].Marks.Ending.Equals(goal.Bars[next - 1].Marks.Ending);
        var (from, to) = (bar, bar);
        while (from > first && Follows(from))
        {
            from--;
        }
        while (to < last && Follows(to + 1))
        {
            to++;
        }
        return (from, to);
    }

    // At the piece's tempo, or the fastest at which the judge passes it; null: at none.
    private DrillDraft? Draft(DrillKind kind, Hand? hand, IEnumerable<int> bars, string claim, Score score)
    {
        var of = bars.Order().ToValueList();
        for (var share = 1.0; share >= SlowestShare; share *= SlowerBy)
        {
            var beats = Math.Round(pace.BeatsPerMinute * share);
            var slowed = pace.Slowed(WithTempo(score), beats);
            if (Judge.Check(slowed, hands).IsPlayable)
            {
                return new(kind, hand, of, claim, slowed, of.Max(b => Value(b, hand))) { Beats = beats };
            }
        }
        return null;
    }

    private Score WithTempo(Score score) => pace.Slowed(score, pace.BeatsPerMinute);

    // What makes most of the effort of the hardest of its bars.
    private EffortKind MostOf(DrillDraft draft)
    {
        var bar = effort.Bars[draft.Bars.MaxBy(b => Value(b, draft.Hand))];
        var parts =
            draft.Hand == Hand.Left || (draft.Hand is null && bar.Left > bar.Right) ? bar.LeftParts : bar.RightParts;
        return parts.Count == 0 ? EffortKind.Density : parts.MaxBy(p => p.Points)!.Kind;
    }

    private double Value(int bar, Hand? hand) =>
        hand switch
        {
            Hand.Left => effort.Bars[bar].Left,
            Hand.Right => effort.Bars[bar].Right,
            _ => effort.Bars[bar].Value,
        };
}
