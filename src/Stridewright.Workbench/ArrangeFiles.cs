using Stridewright.Arranging;
using Stridewright.Music;
using Stridewright.Workbench.Inputs;
using Stridewright.Workbench.Outputs;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>
/// One run: finds the files, reads each, arranges its tunes and writes them, one after the other; a file or tune that
/// fails is reported and the run goes on.
/// </summary>
internal sealed class ArrangeFiles(ITools tools, ArrangeRequest request, IProgress<ArrangeProgress>? progress)
{
    /// <summary>A file that is no tune at all can have a fault in every line: the first ones tell enough.</summary>
    private const int MostFaults = 20;

    private readonly List<WrittenTune> _written = [];
    private readonly List<Problem> _problems = [];
    private readonly OutputNames _names = new();

    public ArrangeReport Run(CancellationToken cancellation)
    {
        var reader = new BriefReader(tools);
        var brief = reader.Read(request.Wishes);
        if (reader.Faults.Count > 0)
        {
            return new ArrangeReport { Outcome = ArrangeOutcome.BadWish, Problems = reader.Faults };
        }
        try
        {
            Run(brief, cancellation);
        }
        catch (OperationCanceledException)
        {
            return Report(ArrangeOutcome.Cancelled);
        }
        return Report(
            _written.Count == 0 ? ArrangeOutcome.NothingWritten
            : _problems.Count > 0 ? ArrangeOutcome.SomeWritten
            : ArrangeOutcome.AllWritten
        );
    }

    private ArrangeReport Report(ArrangeOutcome outcome) =>
        new()
        {
            Outcome = outcome,
            Written = _written.ToValueList(),
            Problems = _problems.ToValueList(),
        };

    private void Run(Brief brief, CancellationToken cancellation)
    {
        if (request.Tunes.Count == 0)
        {
            Fail("", "", WorkbenchMessages.NothingNamed);
            return;
        }
        if (File.Exists(request.OutputFolder))
        {
            Fail("out", "", WorkbenchMessages.OutIsFile(request.OutputFolder));
            return;
        }
        var inputs = new InputFiles(request.Tunes, Path.GetFullPath(request.OutputFolder), cancellation);
        _problems.AddRange(inputs.Problems);
        var outputs = new OutputFiles(request.OutputFolder, request.Replace, inputs.Files.Select(f => f.FullPath));
        for (var i = 0; i < inputs.Files.Count; i++)
        {
            var input = inputs.Files[i];
            void Tell(double share) => progress?.Report(new(i + share, inputs.Files.Count, input.Name));
            Tell(0);
            Guarded(input.Name, null, () => ArrangeFile(input, brief, outputs, Tell, cancellation));
        }
        progress?.Report(new(inputs.Files.Count, inputs.Files.Count, ""));
    }

    private void ArrangeFile(
        InputFile input,
        Brief brief,
        OutputFiles outputs,
        Action<double> tell,
        CancellationToken cancellation
    )
    {
        cancellation.ThrowIfCancellationRequested();
        if (InputBytes.TryRead(input.FullPath, cancellation, out var problem) is not { } bytes)
        {
            Fail(input.Name, "", problem);
            return;
        }
        var tunes = Read(input, bytes, out var findings);
        var errors = findings.Where(f => f.Severity == Severity.Error).ToList();
        foreach (var error in errors.Take(MostFaults))
        {
            Fail(input.Name, error.Place.ToString(), error.Message);
        }
        if (errors.Count > MostFaults)
        {
            Fail(input.Name, "", WorkbenchMessages.MoreFaults(errors.Count - MostFaults));
        }
        if (tunes.Count + errors.Count == 0)
        {
            Fail(input.Name, "", WorkbenchMessages.NoTuneInside);
        }
        var remarks = findings.Where(f => f.Severity != Severity.Error).Select(ReportOf.Remark).ToValueList();
        for (var n = 1; n <= tunes.Count; n++)
        {
            var tune = tunes[n - 1];
            var job = new TuneJob(input, tune, tunes.Count == 1 ? null : n, tunes.Count, n == 1 ? remarks : []);
            if (n > 1)
            {
                tell((n - 1.0) / tunes.Count);
            }
            Guarded(input.Name, job.Label, () => ArrangeTune(job, brief, outputs, cancellation));
        }
    }

    private ValueList<Tune> Read(InputFile input, byte[] bytes, out ValueList<Diagnostic> findings)
    {
        using var stream = new MemoryStream(bytes, writable: false);
        switch (InputKinds.Of(input.FullPath, bytes))
        {
            case InputKind.Abc:
                var book = tools.ReadAbc(stream);
                findings = book.Diagnostics;
                return book.Value ?? [];
            case InputKind.MusicXml:
                var sheet = tools.ReadMusicXmlTune(stream);
                findings = sheet.Diagnostics;
                return sheet.Value is { } tune ? [tune] : [];
            case var kind:
                findings = [new Diagnostic(Severity.Error, Place.Whole, CannotRead(kind))];
                return [];
        }
    }

