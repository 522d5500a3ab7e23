using Stridewright.Music;
using Stridewright.Workbench.Inputs;
using Stridewright.Workbench.Outputs;
using Stridewright.Workbench.Reports;
using Stridewright.Workbench.Sheets;

namespace Stridewright.Workbench.Handouts;

/// <summary>Makes a hand-out of a tune or an arrangement file and writes it.</summary>
internal sealed class HandoutFiles(ITools tools, HandoutRequest request)
{
    private readonly List<Problem> _problems = [];

    public HandoutReport Run(CancellationToken cancellation)
    {
        try
        {
            return Made(cancellation);
        }
        catch (OperationCanceledException)
        {
            return Report() with { Cancelled = true };
        }
#pragma warning disable CA1031 // A fault of the program reaches the person as a sentence.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            return Fail("", WorkbenchMessages.Internal(fault));
        }
    }

    private HandoutReport Made(CancellationToken cancellation)
    {
        if (!PlotFiles.IsName(request.Out))
        {
            return BadWish([new Problem("out", null, "", WorkbenchMessages.NoPicture(request.Out))]);
        }
        var reader = new BriefReader(tools);
        var brief = reader.Read(request.Wishes);
        if (reader.Faults.Count > 0)
        {
            return BadWish(reader.Faults);
        }
        if (!File.Exists(request.File))
        {
            return Fail(
                "",
                Directory.Exists(request.File) ? WorkbenchMessages.FolderForFile : WorkbenchMessages.NotFound
            );
        }
        var input = new InputFile(request.File, Path.GetFullPath(request.File));
        if (InputBytes.TryRead(input.FullPath, cancellation, out var unread) is not { } bytes)
        {
            return Fail("", unread);
        }
        var read = TuneInput.Read(tools, input, bytes, part: null);
        if (Tune(read) is not { } tune)
        {
            return Report();
        }
        if (read.Stored is { } stored)
        {
            brief = new BriefReader(tools).Read(request.Wishes, stored.Brief);
            brief = brief == stored.Brief ? brief : brief with { Settled = null };
        }
        var result = tools.Arrange(tune, brief, cancellation);
        if (Passed.Of(tools, result, out var place, out var reason) is not { } passed)
        {
            return Fail(place, reason);
        }
        var contents = new HandoutContents(tools, new Piece(tune, brief, []), passed.Arrangement, request.Wish);
        if (contents.Gather(cancellation) is not { } sheet)
        {
            return BadWish(contents.Faults);
        }
        var drawn = HandoutDrawing.Of(tools, sheet, request.Wish, request.Paper, cancellation);
        return drawn.Pages is { } pages ? Written(pages, cancellation) : Fail("", drawn.Fault);
    }

    private HandoutReport Written(EngravedPages pages, CancellationToken cancellation)
    {
        var written = PlotFiles.TryWrite(
            request.Out,
            [pages],
            request.Replace,
            [request.File],
            cancellation,
            out var problem
        );
        return written is null ? Fail("", problem) : Report() with { Outputs = written };
    }

    private Tune? Tune(TuneInput read)
    {
        foreach (var error in read.Findings.Where(f => f.Severity == Severity.Error))
        {
            Fail(error.Place.ToString(), error.Message);
        }
        if (_problems.Count > 0)
        {
            return null;
        }
        var number = request.Number ?? (read.Tunes.Count == 1 ? 1 : 0);
        if (number >= 1 && number <= read.Tunes.Count)
        {
            return read.Tunes[number - 1];
        }
        Fail(
            "",
            read.Tunes.Count == 0 ? WorkbenchMessages.NoTuneInside : WorkbenchMessages.WhichTune(read.Tunes.Count)
        );
        return null;
    }

    private HandoutReport Report() => new() { File = request.File, Problems = _problems.ToValueList() };

    private HandoutReport BadWish(ValueList<Problem> faults) => Report() with { Problems = faults, IsBadWish = true };

    private HandoutReport Fail(string place, string message)
    {
        _problems.Add(new Problem(request.File, null, place, message));
        return Report();
    }
}
