using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>A step or drill as the plan follows it from day to day.</summary>
internal sealed class PlanItem
{
    private const int RungsANight = 2;
    private readonly IReadOnlyList<double> _ladder;
    private int _rung;
    private int _risen;
    private bool _isVisited;
    private bool _isTested;
    private double _testMinutes;

    /// <param name="begin">Tempo that takes have shown already; null: none.</param>
    public PlanItem(PathStep step, double? begin)
    {
        (Step, Id, Effort, Test, _ladder) = (step, step.Id, step.Effort, step.Test, step.Tempo.Ladder);
        while (begin is { } shown && _rung + 1 < _ladder.Count && _ladder[_rung + 1] <= shown)
        {
            _rung++;
        }
        var pace = Pace.Of(step.Score);
        var quarters = Timeline.PlayOrder(step.Score).Sum(i => step.Score.Bars[i].Length.ToQuarters());
        TakeMinutes = quarters / pace.Quarters(step.Test.BeatsPerMinute);
    }

    public PlanItem(Drill drill) => (Drill, Id, Effort, _ladder) = (drill, drill.Id, drill.Effort, drill.Tempo.Ladder);

    public PathStep? Step { get; }

    public Drill? Drill { get; }

    public string Id { get; }

    public double Effort { get; }

    public MoveOn? Test { get; }

    /// <summary>How long a take of it lasts at the tempo of its test, repeats included; 0 for a drill.</summary>
    public double TakeMinutes { get; }

    /// <summary>Day on which it was done; null: it is not.</summary>
    public int? DoneOn { get; private set; }

    /// <summary>A step that is not done.</summary>
    public bool IsLearned => Step is not null && DoneOn is null;

    /// <summary>Day of the last visit; 0: none so far.</summary>
    public int LastDay { get; private set; }

    public double Slowest => _ladder[0];

    public double Tempo => _ladder[_rung];

    public void BeginDay() => (_risen, _isVisited, _isTested) = (0, false, _rung == _ladder.Count - 1);

    /// <summary>What to do now and at which tempo; it rises with each visit, in a day by no more than
    /// <see cref="LessonLimits.RungsADay"/>. A step that begins the day at its last tempo is tested.</summary>
    public (TaskKind Kind, double Beats) Visit(int rungs, int minutes)
    {
        _testMinutes += _isTested ? minutes : 0;
        if (_isVisited)
        {
            var up = Math.Min(rungs, (int)LessonLimits.RungsADay.Value - _risen);
            (_rung, _risen) = (Math.Min(_rung + up, _ladder.Count - 1), _risen + up);
        }
        _isVisited = true;
        return (
            Drill is not null ? TaskKind.Drill
            : _isTested ? TaskKind.Test
            : TaskKind.Step,
            Tempo
        );
    }

    public void EndDay(int day)
    {
        if (!_isVisited)
        {
            return;
        }
        LastDay = day;
        // A long step has room for few takes in a slice: its test goes on from slice to slice, and over the night.
        if (_isTested && _testMinutes >= (Test?.CleanTakes ?? 0) * TakeMinutes)
        {
            DoneOn ??= day;
        }
        // The next day goes on a little further, as far as the day's limit allows.
        var up = Math.Min(RungsANight, (int)LessonLimits.RungsADay.Value - _risen);
        _rung = Math.Min(_rung + up, _ladder.Count - 1);
    }
}