    private static string CannotRead(InputKind kind) =>
        kind switch
        {
            InputKind.Empty => WorkbenchMessages.EmptyFile,
            InputKind.Midi => WorkbenchMessages.MidiTune,
            _ => WorkbenchMessages.UnknownKind,
        };

    private void ArrangeTune(TuneJob job, Brief brief, OutputFiles outputs, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        var name = _names.Take(job.WantedName);
        var result = tools.Arrange(job.Tune, brief, cancellation);
        if (result.Arrangement is not { } arrangement)
        {
            Fail(job, result.Refusal?.Place.ToString() ?? "", result.Refusal?.Message ?? "");
            return;
        }
        // Nothing leaves that the judge has not passed, whoever made it.
        var verdict = tools.Judge(arrangement.Score, arrangement.Brief.Hands, null);
        if (!verdict.IsPlayable)
        {
            Fail(
                job,
                verdict.Faults[0].Place,
                WorkbenchMessages.NotPassed(verdict.Faults.Count, verdict.Faults[0].Message)
            );
            return;
        }
        var score = arrangement.Score;
        var contents = Outputs(name, tools.ToMusicXml(score), () => tools.ToMidi(score), cancellation, out var problem);
        if (contents is not null && request.Plain)
        {
            var plain = tools.Plain(job.Tune);
            var plainName = _names.Take(name + ".plain");
            var sheet = Outputs(
                plainName,
                tools.ToMusicXml(plain),
                () => tools.ToMidi(plain),
                cancellation,
                out problem
            );
            contents = sheet is null ? null : [.. contents, .. sheet];
        }
        if (contents is null || outputs.TryWrite(contents, cancellation, out problem) is not { } files)
        {
            Fail(job, "", problem);
            return;
        }
        var renamed =
            name == job.WantedName
                ? job.Remarks
                : [new Remark("note", "", WorkbenchMessages.NameTaken(job.WantedName, name)), .. job.Remarks];
        _written.Add(
            new WrittenTune
            {
                File = job.Input.Name,
                Number = job.Number,
                Title = job.Tune.Title,
                Outputs = files,
                Setting = ReportOf.Setting(arrangement, verdict, tools.HardestBars(verdict)),
                Reading = renamed,
            }
        );
    }

    // Null, with the reason, when the score cannot be engraved.
    private List<OutputFile>? Outputs(
        string name,
        byte[] musicXml,
        Func<byte[]> midi,
        CancellationToken cancellation,
        out string problem
    )
    {
        problem = "";
        var files = new List<OutputFile>();
        if (request.Formats.Contains(OutputFormat.MusicXml))
        {
            files.Add(new OutputFile(name + ".musicxml", musicXml));
        }
        if (request.Formats.Contains(OutputFormat.Midi))
        {
            files.Add(new OutputFile(name + ".mid", midi()));
        }
        if (!request.Formats.Contains(OutputFormat.Pdf) && !request.Formats.Contains(OutputFormat.Svg))
        {
            return files;
        }
        var engraving = tools.Engrave(musicXml, request.Paper, cancellation);
        if (engraving.Value is not { } pages)
        {
            problem = WorkbenchMessages.NotEngraved(engraving.Diagnostics is [var fault, ..] ? fault.Message : "");
            return null;
        }
        if (request.Formats.Contains(OutputFormat.Pdf))
        {
            files.Add(new OutputFile(name + ".pdf", pages.Pdf()));
        }
        if (request.Formats.Contains(OutputFormat.Svg))
        {
            files.AddRange(pages.Svg.Select((page, i) => new OutputFile(PageName(name, i + 1, pages.Svg.Count), page)));
        }
        return files;
    }

    private static string PageName(string name, int page, int pages) =>
        pages == 1 ? name + ".svg" : FormattableString.Invariant($"{name}-page-{page}.svg");

    // A fault of the program in one tune must not cost the others theirs.
    private void Guarded(string file, string? tune, Action work)
    {
        try
        {
            work();
        }
#pragma warning disable CA1031 // The person gets a sentence, the run goes on.
        catch (Exception fault) when (fault is not OperationCanceledException)
#pragma warning restore CA1031
        {
            _problems.Add(new Problem(file, tune, "", WorkbenchMessages.Internal(fault)));
        }
    }

    private void Fail(string file, string place, string message) =>
        _problems.Add(new Problem(file, null, place, message));

    private void Fail(TuneJob job, string place, string message) =>
        _problems.Add(new Problem(job.Input.Name, job.Label, place, message));

    /// <summary>One tune of a file, with what its reader remarked.</summary>
    /// <param name="Number">Place in its book; null when it is alone in its file.</param>
    private sealed record TuneJob(InputFile Input, Tune Tune, int? Number, int Count, ValueList<Remark> Remarks)
    {
        public string WantedName =>
            Number is { } n
                ? OutputNames.OfBook(Input.FullPath, n, Count, Tune.Title)
                : OutputNames.OfFile(Input.FullPath);

        /// <summary>Such as <c>tune 3, The Ferry Bell</c>; null when the file says it all.</summary>
        public string? Label => Number is { } n ? FormattableString.Invariant($"tune {n}, {Tune.Title}") : null;
    }
}
