using Stridewright.Arranging;
using Stridewright.Music;
using Stridewright.Workbench.Inputs;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>Measures the style of two-staff scores, one after the other.</summary>
internal sealed class ProfileScores(ITools tools, IReadOnlyList<string> files)
{
    public ProfileReport Run(CancellationToken cancellation)
    {
        var (scores, problems, cancelled) = (new List<ProfiledScore>(), new List<Problem>(), false);
        foreach (var file in files)
        {
            try
            {
                cancellation.ThrowIfCancellationRequested();
                if (ScoreInput.Read(tools, file, problems, out var findings, cancellation) is { } score)
                {
                    var reading = findings.Select(ReportOf.Remark).ToValueList();
                    scores.Add(new ProfiledScore(file, score.Title, ReportOf.Style(StyleMeasure.Of(score)), reading));
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
                problems.Add(new Problem(file, null, "", WorkbenchMessages.Internal(fault)));
            }
        }
        return new ProfileReport
        {
            Scores = scores.ToValueList(),
            Problems = problems.ToValueList(),
            Cancelled = cancelled,
        };
    }
}
