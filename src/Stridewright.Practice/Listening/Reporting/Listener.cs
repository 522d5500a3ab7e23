using Stridewright.Music;

namespace Stridewright.Practice.Listening.Reporting;

/// <summary>Hears an alignment as a teacher would: what was right, what was not, and what is worth saying.</summary>
public sealed class Listener
{
    private const int TwoBars = 2;
    private readonly ExpectedScore _score;
    private readonly Take _take;
    private readonly Alignment _alignment;
    private readonly HandStrokes _strokes;
    private readonly List<HandStroke> _both;
    private readonly BeatLine _line;
    private readonly Hand? _alone;
    private readonly AskedSwing _swing;

    private Listener(Alignment alignment)
    {
        (_alignment, _score, _take) = (alignment, alignment.Score, alignment.Take);
        _strokes = new HandStrokes(alignment);
        _both = Together(_strokes);
        _line = new BeatLine(_both);
        _alone = AloneOf(alignment);
        _swing = new AskedSwing(_score);
    }

    public static TakeReport Hear(Alignment alignment)
    {
        ArgumentNullException.ThrowIfNull(alignment);
        return new Listener(alignment).Report();
    }

    private TakeReport Report()
    {
        var isAnother = IsAnotherPiece();
        var wrong = isAnother ? [] : WrongNotes.Find(_alignment, WhenDue);
        var bars = BarCounting.Count(_alignment, wrong, _alone, TempoOf());
        var hesitations = Hesitations.Find(_both, BeatOf);
        var late = hesitations.Select(h => (h.After.Run, h.After.Beats)).ToHashSet();
        var uneven = Unevenness(s => late.Contains((s.Run, s.Beats)));
        var anticipations = RightHandMeasures.Anticipations(_strokes, _swing.Of);
        var ratios = RightHandMeasures.Swing(_strokes, UnitOf, PlaceOf);
        var report = new TakeReport
        {
            IsAnotherPiece = isAnother,
            Alone = _alone,
            Bars = bars,
            LeftHand = new LeftHandBeat(Median(uneven.Select(u => u.Value)), LeftHandMeasure.Drift(bars)),
            Ragging = new Ragging(
                anticipations.Count,
                anticipations.Count(IsFlattened),
                anticipations.Count(IsTooEarly),
                anticipations.Count == 0 ? null : anticipations.Average(a => a.Share)
            ),
            Swing = new SwingHeard(_swing.Of(0), Median(ratios), ratios.Count),
            Balance = BalanceMeasure.Of(_strokes, _take),
            QuartersPerMinute = Median(bars.Select(b => b.QuartersPerMinute).OfType<double>()),
            AskedQuartersPerMinute = AskedTempo(),
            Jumps = Math.Max(0, _alignment.Runs.Count - 1),
            Pedal = isAnother ? null : PedalMeasure.Of(_alignment, _strokes, _line),
        };
        if (isAnother)
        {
            return report;
        }
        var remarks = new RemarkMaking(_score, _take, report)
            .Wrong(wrong)
            .Missing(_alignment, wrong)
            .Uneven(uneven)
            .Anticipated(anticipations)
            .Spread(_strokes)
            .Hesitated(hesitations)
            .Whole()
            .Done();
        return RemarkChoice.Choose(report, remarks) with
        {
            Marks = new MarkMaking(_alignment, report)
                .Notes(wrong)
                .Strokes(anticipations, hesitations, _strokes)
                .Done(),
            Timing = new PlayedTrend(_alignment, _strokes).Points(),
        };
    }

    // By jumping to and fro bits of any piece can be found in any other: each jump counts against what it brings.
    private bool IsAnotherPiece()
    {
        var matches = _alignment.Pairs.Where(p => p.IsMatch).ToList();
        var found = matches.Count - Thresholds.NotesAJump.Value * (_alignment.Runs.Count - 1);
        var different = matches.Select(p => p.Expected).Distinct().Count();
        return matches.Count == 0
            || (
                found < Thresholds.AnotherPiece.Value * (_take.Notes.Count - _alignment.Outside.Count)
                && different < Thresholds.WholePiece.Value * _score.Notes.Count
            );
    }

