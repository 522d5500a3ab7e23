using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Workbench.Inputs;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>Judges one two-staff score for a pair of hands.</summary>
internal sealed class CheckScore(ITools tools, CheckRequest request)
{
    private readonly List<Problem> _problems = [];

    public CheckReport Run(CancellationToken cancellation)
    {
        var reader = new BriefReader(tools);
        var hands = reader.HandsOf(request.Span, request.OctaveWidth, reader.PlayerOf(request.Player)?.Hands);
        reader.TempoOf(request.BeatsPerMinute);
        _problems.AddRange(reader.Faults);
        if (_problems.Count > 0)
        {
            return Report(CheckOutcome.BadWish);
        }
        try
        {
            return Judged(hands, cancellation);
        }
        catch (OperationCanceledException)
        {
            return Report(CheckOutcome.Cancelled);
        }
#pragma warning disable CA1031 // A fault of the program reaches the person as a sentence.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            return Fail("", WorkbenchMessages.Internal(fault));
        }
    }

    private CheckReport Judged(PlayerHands hands, CancellationToken cancellation)
    {
        if (ScoreInput.Read(tools, request.Score, _problems, out var findings, cancellation) is not { } score)
        {
            return Report(CheckOutcome.Unreadable);
        }
        var tempo = request.BeatsPerMinute * ReportOf.MainMetre(score).Beat.ToQuarters();
        var verdict = tools.Judge(score, hands, tempo);
        return Report(verdict.IsPlayable ? CheckOutcome.Playable : CheckOutcome.NotPlayable) with
        {
            Score = new JudgedScore
            {
                Title = score.Title,
                Bars = ReportOf.CountedBars(score),
                Hands = ReportOf.Hands(hands),
                QuartersPerMinute = tempo,
                Effort = ReportOf.Effort(verdict.Effort),
                Spots = verdict.Faults.Select(fault => ReportOf.Spot(score, fault)).ToValueList(),
                Reading = findings.Concat(verdict.Remarks).Select(ReportOf.Remark).ToValueList(),
            },
        };
    }

    private CheckReport Report(CheckOutcome outcome) =>
        new()
        {
            Outcome = outcome,
            File = request.Score,
            Problems = _problems.ToValueList(),
        };

    private CheckReport Fail(string place, string message)
    {
        _problems.Add(new Problem(request.Score, null, place, message));
        return Report(CheckOutcome.Unreadable);
    }
}
