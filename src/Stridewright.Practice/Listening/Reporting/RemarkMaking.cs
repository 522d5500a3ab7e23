using Stridewright.Music;

namespace Stridewright.Practice.Listening.Reporting;

/// <summary>Puts what was measured into remarks, one for each spot and kind.</summary>
internal sealed class RemarkMaking(ExpectedScore score, Take take, TakeReport report)
{
    // How much a fault matters against others: what stops the music before what blurs it (common practice).
    private const double WrongWeight = 1;
    private const double LeapWeight = 1.5;
    private const double MissingWeight = 0.8;
    private const double ExtraWeight = 0.6;
    private const double HesitationWeight = 2;
    private const double UnevenWeight = 1.5;
    private const double FlattenedWeight = 1.2;
    private const double EarlyWeight = 0.8;
    private const double SpreadWeight = 0.4;
    private const double BlurredWeight = 0.5;
    private const double WholeWeight = 2;

    private readonly List<TakeRemark> _remarks = [];
    private readonly Dictionary<int, int> _leaps = LeapsOf(score);
    private readonly Dictionary<(Hand Hand, double Beats), int> _strokes = score
        .Notes.CountBy(n => (n.Hand, n.Beats))
        .ToDictionary();

    public IReadOnlyList<TakeRemark> Done() => _remarks;

    public RemarkMaking Wrong(IReadOnlyList<WrongNote> wrong)
    {
        foreach (
            var spot in wrong
                .GroupBy(w => (score.Notes[w.Expected].Bar, score.Notes[w.Expected].Hand))
                .OrderBy(g => g.Key)
        )
        {
            var (bar, hand) = spot.Key;
            // A finger that slips inside a chord is no missed leap: half of the chord at least is.
            var leaps = spot.Where(w => _leaps.ContainsKey(w.Expected))
                .GroupBy(w => score.Notes[w.Expected].Beats)
                .Where(g => 2 * g.Count() >= _strokes[(hand, g.Key)])
                .SelectMany(g => g)
                .ToList();
            var octaves = spot.Except(leaps).Where(w => w.IsOctave).ToList();
            var others = spot.Except(leaps).Except(octaves).ToList();
            if (leaps.Count > 0)
            {
                var far = leaps.MaxBy(w => Math.Abs(w.Steps))!;
                var message = ListeningMessages.Leap(Where(bar), hand, score.Notes[far.Expected].Key, far.Steps);
                Add(
                    RemarkKind.Leap,
                    bar,
                    bar,
                    hand,
                    Math.Abs(far.Steps),
                    Thresholds.Leap,
                    LeapWeight * leaps.Count,
                    message
                );
            }
            if (octaves.Count > 0)
            {
                var message = ListeningMessages.WrongOctave(Where(bar), hand, octaves.Count);
                Add(RemarkKind.WrongNotes, bar, bar, hand, octaves.Count, null, WrongWeight * octaves.Count, message);
            }
            if (others.Count > 0)
            {
                var notes = others.ConvertAll(w => (score.Notes[w.Expected].Key, take.Notes[w.Played].Key));
                var message = ListeningMessages.Wrong(Where(bar), hand, notes);
                Add(RemarkKind.WrongNotes, bar, bar, hand, others.Count, null, WrongWeight * others.Count, message);
            }
        }
        return this;
    }

    /// <summary>Notes missing in bars that were played, and keys that stand for none.</summary>
    public RemarkMaking Missing(Alignment alignment, IReadOnlyList<WrongNote> wrong)
    {
        var replaced = wrong.Select(w => w.Expected).ToHashSet();
        var missing = Reporting
            .Missing.Notes(alignment, report)
            .Where(n => !replaced.Contains(n.Index))
            .Select(n => n.Note);
        foreach (var spot in missing.GroupBy(n => (n.Bar, n.Hand)).OrderBy(g => g.Key))
        {
            var count = spot.Count();
            var message = ListeningMessages.Missing(Where(spot.Key.Bar), spot.Key.Hand, count);
            Add(
                RemarkKind.MissingNotes,
                spot.Key.Bar,
                spot.Key.Bar,
                spot.Key.Hand,
                count,
                null,
                MissingWeight * count,
                message
            );
        }
        foreach (var bar in report.Bars.Where(b => b.Extra > 0))
        {
            var message = ListeningMessages.Extra(Where(bar.Index), bar.Extra);
            Add(RemarkKind.ExtraNotes, bar.Index, bar.Index, null, bar.Extra, null, ExtraWeight * bar.Extra, message);
        }
        return this;
    }

    public RemarkMaking Uneven(IEnumerable<(int Bar, double Value)> stretches)
    {
        foreach (var (bar, value) in stretches.Where(s => s.Value > Thresholds.Unevenness.Value))
        {
            var last = Math.Min(bar + 1, score.Bars.Count - 1);
            var weight = UnevenWeight * value / Thresholds.Unevenness.Value;
            var message = ListeningMessages.Uneven(Where(bar, last), value);
            Add(RemarkKind.Unevenness, bar, last, Hand.Left, value, Thresholds.Unevenness, weight, message);
        }
        return this;
    }

    public RemarkMaking Anticipated(IEnumerable<Anticipation> anticipations)
    {
        foreach (var bar in anticipations.GroupBy(a => a.Bar))
        {
            var (flat, early, count) = (bar.Count(Listener.IsFlattened), bar.Count(Listener.IsTooEarly), bar.Count());
            if (flat > 0)
            {
                var message = ListeningMessages.Flattened(Where(bar.Key), flat, count);
                var share = bar.Min(a => a.Share);
                Add(
                    RemarkKind.Flattened,
                    bar.Key,
                    bar.Key,
                    Hand.Right,
                    share,
                    Thresholds.Flattened,
                    FlattenedWeight * flat,
                    message
                );
            }
            if (early > 0)
            {
                var message = ListeningMessages.TooEarly(Where(bar.Key), early, count);
                var share = bar.Max(a => a.Share);
                Add(
                    RemarkKind.TooEarly,
                    bar.Key,
                    bar.Key,
                    Hand.Right,
                    share,
                    Thresholds.TooEarly,
                    EarlyWeight * early,
                    message
                );
            }
        }
        return this;
    }

