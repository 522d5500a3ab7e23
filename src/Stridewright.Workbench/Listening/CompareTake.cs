using System.Text;
using Stridewright.Music;
using Stridewright.Practice.Listening;
using Stridewright.Practice.Listening.Reporting;
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
        var whole = ExpectedScore.Of(notes);
        var score = TakeScope.HandOf(request.Hand) is { } hand ? whole.In(hand) : whole;
        if (TakeScope.Bars(score, request.Range) is not { } isWanted)
        {
            return Fail("range", TakeScope.NoSuchRange(score, request.Range!), CompareOutcome.BadWish);
        }
        var alignment = PartAligner.Align(score, isWanted, Take.Of(played));
        var report = Listener.Hear(alignment);
        var heard = HeardOf.Take(alignment, report) with
        {
            Reading = ofScore.Concat(ofTake).Select(ReportOf.Remark).ToValueList(),
        };
        var refusal = report.IsAnotherPiece
            ? WorkbenchMessages.AnotherPiece(heard.Title, alignment.Pairs.Count(p => p.IsMatch), heard.Played)
            : "";
        if (Write(alignment, heard, refusal, cancellation) is not { } written)
        {
            return Report(CompareOutcome.Unreadable) with { Heard = heard };
        }
        if (report.IsAnotherPiece)
        {
            _problems.Add(new Problem(request.Take, null, "", refusal));
        }
        return Report(report.IsAnotherPiece ? CompareOutcome.AnotherPiece : CompareOutcome.Compared) with
        {
            Heard = heard,
            Summary = report.IsAnotherPiece ? [] : HeardText.Summary(heard).ToValueList(),
            Outputs = written,
        };
    }

    private ValueList<WrittenFile>? Write(
        Alignment alignment,
        HeardTake heard,
        string refusal,
        CancellationToken cancellation
    )
    {
        var name = OutputNames.OfFile(request.Take);
        var outputs = new OutputFiles(
            request.OutputFolder,
            request.Replace,
            [Path.GetFullPath(request.Score), Path.GetFullPath(request.Take)]
        );
        var text = HeardText.Write(heard, request.Score, request.Take, refusal);
        var files = new[]
        {
            new OutputFile(name + ".alignment.tsv", Encoding.UTF8.GetBytes(AlignmentText.Write(alignment))),
            new OutputFile(name + ".report.txt", Encoding.UTF8.GetBytes(text)),
        };
        var written = outputs.TryWrite(files, cancellation, out var problem);
        if (written is null)
        {
            _problems.Add(new Problem("out", null, "", problem));
        }
        return written;
    }

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
