using Stridewright.Arranging;
using Stridewright.Music;
using Stridewright.Workbench.Inputs;
using Stridewright.Workbench.Outputs;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>Measures the style of two-staff scores, one after the other, and draws it where asked for.</summary>
internal sealed class ProfileScores(ITools tools, ProfileRequest request)
{
    private readonly List<ProfiledScore> _scores = [];
    private readonly List<Problem> _problems = [];

    public ProfileReport Run(CancellationToken cancellation)
    {
        var cancelled = false;
        if (request.Plot is { } plot && !PlotFiles.IsName(plot))
        {
            _problems.Add(new Problem("plot", null, "", WorkbenchMessages.NoPicture(plot)));
        }
        foreach (var file in _problems.Count == 0 ? request.Scores : [])
        {
            try
            {
                cancellation.ThrowIfCancellationRequested();
                if (ScoreInput.Read(tools, file, _problems, out var findings, cancellation) is { } score)
                {
                    var reading = findings.Select(ReportOf.Remark).ToValueList();
                    _scores.Add(new ProfiledScore(file, score.Title, ReportOf.Style(StyleMeasure.Of(score)), reading));
                }
            }
            catch (OperationCanceledException)
            {
                cancelled = true;
                break;
            }
#pragma warning disable CA1031 // A fault of the program reaches the person as a sentence.
            catch (Exception fault)
#pragma warning restore CA1031
            {
                _problems.Add(new Problem(file, null, "", WorkbenchMessages.Internal(fault)));
            }
        }
        try
        {
            return Report(request.Plot is null || cancelled ? [] : Drawings(request.Plot, cancellation), cancelled);
        }
        catch (OperationCanceledException)
        {
            return Report([], cancelled: true);
        }
    }

    private ProfileReport Report(ValueList<WrittenFile> drawings, bool cancelled) =>
        new()
        {
            Scores = _scores.ToValueList(),
            Drawings = drawings,
            Problems = _problems.ToValueList(),
            Cancelled = cancelled,
        };

    private ValueList<WrittenFile> Drawings(string plot, CancellationToken cancellation)
    {
        var pages = _scores.Select(score => tools.Draw(StyleCharts.Of(score), request.Paper)).ToList();
        var written = PlotFiles.TryWrite(plot, pages, request.Replace, request.Scores, cancellation, out var problem);
        if (written is null)
        {
            _problems.Add(new Problem("plot", null, "", problem));
        }
        return written ?? [];
    }
}
