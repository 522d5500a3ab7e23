using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Workbench.Inputs;
using Stridewright.Workbench.Outputs;
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
        if (request.Plot is { } plot && !PlotFiles.IsName(plot))
        {
            _problems.Add(new Problem("plot", null, "", WorkbenchMessages.NoPicture(plot)));
        }
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
        var assessed = tools.Assess(score, hands, tempo);
        var judged = AssessedOf.Score(score, hands, tempo, assessed) with
        {
            Reading = findings.Concat(assessed.Verdict.Remarks).Select(ReportOf.Remark).ToValueList(),
        };
        if (request.Plot is { } plot)
        {
            judged = judged with { Drawings = Drawn(plot, judged, cancellation) };
        }
        return Report(assessed.Verdict.IsPlayable ? CheckOutcome.Playable : CheckOutcome.NotPlayable) with
        {
            Score = judged,
        };
    }

    private ValueList<WrittenFile> Drawn(string plot, JudgedScore judged, CancellationToken cancellation)
    {
        var pages = tools.Draw(EffortCharts.Of(request.Score, judged), Paper.A4);
        var written = PlotFiles.TryWrite(
            plot,
            [pages],
            request.Replace,
            [request.Score],
            cancellation,
            out var problem
        );
        if (written is null)
        {
            _problems.Add(new Problem("plot", null, "", problem));
        }
        return written ?? [];
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
