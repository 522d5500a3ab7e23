using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// One tune being set: settles what the brief leaves open, runs the stages in their order (when, filler keys, texture,
/// left hand; the left hand alone over chords without notes), and asks the judge; what the judge refuses is thinned, priced higher or slowed, and set again.
/// </summary>
/// <param name="pace">Tempo that a setting before this one was found to need; null: the one wanted.</param>
internal sealed class Setting(Tune written, Brief brief, Feel feel, Metre metre, Prices prices, double? pace = null)
{
    private const int Attempts = 40;
    private const long DearestStrain = 1_000_000;
    private const double SlowerBy = 0.97,
        SlowestShare = 0.55;
    private readonly List<Diagnostic> _notes = [];
    private readonly List<MannerFallen> _fallen = [];
    private readonly bool _hasNotes = written.Bars.Any(b => b.Notes.Count > 0);
    private Settled _settled = brief.Settled ?? new();

    public ArrangeResult Work(CancellationToken cancellation)
    {
        var plan = Plan();
        if (plan.Fitted.Refusal is { } reason)
        {
            return Arranger.Refused(reason);
        }
        return plan.Lattice.Bars.Length > Arranger.MostBars
            ? Arranger.Refused(ArrangingMessages.TooLong(plan.Lattice.Bars.Length, Arranger.MostBars))
            : Work(plan, null, null, cancellation);
    }

    /// <summary>Works a setting again: at what was settled before, so that only what must change does.</summary>
    /// <param name="hold">Holds more than the brief keeps; null: nothing.</param>
    public ArrangeResult WorkAgain(Solution before, Func<Lattice, Lattice>? hold, CancellationToken cancellation)
    {
        _settled = before.Settled;
        return Work(before.Plan with { Lattice = before.Lattice.Free() }, before, hold, cancellation);
    }

