using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// One tune being set: settles what the brief leaves open, runs the stages in their order (when, filler keys, texture,
/// left hand; the left hand alone over chords without notes), and asks the judge; what the judge refuses is thinned, priced higher or slowed, and set again.
/// </summary>
internal sealed class Setting(Tune written, Brief brief, Feel feel, Metre metre, Prices prices)
{
    private const int Attempts = 20;
    private const long DearestStrain = 1_000_000;
    private const double SlowerBy = 0.93,
        SlowestShare = 0.55;
    private readonly List<Diagnostic> _notes = [];
    private readonly HashSet<int> _thinBars = [];
    private readonly bool _hasNotes = written.Bars.Any(b => b.Notes.Count > 0);
    private long _rightStrain = 1200;
    private long _leftStrain = 1200;
    private long? _runPrice;
    private int _fellBack;

    public ArrangeResult Work(CancellationToken cancellation)
    {
        var plan = Plan();
        var (piece, lattice) = (plan.Piece, plan.Lattice);
        _notes.AddRange(plan.Notes);
        if (lattice.Bars.Length > Arranger.MostBars)
        {
            return Arranger.Refused(ArrangingMessages.TooLong(lattice.Bars.Length, Arranger.MostBars));
        }
        var ragged = _hasNotes ? Ragging.Solve(lattice, brief, prices.Ragging, cancellation) : new Ragged([], 0);
        var homes = HomePositions.Find(lattice, new Reach(brief.Hands), cancellation);
        var unit = Feels.BeatUnit(lattice.Bars[0].Metre);
        var wanted =
            brief.BeatsPerMinute ?? Feels.Tempo(feel, Math.Max(brief.LeftLevel, _hasNotes ? brief.RightLevel : 0));
        var tempo = wanted;
        for (var attempt = 0; ; attempt++)
        {
            var secondsPerTick = lattice.Tick.ToQuarters() * 60 / (tempo * unit.Length.ToQuarters());
            var (right, left) = Hands(plan, ragged, homes, secondsPerTick, cancellation);
            var sign = Tempo(tempo, unit);
            var words = brief.Lyrics && brief.Singer is null;
            var draft = DraftBuilder.Build(piece.Tune, lattice, right, left, sign, Subtitle(lattice), words);
            draft = brief.ShowPlain ? PlainAbove.Show(draft, lattice, brief.Lyrics && brief.LeftHandOnly) : draft;
            var score = Notator.Write(_hasNotes ? draft : DraftBuilder.LeftHandAlone(draft));
            var verdict = Judge.Check(score, brief.Hands);
            if (verdict.IsPlayable && brief.LeftHandOnly && _hasNotes)
            {
                score = Notator.Write(DraftBuilder.LeftHandAlone(draft));
                verdict = Judge.Check(score, brief.Hands);
            }
            if (verdict.IsPlayable)
            {
                score = plan.Sung is null ? score : TuneAbove.Show(score, plan);
                var finished = Finished(plan, ragged, score, verdict, wanted, tempo, unit);
                var sketch = brief.Sketch && _hasNotes ? SketchBuilder.Build(plan, left, sign, IsWordy) : null;
                return new ArrangeResult(finished with { Sketch = sketch }, null);
            }
            if (attempt >= Attempts || !Relax(verdict, ref tempo, wanted))
            {
                var fault = verdict.Faults[0];
                return new ArrangeResult(
                    null,
                    new Diagnostic(
                        Severity.Error,
                        Place.AtBar(score.Bars[fault.Bar].Number),
                        ArrangingMessages.Unplayable(fault)
                    )
                );
            }
        }
    }

    /// <summary>What is to be set.</summary>
    public Plan Plan() => new Planner(written, brief, feel, metre).Make();

    private (RightLine Right, LeftLine Left) Hands(
        Plan plan,
        Ragged ragged,
        HomePositions homes,
        double secondsPerTick,
        CancellationToken cancellation
    )
    {
        var lattice = plan.Lattice;
        var stage = new Stage(lattice, brief, prices, secondsPerTick);
        if (!_hasNotes)
        {
            var silent = new RightLine([], 0);
            return (silent, Left(stage, silent, homes, cancellation));
        }
        var line = Filling.Solve(stage, ragged, homes, cancellation);
        var thin = line.Notes.Where(n => _thinBars.Contains(lattice.BarAt(n.Tick))).Select(n => n.Tick).ToHashSet();
        var right = Texturing.Solve(stage, line, homes, _rightStrain, thin, cancellation);
        right = Accompanying.Add(stage, right, plan.VoiceOctaves, homes, _rightStrain, _thinBars, cancellation);
        var left = Left(stage, right, homes, cancellation);
        return (Crushing.Add(stage, right), left);
    }

    // The price of runs is found once: what is set again after the judge's word differs in few bars.
    private LeftLine Left(Stage stage, RightLine right, HomePositions homes, CancellationToken cancellation)
    {
        var left = _runPrice is { } price
            ? Striding.Solve(stage, right, homes, _leftStrain, price, cancellation)
            : Striding.Solve(stage, right, homes, _leftStrain, cancellation);
        _runPrice = left.RunPrice;
        _fellBack = left.FellBack.Count;
        return left;
    }

