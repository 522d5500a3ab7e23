using Stridewright.Arranging;
using Stridewright.Music;
using Stridewright.Workbench.Inputs;
using Stridewright.Workbench.Outputs;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>Measures the style of two-staff scores, one after the other, and draws it where asked for.</summary>
internal sealed class ProfileScores(ITools tools, ProfileRequest request)
{
    private static readonly string[] Endings = [".png", ".svg", ".pdf"];
    private readonly List<ProfiledScore> _scores = [];
    private readonly List<Problem> _problems = [];

    public ProfileReport Run(CancellationToken cancellation)
    {
        var cancelled = false;
        if (request.Plot is { } plot && !Endings.Contains(Path.GetExtension(plot).ToLowerInvariant()))
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
        var (folder, ending) = (Path.GetDirectoryName(plot), Path.GetExtension(plot));
        var outputs = new OutputFiles(
            string.IsNullOrEmpty(folder) ? "." : folder,
            request.Replace,
            request.Scores.Select(Path.GetFullPath)
        );
        var name = Path.GetFileNameWithoutExtension(plot);
        var files = _scores.SelectMany(
            (score, i) =>
                Files(
                    tools.Draw(StyleCharts.Of(score), request.Paper),
                    _scores.Count == 1 ? name : FormattableString.Invariant($"{name}-{i + 1}"),
                    ending
                )
        );
        if (outputs.TryWrite(files, cancellation, out var problem) is { } written)
        {
            return written;
        }
        _problems.Add(new Problem("plot", null, "", problem));
        return [];
    }

    private static IEnumerable<OutputFile> Files(EngravedPages pages, string name, string ending)
    {
        if (ending.Equals(".pdf", StringComparison.OrdinalIgnoreCase))
        {
            yield return new OutputFile(name + ending, pages.Pdf());
            yield break;
        }
        for (var page = 0; page < pages.Svg.Count; page++)
        {
            var file = pages.Svg.Count == 1 ? name : FormattableString.Invariant($"{name}-page-{page + 1}");
            var isSvg = ending.Equals(".svg", StringComparison.OrdinalIgnoreCase);
            yield return new OutputFile(file + ending, isSvg ? pages.Svg[page] : pages.Png(page));
        }
    }
}