    public RemarkMaking Spread(HandStrokes strokes)
    {
        foreach (var hand in (Hand[])[Hand.Right, Hand.Left])
        {
            var broken = strokes.Of(hand).Where(s => !s.Rolled && s.Spread > Thresholds.Spread.Value);
            foreach (var bar in broken.GroupBy(s => s.Bar))
            {
                var (count, most) = (bar.Count(), bar.Max(s => s.Spread));
                var message = ListeningMessages.Spread(Where(bar.Key), hand, count, most);
                Add(RemarkKind.Spread, bar.Key, bar.Key, hand, most, Thresholds.Spread, SpreadWeight * count, message);
            }
        }
        return this;
    }

    public RemarkMaking Hesitated(IEnumerable<Hesitation> hesitations)
    {
        foreach (var hesitation in hesitations)
        {
            var after = hesitation.After;
            var leap = score
                .Notes.Index()
                .FirstOrDefault(n => _leaps.ContainsKey(n.Index) && n.Item.Beats == after.Beats);
            var before = leap.Item is { } note ? ListeningMessages.BeforeLeap(note.Hand, note.Key) : "";
            var message = ListeningMessages.Hesitation(Where(after.Bar), hesitation.Beats, before);
            var weight = HesitationWeight * Math.Min(2, hesitation.Beats);
            Add(
                RemarkKind.Hesitation,
                after.Bar,
                after.Bar,
                null,
                hesitation.Beats,
                Thresholds.Hesitation,
                weight,
                message
            );
        }
        return this;
    }

    /// <summary>What is about the whole take stands at its first bar.</summary>
    public RemarkMaking Whole()
    {
        var played = report.Bars.Where(b => b.IsPlayed).Select(b => b.Index).DefaultIfEmpty().ToList();
        var (first, last) = (played.Min(), played.Max());
        if (report.LeftHand.Drift is { } drift && Math.Abs(drift) > Thresholds.Drift.Value)
        {
            var tempi = report.Bars.Select(b => b.QuartersPerMinute).OfType<double>().ToList();
            var begin = tempi.Average() / (1 + drift / 2);
            var message = ListeningMessages.Drift(drift, begin, begin * (1 + drift));
            Add(RemarkKind.Drift, first, last, null, drift, Thresholds.Drift, WholeWeight, message);
        }
        if (report.Swing is { Played: { } swing, Asked: > 1 } asked && report.Alone != Hand.Left)
        {
            var off = Math.Max(swing / asked.Asked, asked.Asked / swing);
            if (off > Thresholds.SwingOff.Value)
            {
                var message = ListeningMessages.Swing(swing, asked.Asked);
                Add(RemarkKind.Swing, first, last, Hand.Right, swing, Thresholds.SwingOff, WholeWeight, message);
            }
        }
        if (report.Balance is { Chords: { } chords, Tune: { } tune } && chords - tune > Thresholds.Balance.Value)
        {
            var message = ListeningMessages.Balance(chords, tune);
            Add(RemarkKind.Balance, first, last, Hand.Left, chords - tune, Thresholds.Balance, WholeWeight, message);
        }
        if (report.Pedal is { Blurred: { Count: > 0 } blurred })
        {
            var message = ListeningMessages.Blurred(blurred.Select(b => score.Bars[b].Bar.Number).Distinct().ToList());
            var weight = BlurredWeight * blurred.Count;
            Add(RemarkKind.Pedal, blurred[0], blurred[^1], null, blurred.Count, Thresholds.Blurred, weight, message);
        }
        else if (report.Pedal is { } pedal && 2 * pedal.Answered < pedal.Asked)
        {
            var message = ListeningMessages.PedalAsked(pedal.Asked, pedal.Answered);
            Add(RemarkKind.Pedal, first, last, null, pedal.Answered, null, SpreadWeight, message);
        }
        return this;
    }

    // Notes that a hand reaches by a leap, and how far it is, in semitones: the left hand by its lowest notes, the right
    // by its highest.
    private static Dictionary<int, int> LeapsOf(ExpectedScore score)
    {
        var leaps = new Dictionary<int, int>();
        foreach (var hand in (Hand[])[Hand.Right, Hand.Left])
        {
            int? before = null;
            var strokes = score
                .Notes.Index()
                .Where(n => n.Item.Hand == hand && n.Item.Grace == 0)
                .GroupBy(n => n.Item.Beats);
            foreach (var stroke in strokes)
            {
                var here = hand == Hand.Left ? stroke.Min(n => n.Item.Key) : stroke.Max(n => n.Item.Key);
                if (before is { } from && Math.Abs(here - from) >= Thresholds.Leap.Value)
                {
                    foreach (var note in stroke)
                    {
                        leaps[note.Index] = here - from;
                    }
                }
                before = here;
            }
        }
        return leaps;
    }

    private string Where(int first, int last) =>
        ListeningMessages.Bar(score.Bars[first].Bar.Number, score.Bars[last].Bar.Number);

    private string Where(int bar) => Where(bar, bar);

    private void Add(
        RemarkKind kind,
        int first,
        int last,
        Hand? hand,
        double measured,
        Threshold? limit,
        double weight,
        string message
    ) => _remarks.Add(new TakeRemark(kind, first, last, hand, measured, limit, weight, message));
}
