using Stridewright.Arranging;
using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Workbench.Reports;

/// <summary>Puts an assessment into the plain words and numbers of a report.</summary>
internal static class AssessedOf
{
    public static JudgedScore Score(Score score, PlayerHands hands, double? tempo, Assessment assessed) =>
        new()
        {
            Title = score.Title,
            Bars = ReportOf.CountedBars(score),
            Hands = ReportOf.Hands(hands),
            QuartersPerMinute = tempo,
            Effort = ReportOf.Effort(assessed.Verdict.Effort),
            Spots = assessed.Verdict.Faults.Select(fault => ReportOf.Spot(score, fault)).ToValueList(),
            BarEfforts = assessed
                .Verdict.Effort.Bars.Select(b => new BarEffortReport(b.Number, b.Value, b.Right, b.Left))
                .ToValueList(),
            Hardest = assessed
                .Hardest.Select(h => new HardSpotReport(h.Bar.Number, h.Bar.Value, h.Bar.Right, h.Bar.Left, h.Why))
                .ToValueList(),
            Comfortable = assessed.Comfortable is { } c
                ? new ComfortReport(c.Speed, c.QuartersPerMinute, Words.Of(c.Hand), Words.Of(c.Binding), c.Bar)
                : null,
            RightSpan = new(assessed.Right.PlayableMm, assessed.Right.FreeMm),
            LeftSpan = new(assessed.Left.PlayableMm, assessed.Left.FreeMm),
            Change = assessed.Change is { } change
                ? new ChangeReport(Words.Of(change.Kind), change.Place, Words.Of(change.Hand), change.Message)
                : null,
            Cautions = assessed.Cautions.Select(c => new CautionReport(c.Sentence, c.Source)).ToValueList(),
        };
}
