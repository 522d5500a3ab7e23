using Stridewright.Music;
using Stridewright.Practice.Listening;
using Stridewright.Practice.Listening.Reporting;
using Stridewright.Workbench.Practising;
using Stridewright.Workbench.Reports;
using Stridewright.Workbench.Sheets;

namespace Stridewright.Workbench.Listening;

/// <summary>One kept take, heard against a setting.</summary>
internal sealed class TakeHearing
{
    /// <summary>Seconds of a take before its first bar, where it was played to a click.</summary>
    public const double LeadIn = 1;

    // Speeds at which a rehearsal may begin, as shares of the printed tempo.
    private static readonly double[] Speeds = [0.5, 0.6, 0.7, 0.8, 0.9];

    private const double Slower = 0.8; // of what was played: slow enough to get it right (common practice)

    private readonly Score _score;
    private readonly KeptTake _kept;
    private readonly ExpectedScore _whole;
    private readonly Alignment _alignment;
    private readonly TakeReport _report;
    private readonly Lazy<HeardTake> _heard;

    private TakeHearing(Score score, KeptTake kept, ExpectedScore whole, Alignment alignment)
    {
        (_score, _kept, _whole, _alignment) = (score, kept, whole, alignment);
        _report = Listener.Hear(alignment);
        _heard = new(() =>
        {
            var heard = HeardOf.Take(_alignment, _report);
            return heard with { AskedQuartersPerMinute = _kept.Tempo ?? heard.AskedQuartersPerMinute };
        });
    }

    /// <summary>Null: the take has no notes that can be read.</summary>
    /// <param name="sheet">What is said of bars that it does not have is said of all.</param>
    public static TakeHearing? Of(ITools tools, Sheet sheet, KeptTake kept)
    {
        using var midi = new MemoryStream([.. kept.Midi], writable: false);
        if (tools.ReadTake(midi).Value is not { } played)
        {
            return null;
        }
        var (score, take) = (sheet.Score!, Take.Of(played));
        var whole = ExpectedScore.Of(ScoreNotes.Of(score));
        var wanted = TakeScope.HandOf(kept.Hand) is { } hand ? whole.In(hand) : whole;
        var isWanted = TakeScope.Bars(wanted, kept.Range) ?? (_ => true);
        var alignment = kept.Taps
            ? Taps.Align(Taps.Rhythm(wanted.Within(isWanted)), take, Due(tools, score, whole, isWanted, kept))
            : PartAligner.Align(wanted, isWanted, take);
        return new(score, kept, whole, alignment);
    }

    /// <summary>Printed tempo at the beginning, in quarters a minute.</summary>
    public static double TempoOf(Score score) =>
        score.Bars.SelectMany(b => b.Directions).Select(d => d.QuartersPerMinute).FirstOrDefault(t => t is not null)
        ?? Sound.Performer.DefaultTempo;

    public HeardTake Heard => _heard.Value;

    public TakeSeen Seen(string id)
    {
        var heard = Heard;
        var refusal = _report.IsAnotherPiece
            ? WorkbenchMessages.AnotherPiece(heard.Title, _alignment.Pairs.Count(p => p.IsMatch), heard.Played)
            : null;
        var played = _report.Bars.Where(b => b.IsPlayed).Select(b => b.Index).ToList();
        var placeOf = played.Index().ToDictionary(b => b.Item, b => b.Index);
        return new(
            ItemOf(id, _kept with { Heard = HeardOf.Kept(heard) }),
            heard,
            refusal,
            refusal is null ? HeardText.Summary(heard).ToValueList() : [],
            _report.Next.Select(Remark).ToValueList(),
            _report.Remarks.Where(r => !_report.Next.Contains(r)).Select(Remark).ToValueList(),
            _report.Marks.Select(Mark).ToValueList(),
            played.Select(b => new SeenBar(BarId(b), NumberOf(b))).ToValueList(),
            _report
                .Timing.Where(t => placeOf.ContainsKey(t.Bar))
                .Select(t => new SeenStroke(
                    HeardOf.Words(t.Hand),
                    placeOf[t.Bar],
                    Math.Round(Share(t), 4),
                    Math.Round(1000 * t.Late, 1)
                ))
                .ToValueList()
        );
    }

    /// <summary>The take as it sounds; taps sound as the notes they stand for.</summary>
    /// <param name="isAgainst">The score sounds with it, softly, at the tempo that was played.</param>
    public Heard Sounding(bool isAgainst) => new TakeSound(_whole, _alignment, _report).Heard(isAgainst, _kept.Taps);

    public static TakeItem ItemOf(string id, KeptTake kept) =>
        new(
            id,
            kept.At,
            kept.Title,
            kept.PlayerName,
            kept.Range,
            kept.Hand,
            kept.Taps,
            kept.Heard?.Asked,
            kept.Heard?.Right,
            kept.Heard?.QuartersPerMinute
        );

    // When each note is due by the click: as the setting is heard, from the first playing of the first bar.
    private static Func<ExpectedNote, double?> Due(
        ITools tools,
        Score score,
        ExpectedScore whole,
        Func<ExpectedBar, bool> isWanted,
        KeptTake kept
    )
    {
        var heard = Sheets.Heard.Of(score, tools.Perform(score));
        var times = heard.Notes.Where(n => n.Id is not null).ToLookup(n => n.Id!, n => n.At);
        var due = whole
            .Notes.GroupBy(n => n.Id)
            .SelectMany(g => g.OrderBy(n => n.Beats).Zip(times[g.Key]))
            .ToDictionary(n => (n.First.Id, n.First.Bar), n => n.Second);
        var (speed, first) = (
            (kept.Tempo ?? TempoOf(score)) / TempoOf(score),
            whole.Bars.ToList().FindIndex(b => isWanted(b))
        );
        var start = first >= 0 && first < heard.Bars.Count ? heard.Bars[first].At : 0;
        return note => due.TryGetValue((note.Id, note.Bar), out var at) ? LeadIn + (at - start) / speed : null;
    }

    private SeenRemark Remark(TakeRemark remark) =>
        new(
            HeardOf.KindOf(remark.Kind),
            remark.Message,
            BarId(remark.FirstBar),
            BarId(remark.LastBar),
            remark.Hand is { } hand ? HeardOf.Words(hand) : null,
            SpeedFor(remark)
        );

    private double SpeedFor(TakeRemark remark)
    {
        var played = Enumerable
            .Range(remark.FirstBar, remark.LastBar - remark.FirstBar + 1)
            .Select(b => _report.Bars[b].QuartersPerMinute)
            .OfType<double>()
            .DefaultIfEmpty(_report.QuartersPerMinute ?? TempoOf(_score))
            .Average();
        return Speeds.LastOrDefault(s => s <= Slower * played / TempoOf(_score), Speeds[0]);
    }

    private SeenMark Mark(TakeMark mark) =>
        new(
            Arranging.Words.Of(mark.Kind),
            BarId(mark.Bar),
            NumberOf(mark.Bar),
            mark.Hand is { } hand ? HeardOf.Words(hand) : null,
            mark.NoteId,
            mark.Words
        );

    private double Share(TimingPoint stroke)
    {
        var bar = _whole.Bars[stroke.Bar];
        return Math.Clamp((stroke.Beats - bar.Start) / (bar.End - bar.Start), 0, 1);
    }

    private string BarId(int bar) => _score.Bars[_whole.Bars[bar].Written].Id;

    private string NumberOf(int bar) => _whole.Bars[bar].Bar.Number;
}