    // What the judge refused: strain costs more, thick bars are thinned, and what stays is slowed where the brief allows.
    private bool Relax(Verdict verdict, ref double tempo, double wanted)
    {
        bool changed = false,
            slower = false;
        foreach (var hand in verdict.Faults.Where(IsStrain).Select(f => f.Hand).Distinct())
        {
            ref var price = ref hand == Hand.Left ? ref _leftStrain : ref _rightStrain;
            if (price < DearestStrain)
            {
                price *= 4;
                changed = true;
            }
        }
        foreach (var fault in verdict.Faults.Where(f => !IsStrain(f)))
        {
            var thinned =
                (fault.Hand == Hand.Right || fault.Kind == FaultKind.SharedKey)
                && (_thinBars.Add(fault.Bar) | (fault.Bar > 0 && _thinBars.Add(fault.Bar - 1)));
            changed |= thinned;
            slower |= !thinned;
        }
        if ((slower || !changed) && brief.BeatsPerMinute is null && tempo * SlowerBy >= wanted * SlowestShare)
        {
            tempo = Math.Floor(tempo * SlowerBy);
            changed = true;
        }
        return changed;
    }

    private static bool IsStrain(Fault fault) => fault.Kind is FaultKind.StrainedOften or FaultKind.StrainedTwice;

    private Arrangement Finished(
        Plan plan,
        Ragged ragged,
        Score score,
        Verdict verdict,
        double wanted,
        double tempo,
        NoteValue unit
    )
    {
        var lattice = plan.Lattice;
        if (tempo < wanted)
        {
            Note(ArrangingMessages.Slower(wanted, tempo));
        }
        if (_thinBars.Count > 0 && !score.LeftHandOnly)
        {
            Note(ArrangingMessages.Thinned(_thinBars.Count));
        }
        if (Math.Max(_leftStrain, _rightStrain) is > 1200 and var price)
        {
            Note(ArrangingMessages.StrainPrice(price / 1200));
        }
        if (_fellBack > 0)
        {
            Note(ArrangingMessages.FellBack(_fellBack));
        }
        var (early, late) = Ragging.Displaced(lattice, ragged);
        var own = lattice.Notes.Count(n => IsOwn(lattice.Bars[lattice.BarAt(n.Start)]));
        var quarters = Timeline.PlayOrder(score).Sum(i => score.Bars[i].Length.ToQuarters());
        return new Arrangement
        {
            Score = score,
            Brief = brief with { Feel = feel, BeatsPerMinute = tempo, Tonic = lattice.Bars[0].Key.Tonic },
            Feel = feel,
            Key = lattice.Bars[0].Key,
            BeatsPerMinute = tempo,
            BeatUnit = unit,
            Seconds = quarters * 60 / (tempo * unit.Length.ToQuarters()),
            HarmonyChanges = plan.HarmonyChanges,
            Verdict = verdict,
            SungLowest = plan.Sung?.Lowest,
            SungHighest = plan.Sung?.Highest,
            Tune =
                score.LeftHandOnly || plan.Sung is not null
                    ? new TuneKept(0, 0, 0, 0, 0)
                    : new TuneKept(own + lattice.LostNotes, own, early, late, ragged.Onsets.Count(o => o.IsFiller)),
            Notes = _notes.ToValueList(),
        };
    }

    private bool IsWordy => brief.Lyrics || brief.Singer is not null;

    private static bool IsOwn(LatticeBar bar) => !bar.Treatment.IsAdded && Omissions.Plays(bar);

    private Direction Tempo(double tempo, NoteValue unit) =>
        new(ScoreTime.Zero)
        {
            Words = feel switch
            {
                Feel.Classic => "With a steady beat",
                Feel.Stride => "Swinging",
                Feel.Waltz when Feels.IsUsual(metre) => "Waltz time",
                Feel.SixEight when Feels.IsUsual(metre) => "March time",
                _ => "Steadily",
            },
            BeatsPerMinute = tempo,
            BeatUnit = unit,
            // The right hand's off-beat eighths: about 1.7 to 1 at moderate tempi, straighter when fast (common practice
            // of solo piano; drummers' ratios after Friberg and Sundström 2002 sound comic here).
            Swing =
                feel == Feel.Stride
                    ? tempo <= 180
                        ? (5, 3)
                        : tempo <= 220
                            ? (3, 2)
                            : (6, 5)
                    : null,
        };

    private string Subtitle(Lattice lattice) =>
        (_hasNotes ? "" : KeyName(lattice.Bars[0].Key) + ", ")
        + (_hasNotes && brief.LeftHandOnly ? "left hand alone, " : "")
        + (brief.Singer is null ? "" : "accompaniment, ")
        + (
            feel switch
            {
                Feel.Classic => "classic rag",
                Feel.Stride => "stride",
                Feel.Waltz => "rag waltz",
                _ => "six-eight march",
            }
        )
        + (
            brief.LeftLevel == brief.RightLevel || !_hasNotes || brief.LeftHandOnly
                ? $", level {brief.LeftLevel}"
                : $", left hand level {brief.LeftLevel}, right hand level {brief.RightLevel}"
        );

    private static string KeyName(Key key) =>
        key.ToString().Replace("b", " flat", StringComparison.Ordinal).Replace("#", " sharp", StringComparison.Ordinal);

    private void Note(string message) => _notes.Add(new Diagnostic(Severity.Note, Place.Whole, message));
}
