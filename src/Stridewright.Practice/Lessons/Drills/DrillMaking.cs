using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Practice.Listening.Reporting;

namespace Stridewright.Practice.Lessons;

/// <summary>
/// Chooses drills: first for what the takes showed, then for what asks most of the hands. Each can be played at its tempo, or
/// is slowed until it can.
/// </summary>
internal sealed class DrillMaking
{
    private const int MostLeaps = 2,
        MostRhythms = 2,
        MostJoins = 2,
        MostTurns = 2;

    private readonly Score _goal;
    private readonly IReadOnlyList<PathStep> _steps;
    private readonly Standing _standing;
    private readonly ValueList<int> _pageEnds;
    private readonly Effort _effort;
    private readonly DrillMaker _maker;
    private readonly List<StrokePair> _leaps;
    private readonly List<StrokePair> _changes;
    private readonly List<DrillDraft> _drafts = [];

    public DrillMaking(
        Score goal,
        Pace pace,
        PlayerHands hands,
        IReadOnlyList<PathStep> steps,
        Standing standing,
        ValueList<int> pageEnds
    )
    {
        (_goal, _steps, _standing, _pageEnds) = (goal, steps, standing, pageEnds);
        _effort = Judge.Check(goal, hands).Effort;
        _maker = new DrillMaker(goal, pace, hands, _effort);
        var pairs = new StrokePairs(goal, pace, hands);
        (_leaps, _changes) = (pairs.Leaps(), pairs.Changes());
    }

    /// <summary>Most urgent first, at most <see cref="LessonLimits.Drills"/>.</summary>
    public List<Drill> Of()
    {
        Heard();
        Hardest();
        var numbers = new Dictionary<DrillKind, int>();
        var names = new HashSet<string>(StringComparer.Ordinal);
        return
        [
            .. _drafts
                .OrderByDescending(d => HeardIn(d).Count > 0)
                // One of each kind before a second one.
                .ThenBy(d => _drafts.Where(o => o.Kind == d.Kind).TakeWhile(o => o != d).Count())
                .ThenByDescending(d => d.Effort)
                .ThenBy(d => d.Bars[0])
                .Take((int)LessonLimits.Drills.Value)
                .Select(d =>
                {
                    var number = numbers[d.Kind] = numbers.GetValueOrDefault(d.Kind) + 1;
                    var made = _maker.Drill(d, number, StepOf(d), HeardIn(d));
                    return names.Add(made.Name) ? made : made with { Name = LessonMessages.Another(made.Name, number) };
                }),
        ];
    }

    // For each bar that takes had trouble in, worst first, a drill that answers it.
    private void Heard()
    {
        foreach (var (bar, kinds) in _standing.Faults.OrderByDescending(f => f.Value.Count).ThenBy(f => f.Key))
        {
            foreach (var kind in kinds.Order())
            {
                if (!_drafts.Exists(d => d.Bars.Contains(bar) && DrillServes.Of(d.Kind).Contains(kind)))
                {
                    Add(DrillServes.For(kind).Select(k => At(k, bar)).FirstOrDefault(d => d is not null));
                }
            }
        }
    }

    private void Hardest()
    {
        var basses = new HashSet<ValueList<int>>();
        foreach (var leap in _leaps.Where(l => basses.Add(l.From.Keys)).Take(MostLeaps))
        {
            Add(_maker.Leap(leap));
        }
        Add(_changes is [var change, ..] ? _maker.Change(change) : null);
        foreach (var bar in _maker.SyncopatedBars().Take(MostRhythms))
        {
            Add(_maker.Rhythm(bar));
        }
        var wide = _effort
            .Bars.Where(b => _maker.ChordsIn(b.Bar) > 0)
            .OrderByDescending(b => _maker.ChordsIn(b.Bar))
            .ThenByDescending(b => b.Right)
            .ThenBy(b => b.Bar);
        Add(wide.FirstOrDefault() is { } frame ? _maker.Frame(frame.Bar) : null);
        Add(
            _effort.Bars.OrderByDescending(b => b.Left).ThenBy(b => b.Bar).FirstOrDefault() is { Left: > 1 } beat
                ? _maker.Beat(beat.Bar)
                : null
        );
        var joins = Strains.Of(_goal).Skip(1).Select(s => s.First).ToList();
        foreach (var first in joins.OrderByDescending(ValueAt).ThenBy(b => b).Take(MostJoins))
        {
            Add(_maker.Join(DrillKind.MemoryJoin, first));
        }
        foreach (var end in _pageEnds.OrderByDescending(b => ValueAt(b + 1)).ThenBy(b => b).Take(MostTurns))
        {
            Add(_maker.Join(DrillKind.PageTurn, end + 1));
        }
    }

    private double ValueAt(int bar) => bar < _effort.Bars.Count ? _effort.Bars[bar].Value : 0;

    private DrillDraft? At(DrillKind kind, int bar) =>
        kind switch
        {
            DrillKind.Leap => _leaps.Find(l => l.Bars.Contains(bar)) is { } leap ? _maker.Leap(leap) : null,
            DrillKind.ChordChange => _changes.Find(c => c.Bars.Contains(bar)) is { } change
                ? _maker.Change(change)
                : null,
            DrillKind.Rhythm => _maker.Rhythm(bar),
            DrillKind.Frame => _maker.ChordsIn(bar) > 0 ? _maker.Frame(bar) : null,
            DrillKind.Beat => _maker.Beat(bar),
            _ => _maker.Join(DrillKind.Join, bar),
        };

    // None twice, and none that is all in another of its kind.
    private void Add(DrillDraft? draft)
    {
        if (draft is not null && !_drafts.Exists(d => d.Kind == draft.Kind && d.Claim == draft.Claim))
        {
            _drafts.Add(draft);
        }
    }

    private ValueList<RemarkKind> HeardIn(DrillDraft draft) =>
        draft
            .Bars.SelectMany(b => _standing.Faults.GetValueOrDefault(b, []))
            .Where(DrillServes.Of(draft.Kind).Contains)
            .Distinct()
            .Order()
            .ToValueList();

    // The first step of the same hands that has these bars as they are in the piece.
    private string StepOf(DrillDraft draft)
    {
        var of =
            draft.Hand == Hand.Left ? StepHands.Left
            : draft.Hand == Hand.Right ? StepHands.Right
            : StepHands.Together;
        var steps = _steps.Where(s => s.Hands == of).ToList();
        if (steps.Count == 0)
        {
            return _steps[^1].Id;
        }
        var hand = draft.Hand ?? Hand.Right;
        var there = Written(_goal, hand, draft.Bars);
        return (
            steps.Find(s =>
                (of != StepHands.Together || s.IsOfThePiece)
                && draft.Bars.All(b => b >= s.First && b <= s.Last)
                && Written(s.Score, hand, draft.Bars.Select(b => b - s.First)).SequenceEqual(there)
            ) ?? steps[^1]
        ).Id;
    }

    private static IEnumerable<(int, ScoreTime, ValueList<int>)> Written(Score score, Hand hand, IEnumerable<int> bars)
    {
        var wanted = bars.ToList();
        return HandStroke
            .Of(score, hand)
            .Where(s => wanted.Contains(s.Bar))
            .Select(s => (wanted.IndexOf(s.Bar), s.At, s.Keys));
    }
}
