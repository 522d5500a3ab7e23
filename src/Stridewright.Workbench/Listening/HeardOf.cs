using Stridewright.Music;
using Stridewright.Practice.Listening;
using Stridewright.Practice.Listening.Reporting;
using Stridewright.Workbench.Practising;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>Puts what was heard into the plain words and numbers of a report.</summary>
internal static class HeardOf
{
    public static HeardTake Take(Alignment alignment, TakeReport report)
    {
        var played = report.Bars.Where(b => b.IsPlayed).ToList();
        return new()
        {
            Title = alignment.Score.Title,
            Asked = played.Sum(b => b.Asked),
            Played = alignment.Take.Notes.Count - alignment.Outside.Count,
            Outside = alignment.Outside.Count,
            Right = played.Sum(b => b.Right),
            Wrong = played.Sum(b => b.Wrong),
            WrongOctave = played.Sum(b => b.WrongOctave),
            Missing = played.Sum(b => b.Missing),
            Extra = report.Bars.Sum(b => b.Extra),
            BarsNotPlayed = report.Bars.Count(b => b.Asked > 0 && !b.IsPlayed),
            Jumps = report.Jumps,
            Alone = report.Alone is { } hand ? Words(hand) : null,
            QuartersPerMinute = Rounded(report.QuartersPerMinute, 1),
            AskedQuartersPerMinute = report.AskedQuartersPerMinute,
            LeftUnevenness = Rounded(report.LeftHand.Unevenness, 3),
            Drift = Rounded(report.LeftHand.Drift, 3),
            Anticipations = new(
                report.Ragging.Count,
                report.Ragging.Flattened,
                report.Ragging.TooEarly,
                Rounded(report.Ragging.MeanShare, 2)
            ),
            Swing = new(Math.Round(report.Swing.Asked, 2), Rounded(report.Swing.Played, 2), report.Swing.Pairs),
            Balance = new(
                Rounded(report.Balance.Bass, 1),
                Rounded(report.Balance.Chords, 1),
                Rounded(report.Balance.Tune, 1)
            ),
            Pedal = report.Pedal is { } pedal
                ? new(pedal.Presses, Math.Round(pedal.Share, 2), pedal.Asked, pedal.Answered, pedal.Blurred.Count)
                : null,
            Bars = report.Bars.Select(Bar).ToValueList(),
            Next = report.Next.Select(r => Remark(alignment.Score, r)).ToValueList(),
            Remarks = report.Remarks.Select(r => Remark(alignment.Score, r)).ToValueList(),
        };
    }

    private static HeardBarReport Bar(HeardBar bar) =>
        new(bar.Number, bar.Right, bar.Wrong, bar.Missing, bar.Extra, bar.IsPlayed, Rounded(bar.QuartersPerMinute, 1));

    private static HeardRemark Remark(ExpectedScore score, TakeRemark remark) =>
        new(
            KindOf(remark.Kind),
            score.Bars[remark.FirstBar].Bar.Number,
            score.Bars[remark.LastBar].Bar.Number,
            remark.Hand is { } hand ? Words(hand) : null,
            Math.Round(remark.Measured, 3),
            remark.Limit is { } limit ? new(limit.Words, limit.Value, limit.Unit, limit.Source) : null,
            remark.Message
        );

    /// <summary>Such as <c>wrong-notes</c>.</summary>
    public static string KindOf(RemarkKind kind) =>
        kind switch
        {
            RemarkKind.WrongNotes => "wrong-notes",
            RemarkKind.MissingNotes => "missing-notes",
            RemarkKind.ExtraNotes => "extra-notes",
            RemarkKind.Leap => "leap",
            RemarkKind.Unevenness => "unevenness",
            RemarkKind.Drift => "drift",
            RemarkKind.Flattened => "flattened",
            RemarkKind.TooEarly => "too-early",
            RemarkKind.Swing => "swing",
            RemarkKind.Spread => "spread",
            RemarkKind.Hesitation => "hesitation",
            RemarkKind.Pedal => "pedal",
            _ => "balance",
        };

    public static string Words(Hand hand) => hand == Hand.Right ? "right" : "left";

    /// <summary>What progress is read from.</summary>
    public static KeptHearing Kept(HeardTake heard) =>
        new()
        {
            Asked = heard.Asked,
            Right = heard.Right,
            Wrong = heard.Wrong,
            Missing = heard.Missing,
            Extra = heard.Extra,
            Bars = heard.Bars.Count(b => b.IsPlayed) + heard.BarsNotPlayed,
            BarsNotPlayed = heard.BarsNotPlayed,
            QuartersPerMinute = heard.QuartersPerMinute,
            AskedQuartersPerMinute = heard.AskedQuartersPerMinute,
            LeftUnevenness = heard.LeftUnevenness,
            Drift = heard.Drift,
            Next = heard.Next.Select(n => new KeptNext(n.Kind, n.FirstBar, n.LastBar, n.Message)).ToValueList(),
        };

    private static double? Rounded(double? value, int decimals) =>
        value is { } known ? Math.Round(known, decimals) : null;
}