    internal static bool IsFlattened(Anticipation a) => a.Share < Thresholds.Flattened.Value;

    internal static bool IsTooEarly(Anticipation a) => a.Share > Thresholds.TooEarly.Value;

    private static Hand? AloneOf(Alignment alignment)
    {
        var notes = alignment.Score.Notes;
        var played = alignment.Pairs.Where(p => p.IsMatch).Select(p => p.Expected!.Value).ToHashSet();
        double Share(Hand hand)
        {
            // Of the bars that were come through at all.
            var bars = played.Select(i => notes[i].Bar).ToHashSet();
            var asked = Enumerable
                .Range(0, notes.Count)
                .Where(i => notes[i].Hand == hand && bars.Contains(notes[i].Bar));
            var (all, heard) = (0, 0);
            foreach (var i in asked)
            {
                all++;
                heard += played.Contains(i) ? 1 : 0;
            }
            return all == 0 ? 1 : (double)heard / all;
        }
        var (right, left) = (Share(Hand.Right), Share(Hand.Left));
        return left < Thresholds.HandAlone.Value && right > left ? Hand.Right
            : right < Thresholds.HandAlone.Value && left > right ? Hand.Left
            : null;
    }

    // The strokes of both hands, those at one moment as one.
    private static List<HandStroke> Together(HandStrokes strokes) =>
        [
            .. strokes
                .Right.Concat(strokes.Left)
                .GroupBy(s => (s.Run, s.Beats))
                .Select(g => g.First() with { Onset = g.Average(s => s.Onset) })
                .OrderBy(s => s.Run)
                .ThenBy(s => s.Beats),
        ];

    private double? WhenDue(int expected)
    {
        var beats = _score.Notes[expected].Beats;
        for (var run = 0; run < _alignment.Runs.Count; run++)
        {
            if (
                beats >= _alignment.Runs[run].FirstBeats
                && beats <= _alignment.Runs[run].LastBeats
                && _line.At(run, beats) is { } due
            )
            {
                return due;
            }
        }
        return null;
    }

    private List<(int Bar, double Value)> Unevenness(Func<HandStroke, bool> isHesitation)
    {
        var byBars = _strokes.Left.GroupBy(s => s.Bar / TwoBars);
        var found = new List<(int, double)>();
        foreach (var bars in byBars)
        {
            if (LeftHandMeasure.Unevenness([.. bars], isHesitation) is { } value)
            {
                found.Add((bars.Key * TwoBars, value));
            }
        }
        return found;
    }

    private Dictionary<int, double> TempoOf()
    {
        var tempi = new Dictionary<int, List<double>>();
        for (var i = 1; i < _both.Count; i++)
        {
            var (a, b) = (_both[i - 1], _both[i]);
            if (a.Run == b.Run && b.Onset > a.Onset && b.Bar - a.Bar <= 1)
            {
                if (!tempi.TryGetValue(a.Bar, out var list))
                {
                    tempi[a.Bar] = list = [];
                }
                list.Add((b.Onset - a.Onset) / (b.Beats - a.Beats));
            }
        }
        return tempi.Where(t => t.Value.Count >= 2).ToDictionary(t => t.Key, t => 60 / Median(t.Value)!.Value);
    }

    private double? AskedTempo() =>
        _score.Bars.SelectMany(b => b.Bar.Directions).FirstOrDefault(d => d.QuartersPerMinute is not null)
            is { } direction
            ? direction.QuartersPerMinute
            : null;

    private double BeatOf(int bar) => _score.Bars[bar].Bar.Metre.Beat.ToQuarters();

    // The beat whose half is swung: a quarter, in 2/4 that is not swung an eighth.
    private double UnitOf(int bar) =>
        _swing.Of(bar) > 1 || _score.Bars[bar].Bar.Metre is not { Count: 2, Unit: 4 } ? 1 : 0.5;

    private double PlaceOf(HandStroke stroke) => _swing.PlaceOf(stroke.Bar, stroke.At);

    internal static double? Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToList();
        return sorted.Count == 0 ? null : (sorted[(sorted.Count - 1) / 2] + sorted[sorted.Count / 2]) / 2;
    }
}