    private ArrangeResult Work(
        Plan plan,
        Solution? before,
        Func<Lattice, Lattice>? hold,
        CancellationToken cancellation
    )
    {
        if (Holding.Apply(plan.Lattice, brief.Kept, out var conflict) is not { } lattice)
        {
            return new ArrangeResult(null, conflict);
        }
        lattice = hold?.Invoke(lattice) ?? lattice;
        var piece = plan.Piece;
        _notes.AddRange(plan.Notes);
        var sameRhythm = before is not null && HeldBar.SameRight(before.Lattice, lattice);
        var ragged =
            !_hasNotes ? new Ragged([], 0)
            : sameRhythm ? before!.Ragged
            : Ragging.Solve(lattice, brief, prices.Ragging, _settled.Ragging, before?.Ragged.Fuller, cancellation);
        _settled = _settled with { Ragging = _hasNotes ? ragged.Extras : [] };
        var homes = before?.Homes ?? HomePositions.Find(lattice, new Reach(brief.Hands, Hand.Left), cancellation);
        var unit = Feels.BeatUnit(lattice.Bars[0].Metre);
        var wanted = brief.BeatsPerMinute ?? plan.Fitted.BeatsPerMinute ?? Usual;
        for (var attempt = 0; ; attempt++)
        {
            var tempo = _settled.BeatsPerMinute ?? wanted;
            var secondsPerTick = lattice.Tick.ToQuarters() * 60 / (tempo * unit.Length.ToQuarters());
            var stage = new Stage(lattice, brief, prices, secondsPerTick) { Eased = _settled.Eased };
            // A right hand that nothing has changed is not searched for again.
            var right =
                ragged == before?.Ragged && _settled == before.Settled
                    ? before.Right
                    : Right(plan, stage, ragged, homes, cancellation);
            var left = Left(stage, right, homes, cancellation);
            var sign = Headline.Tempo(feel, metre, tempo, unit);
            var subtitle = Headline.Subtitle(lattice, brief, _hasNotes);
            var words = brief.Lyrics && brief.Singer is null;
            var draft = DraftBuilder.Build(piece.Tune, lattice, right, left, sign, subtitle, words);
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
                Tell(plan.Lattice, lattice, right, left);
                var solution = new Solution(plan, stage, ragged, homes, right, left, _settled);
                var finished = Finished(solution, score, verdict, wanted, tempo, unit);
                var sketch = brief.Sketch && _hasNotes ? SketchBuilder.Build(plan, left, sign, IsWordy) : null;
                return new ArrangeResult(finished with { Sketch = sketch }, null);
            }
            if (attempt < Attempts && Refused.Without(lattice, verdict) is { } easier)
            {
                lattice = easier;
                ragged = Ragging.Solve(
                    lattice,
                    brief,
                    prices.Ragging,
                    brief.Settled?.Ragging ?? [],
                    null,
                    cancellation
                );
                _settled = _settled with { Ragging = ragged.Extras };
                continue;
            }
            if (attempt >= Attempts || !Relax(verdict, wanted))
            {
                return new ArrangeResult(null, Refusal(lattice, score, verdict));
            }
        }
    }

    // The first fault, or the first beside a kept bar: there it can be mended.
    private static Diagnostic Refusal(Lattice lattice, Score score, Verdict verdict)
    {
        var kept = verdict.Faults.FirstOrDefault(f => IsKept(f.Bar) || IsKept(f.Bar - 1));
        var fault = kept ?? verdict.Faults[0];
        return new Diagnostic(
            Severity.Error,
            Place.AtBar(score.Bars[fault.Bar].Number),
            kept is null ? ArrangingMessages.Unplayable(fault) : KeepingMessages.AsKept(fault.Message)
        );

        bool IsKept(int bar) => bar >= 0 && bar < lattice.Bars.Length && lattice.Bars[bar].Held is not null;
    }

    /// <summary>What is to be set.</summary>
    public Plan Plan() => new Planner(written, brief, feel, metre, pace).Make();

    private double Usual => Feels.Tempo(feel, Math.Max(brief.LeftLevel, _hasNotes ? brief.RightLevel : 0));

    private RightLine Right(Plan plan, Stage stage, Ragged ragged, HomePositions homes, CancellationToken cancellation)
    {
        if (!_hasNotes)
        {
            return new RightLine([], 0);
        }
        var lattice = stage.Lattice;
        var line = Filling.Solve(stage, ragged, homes, cancellation);
        var thinBars = _settled.ThinBars.ToHashSet();
        var right = Texturing.Solve(
            stage,
            line,
            homes,
            _settled.RightStrain,
            _settled.Thin(lattice, line),
            cancellation
        );
        right = Obbligato.Add(stage, Tremolo.Add(stage, right, homes), cancellation);
        right = Accompanying.Add(stage, right, plan.VoiceOctaves, homes, _settled.RightStrain, thinBars, cancellation);
        return Crushing.Add(stage, right);
    }

    // The price of runs is found once: what is set again after the judge's word differs in few bars.
    private LeftLine Left(Stage stage, RightLine right, HomePositions homes, CancellationToken cancellation)
    {
        var left = _settled.RunPrice is { } price
            ? Striding.Solve(stage, right, homes, _settled.LeftStrain, price, cancellation)
            : Striding.Solve(stage, right, homes, _settled.LeftStrain, cancellation);
        _settled = _settled with { RunPrice = left.RunPrice };
        return left;
    }

    // What the judge refused: strain costs more, thick bars are thinned, and what stays is slowed where the brief allows.
    private bool Relax(Verdict verdict, double wanted)
    {
        var before = _settled;
        var hands = verdict.Faults.Where(IsStrain).Select(f => f.Hand).ToHashSet();
        _settled = _settled with
        {
            LeftStrain = Dearer(_settled.LeftStrain, hands.Contains(Hand.Left)),
            RightStrain = Dearer(_settled.RightStrain, hands.Contains(Hand.Right)),
        };
        var slower = false;
        var thin = new SortedSet<int>(_settled.ThinBars);
        foreach (var fault in verdict.Faults.Where(f => !IsStrain(f)))
        {
            var thinned =
                (fault.Hand == Hand.Right || fault.Kind == FaultKind.SharedKey)
                && (thin.Add(fault.Bar) | (fault.Bar > 0 && thin.Add(fault.Bar - 1)));
            slower |= !thinned;
        }
        _settled = thin.Count > _settled.ThinBars.Count ? _settled with { ThinBars = thin.ToValueList() } : _settled;
        var tempo = _settled.BeatsPerMinute ?? wanted;
        if ((slower || _settled == before) && brief.BeatsPerMinute is null && tempo * SlowerBy >= wanted * SlowestShare)
        {
            // What was thinned in vain may be full again.
            _settled = _settled with
            {
                BeatsPerMinute = Math.Floor(tempo * SlowerBy),
                ThinBars = [],
            };
        }
        return _settled != before;
    }

    private static long Dearer(long strain, bool refused) => refused && strain < DearestStrain ? strain * 4 : strain;

    private static bool IsStrain(Fault fault) => fault.Kind is FaultKind.StrainedOften or FaultKind.StrainedTwice;

    // What was asked for and is not there: given up on the judge's word, or never found.
    private void Tell(Lattice asked, Lattice lattice, RightLine right, LeftLine left)
    {
        var lefts = LeftPlayed.FellBack(lattice, left).ToHashSet();
        var rights = _hasNotes ? RightPlayed.FellBack(lattice, right, left).ToHashSet() : [];
        foreach (var manner in Enum.GetValues<LeftManner>())
        {
            Tell(
                Manners.Left.WordOf(manner),
                asked,
                i => asked.Bars[i].Treatment.Left == manner,
                i => lefts.Contains(i) || lattice.Bars[i].Treatment.Left != manner
            );
        }
        foreach (var manner in Enum.GetValues<RightManner>())
        {
            Tell(
                Manners.Right.WordOf(manner),
                asked,
                i => asked.Bars[i].Treatment.Right == manner,
                i => rights.Contains(i) || lattice.Bars[i].Treatment.Right != manner
            );
        }
    }

    private void Tell(string word, Lattice asked, Func<int, bool> isAsked, Func<int, bool> fell)
    {
        var bars = Enumerable.Range(0, asked.Bars.Length).Where(isAsked).ToList();
        var fallen = bars.Where(fell).Select(i => asked.Bars[i].Number).ToValueList();
        if (fallen.Count > 0)
        {
            _fallen.Add(new MannerFallen(word, bars.Count, fallen));
            Note(ArrangingMessages.FellBack(_fallen[^1]));
        }
    }

    private Arrangement Finished(
        Solution solution,
        Score score,
        Verdict verdict,
        double wanted,
        double tempo,
        NoteValue unit
    )
    {
        var (lattice, ragged, settled) = (solution.Lattice, solution.Ragged, solution.Settled);
        if (tempo < wanted)
        {
            Note(ArrangingMessages.Slower(wanted, tempo));
        }
        if (settled.ThinBars.Count > 0 && !score.LeftHandOnly)
        {
            Note(ArrangingMessages.Thinned([.. settled.ThinBars.Select(i => lattice.Bars[i].Number)]));
        }
        if (Math.Max(settled.LeftStrain, settled.RightStrain) is > Settled.UsualStrain and var price)
        {
            Note(ArrangingMessages.StrainPrice(price / Settled.UsualStrain));
        }
        var (early, late) = Ragging.Displaced(lattice, ragged);
        var tune = Kept(lattice, solution.Right, solution.Left) with
        {
            Early = early,
            Late = late,
            Fillers = solution.Right.Notes.Count(n => n.IsFiller),
        };
        if (tune.Elsewhere > 0 && !score.LeftHandOnly)
        {
            Note(ArrangingMessages.PutElsewhere(tune.Elsewhere));
        }
        var leftOut = lattice.Bars.Sum(b => b.Held?.LeftOut.Count ?? 0);
        if (leftOut > 0)
        {
            Note(KeepingMessages.LeftOut(leftOut));
        }
        var quarters = Timeline.PlayOrder(score).Sum(i => score.Bars[i].Length.ToQuarters());
        var seconds = quarters * 60 / (tempo * unit.Length.ToQuarters());
        if (brief.Seconds is { } asked)
        {
            Note(FormMessages.Length(asked, seconds, brief.BeatsPerMinute ?? Usual, tempo));
        }
        return new Arrangement
        {
            Score = score,
            Brief = brief with
            {
                Feel = feel,
                BeatsPerMinute = tempo,
                Tonic = lattice.Bars[0].Key.Tonic,
                Form = solution.Plan.Fitted.Form,
            },
            Feel = feel,
            Key = lattice.Bars[0].Key,
            BeatsPerMinute = tempo,
            BeatUnit = unit,
            Seconds = seconds,
            Choruses = score.LeftHandOnly ? [] : Choruses.Of(lattice, score),
            HarmonyChanges = solution.Plan.HarmonyChanges,
            Verdict = verdict,
            SungLowest = solution.Plan.Sung?.Lowest,
            SungHighest = solution.Plan.Sung?.Highest,
            Tune = score.LeftHandOnly || solution.Plan.Sung is not null ? new TuneKept(0, 0, 0, 0, 0) : tune,
            FellBack = _fallen.ToValueList(),
            Notes = _notes.ToValueList(),
            Solution = solution,
        };
    }

    private bool IsWordy => brief.Lyrics || brief.Singer is not null;

    // The tune's own notes, not those that a form has added.
    private static TuneKept Kept(Lattice lattice, RightLine right, LeftLine left)
    {
        var bars = lattice.Notes.Select(n => lattice.Bars[lattice.BarAt(n.Start)].Treatment).ToArray();
        var above = right.Notes.Where(n => !n.IsFiller && !bars[n.Tune].IsAdded).ToList();
        var thumb = left.Notes.Count(n => n.Slot.Thumb is { } note && !bars[note].IsAdded);
        return new TuneKept(bars.Count(t => !t.IsAdded) + lattice.LostNotes, above.Count + thumb, 0, 0, 0)
        {
            LeftOut = bars.Count(t => !t.IsAdded && t.Right is RightManner.Silent or RightManner.FillsOnly),
            Elsewhere = thumb + above.Count(n => n.UnderHeld),
        };
    }

    private void Note(string message) => _notes.Add(new Diagnostic(Severity.Note, Place.Whole, message));
}
