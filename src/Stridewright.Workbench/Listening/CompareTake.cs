using System.Text;
using Stridewright.Music;
using Stridewright.Practice.Listening;
using Stridewright.Workbench.Inputs;
using Stridewright.Workbench.Outputs;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>Hears one take against one score and writes what was heard.</summary>
internal sealed class CompareTake(ITools tools, CompareRequest request)
{
    private readonly List<Problem> _problems = [];

    public CompareReport Run(CancellationToken cancellation)
    {
        if (File.Exists(request.OutputFolder))
        {
            return Fail("out", WorkbenchMessages.OutIsFile(request.OutputFolder), CompareOutcome.BadWish);
        }
        try
        {
            return Compared(cancellation);
        }
        catch (OperationCanceledException)
        {
            return Report(CompareOutcome.Cancelled);
        }
#pragma warning disable CA1031 // A fault of the program reaches the person as a sentence.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            return Fail(request.Score, WorkbenchMessages.Internal(fault), CompareOutcome.Unreadable);
        }
    }

    private CompareReport Compared(CancellationToken cancellation)
    {
        var notes = NotesInput.Read(tools, request.Score, _problems, out var ofScore, cancellation);
        var played = TakeInput.Read(tools, request.Take, _problems, out var ofTake, cancellation);
        if (notes is null || played is null)
        {
            return Report(CompareOutcome.Unreadable);
        }
        var score = ExpectedScore.Of(notes);
        var take = Take.Of(played);
        var alignment = Aligner.Align(score, take);
        var name = OutputNames.OfFile(request.Take);
        var outputs = new OutputFiles(
            request.OutputFolder,
            request.Replace,
            [Path.GetFullPath(request.Score), Path.GetFullPath(request.Take)]
        );
        var files = new[]
        {
            new OutputFile(name + ".alignment.tsv", Encoding.UTF8.GetBytes(AlignmentText.Write(alignment))),
        };
        if (outputs.TryWrite(files, cancellation, out var problem) is not { } written)
        {
            return Fail("out", problem, CompareOutcome.Unreadable);
        }
        return Report(CompareOutcome.Compared) with
        {
            Heard = Heard(alignment) with { Reading = ofScore.Concat(ofTake).Select(ReportOf.Remark).ToValueList() },
            Outputs = written,
        };
    }

    private static HeardTake Heard(Alignment alignment) =>
        new()
        {
            Title = alignment.Score.Title,
            Notes = alignment.Score.Notes.Count,
            Played = alignment.Take.Notes.Count,
            Matched = alignment.Pairs.Count(p => p.IsMatch),
            Missing = alignment.Pairs.Count(p => p.Played is null),
            Extra = alignment.Pairs.Count(p => p.Expected is null),
        };

    private CompareReport Report(CompareOutcome outcome) =>
        new()
        {
            Outcome = outcome,
            Score = request.Score,
            Take = request.Take,
            Problems = _problems.ToValueList(),
        };

    private CompareReport Fail(string file, string message, CompareOutcome outcome)
    {
        _problems.Add(new Problem(file, null, "", message));
        return Report(outcome);
    }
}
