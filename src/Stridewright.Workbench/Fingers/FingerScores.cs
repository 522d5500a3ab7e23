using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Workbench.Inputs;
using Stridewright.Workbench.Outputs;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>Fingers two-staff scores and writes them, one after the other; one that fails is reported and the run goes
/// on.</summary>
internal sealed class FingerScores(ITools tools, FingerRequest request)
{
    private readonly List<FingeredFile> _written = [];
    private readonly List<Problem> _problems = [];
    private readonly OutputNames _names = new();
    private readonly ScoreFiles _files = new(tools, request.Formats);

    public FingerReport Run(CancellationToken cancellation)
    {
        var reader = new BriefReader(tools);
        var hands = reader.HandsOf(request.Span, request.OctaveWidth, reader.PlayerOf(request.Player)?.Hands);
        var options = new FingeringOptions
        {
            Density = reader.DensityOf(request.Density),
            Keep = reader.KeepOf(request.Keep),
        };
        reader.TempoOf(request.BeatsPerMinute);
        if (reader.Faults.Count > 0)
        {
            return new FingerReport { IsBadWish = true, Problems = reader.Faults };
        }
        if (File.Exists(request.OutputFolder))
        {
            Fail("out", "", WorkbenchMessages.OutIsFile(request.OutputFolder));
            return Report(cancelled: false);
        }
        try
        {
            var folder = Path.GetFullPath(request.OutputFolder);
            var inputs = new InputFiles(request.Scores, folder, cancellation, scoresOnly: true);
            _problems.AddRange(inputs.Problems);
            var outputs = new OutputFiles(request.OutputFolder, request.Replace, inputs.Files.Select(f => f.FullPath));
            foreach (var input in inputs.Files)
            {
                Guarded(input, hands, options, outputs, cancellation);
            }
        }
        catch (OperationCanceledException)
        {
            return Report(cancelled: true);
        }
        return Report(cancelled: false);
    }

    private FingerReport Report(bool cancelled) =>
        new()
        {
            Written = _written.ToValueList(),
            Problems = _problems.ToValueList(),
            Cancelled = cancelled,
        };

    private void Guarded(
        InputFile input,
        PlayerHands hands,
        FingeringOptions options,
        OutputFiles outputs,
        CancellationToken cancellation
    )
    {
        try
        {
            cancellation.ThrowIfCancellationRequested();
            Finger(input, hands, options, outputs, cancellation);
        }
        catch (OperationCanceledException)
        {
            throw;
        }
#pragma warning disable CA1031 // A fault of the program reaches the person as a sentence.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            Fail(input.Name, "", WorkbenchMessages.Internal(fault));
        }
    }

    private void Finger(
        InputFile input,
        PlayerHands hands,
        FingeringOptions options,
        OutputFiles outputs,
        CancellationToken cancellation
    )
    {
        if (
            ScoreInput.Read(tools, input.Name, _problems, out var findings, out var bytes, cancellation)
            is not { } score
        )
        {
            return;
        }
        // The file itself gets the fingers where it can, so that all that is not read of it stays.
        var file = tools.FingersIn(bytes);
        if (file is not null)
        {
            using var named = new MemoryStream(file.Named(), writable: false);
            score = tools.ReadMusicXmlScore(named).Value ?? score;
        }
        var tempo = request.BeatsPerMinute * ReportOf.MainMetre(score).Beat.ToQuarters();
        var made = tools.Finger(score, hands, options with { QuartersPerMinute = tempo }, cancellation);
        var contents = _files.Of(
            _names.Take(OutputNames.OfFile(input.FullPath)),
            tools.ToMusicXml(made.Score),
            made.Score,
            new PageWish(request.Paper),
            cancellation,
            out _,
            out var problem,
            file?.With(made.Score)
        );
        if (contents is null)
        {
            Fail(input.Name, "", problem);
        }
        else if (outputs.TryWrite(contents, cancellation, out problem) is { } written)
        {
            _written.Add(FingersOf.Report(input.Name, made, hands, findings, written));
        }
        else
        {
            Fail("out", "", problem);
        }
    }

    private void Fail(string file, string place, string message) =>
        _problems.Add(new Problem(file, null, place, message));
}
