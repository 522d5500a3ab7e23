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
    : IProgress<double>
{
    /// <summary>A file that is no tune at all can have a fault in every line: the first ones tell enough.</summary>
    private const int MostFaults = 20;

    private readonly List<WrittenTune> _written = [];
    private readonly List<Problem> _problems = [];
    private readonly OutputNames _names = new();
    private readonly string? _saved = request.Save is { Length: > 0 } save ? Path.GetFullPath(save) : null;

    private readonly LevelSteps _steps = new();

    // The tune at work has its form from its highest level.
    private bool _isFormed;

    // Figures of another arrangement file, to be put where they belong.
    private ValueList<FigureText> _figures = [];

    // Whom a file for a phone is for.
    private string? _player;

    private Action<double> _tell = _ => { };

    private ScoreFiles Files => new(tools, request.Formats, this, _player);

    // What was played of the score at work.
    void IProgress<double>.Report(double value) => _tell(value);

    public ArrangeReport Run(CancellationToken cancellation)
    {
        var reader = new BriefReader(tools);
        _player = request.Formats.Contains(OutputFormat.Phone) ? reader.PlayerOf(request.Wishes.Player)?.Name : null;
        var brief = reader.Read(request.Wishes) with { Sketch = request.Sketch };
        if (request.Figures is { } own)
        {
            var figures = reader.FiguresOf(own, cancellation);
            _figures = figures.Select(f => f.Text).ToValueList();
            brief = brief with { Figures = figures.Select(f => f.Figure).ToValueList() };
        }
        var faults = reader.Faults.Concat(Contradictions.Of(request)).ToValueList();
        if (faults.Count > 0)
        {
            return new ArrangeReport { Outcome = ArrangeOutcome.BadWish, Problems = faults };
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
        if (request.Tunes.Count == 0 && request.Chords is null)
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
        if (_saved is not null && inputs.Files.Count > 1)
        {
            Fail("save", "", WorkbenchMessages.SaveOneSetting);
            return;
        }
        // An arrangement file may be saved anew with what the options change in it.
        var guarded = inputs.Files.Select(f => f.FullPath).Where(path => path != _saved);
        var outputs = new OutputFiles(request.OutputFolder, request.Replace, guarded);
        if (request.Chords is { } line)
        {
            var chords = new InputFile(WorkbenchMessages.ChordsName, "");
            Guarded(chords.Name, null, () => ArrangeChords(chords, line, brief, outputs, cancellation));
        }
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
        var read = TuneInput.Read(tools, input, bytes, request.Part);
        var tunes = read.Tunes;
        var remarks = Remarks(input, tunes.Count, read.Findings);
        if (request.Save is not null && tunes.Count > 1)
        {
            Fail(input.Name, "", WorkbenchMessages.SaveOneSetting);
            return;
        }
        if (read.Stored is { } stored)
        {
            brief = new BriefReader(tools).Read(request.Wishes, stored.Brief) with
            {
                Sketch = request.Sketch || stored.Brief.Sketch,
                Figures = brief.Figures,
            };
            // What was settled holds for the brief it was found for.
            brief = brief with
            {
                Settled = brief == stored.Brief ? brief.Settled : null,
            };
        }
        for (var n = 1; n <= tunes.Count; n++)
        {
            var tune = tunes[n - 1];
            var name =
                tunes.Count == 1
                    ? OutputNames.OfFile(input.FullPath)
                    : OutputNames.OfBook(input.FullPath, n, tunes.Count, tune.Title);
            var job = new TuneJob(input, tune, tunes.Count == 1 ? null : n, name, n == 1 ? remarks : [])
            {
                Figures = SpotCraft.Together(read.Stored?.Figures ?? [], _figures),
            };
            var (before, count) = (n - 1.0, tunes.Count);
            _tell = share => tell((before + share) / count);
            if (n > 1)
            {
                _tell(0);
            }
            ArrangeAtLevels(job, brief, outputs, cancellation);
        }
    }

    private void ArrangeChords(
        InputFile input,
        string line,
        Brief brief,
        OutputFiles outputs,
        CancellationToken cancellation
    )
    {
        var title = request.Title ?? WorkbenchMessages.LeftHandTitle;
        var reading = tools.ReadChords(line, brief.Feel ?? Feel.Classic, title);
        var remarks = Remarks(input, reading.Value is null ? 0 : 1, reading.Diagnostics);
        if (reading.Value is { } tune)
        {
            var name = OutputNames.OfWords(request.Title ?? title + " " + line);
            var job = new TuneJob(
                input,
                tune,
                null,
                name.Length > 0 ? name : OutputNames.OfWords(WorkbenchMessages.LeftHandTitle),
                remarks
            );
            ArrangeAtLevels(job, brief with { LeftHandOnly = true }, outputs, cancellation);
        }
    }

    // Reports the errors; what is left are the remarks.
    private ValueList<Remark> Remarks(InputFile input, int tunes, ValueList<Diagnostic> findings)
    {
        var errors = findings.Where(f => f.Severity == Severity.Error).ToList();
        foreach (var error in errors.Take(MostFaults))
        {
            Fail(input.Name, error.Place.ToString(), error.Message);
        }
        if (errors.Count > MostFaults)
        {
            Fail(input.Name, "", WorkbenchMessages.MoreFaults(errors.Count - MostFaults));
        }
        if (tunes + errors.Count == 0)
        {
            Fail(input.Name, "", WorkbenchMessages.NoTuneInside);
        }
        return findings.Where(f => f.Severity != Severity.Error).Select(ReportOf.Remark).ToValueList();
    }

    // A tune at the one level of the brief, or at several, each told with what it adds to the one before.
    private void ArrangeAtLevels(TuneJob job, Brief brief, OutputFiles outputs, CancellationToken cancellation)
    {
        if (request.Levels is not { } levels)
        {
            ArrangeInKeys(job, brief, outputs, cancellation);
            return;
        }
        var before = _written.Count;
        _steps.Clear();
        _isFormed = false;
        if (brief.Form is { IsUsual: true } || brief.Seconds is not null || request.Pages is not null)
        {
            // All share the form of the highest, so that one level leads into the next.
            var highest = brief with
            {
                LeftLevel = levels.Last,
                RightLevel = levels.Last,
            };
            var result = Set(job.Tune, highest, cancellation);
            if (result.Arrangement is not { } hardest)
            {
                Fail(job, result.Refusal?.Place.ToString() ?? "", result.Refusal?.Message ?? "");
                return;
            }
            (brief, _isFormed) = (brief with { Form = hardest.Brief.Form, Seconds = null }, true);
        }
        for (var level = levels.First; level <= levels.Last; level++)
        {
            var atLevel = job with
            {
                WantedName = OutputNames.AtLevel(job.WantedName, level),
                Remarks = _written.Count == before ? job.Remarks : [],
            };
            ArrangeInKeys(atLevel, brief with { LeftLevel = level, RightLevel = level }, outputs, cancellation);
        }
    }

    // A tune in its one key, or in all twelve, and then as a booklet too.
    private void ArrangeInKeys(TuneJob job, Brief brief, OutputFiles outputs, CancellationToken cancellation)
    {
        if (request.Settings is { } count)
        {
            Guarded(job.Input.Name, job.Label, () => ArrangeSeveral(job, brief, count, outputs, cancellation));
            return;
        }
        if (!request.AllKeys)
        {
            Guarded(job.Input.Name, job.Label, () => ArrangeTune(job, brief, outputs, cancellation));
            return;
        }
        var booklet = new List<EngravedPages>();
        var before = _written.Count;
        foreach (var tonic in TwelveKeys.From(job.Tune.Bars[0].Key))
        {
            var inKey = job with
            {
                WantedName = OutputNames.InKey(job.WantedName, tonic),
                Remarks = _written.Count == before ? job.Remarks : [],
            };
            Guarded(
                job.Input.Name,
                job.Label,
                () =>
                {
                    if (ArrangeTune(inKey, brief with { Tonic = tonic }, outputs, cancellation) is { } pages)
                    {
                        booklet.Add(pages);
                    }
                }
            );
        }
        if (booklet.Count > 0 && request.Formats.Contains(OutputFormat.Pdf))
        {
            Guarded(job.Input.Name, job.Label, () => Bind(job, booklet, outputs, cancellation));
        }
    }

    private void ArrangeSeveral(
        TuneJob job,
        Brief brief,
        int count,
        OutputFiles outputs,
        CancellationToken cancellation
    )
    {
        foreach (var (i, result) in tools.ArrangeSeveral(job.Tune, brief, count, cancellation).Index())
        {
            var setting = job with
            {
                WantedName = FormattableString.Invariant($"{job.WantedName}.setting-{i + 1}"),
                Remarks = i == 0 ? job.Remarks : [],
                Result = result,
                Adds = i == 0 ? null : result.Arrangement?.Notes[^1].Message,
            };
            ArrangeTune(setting, brief, outputs, cancellation);
        }
    }

    // The booklet is told of with the last key.
    private void Bind(TuneJob job, List<EngravedPages> booklet, OutputFiles outputs, CancellationToken cancellation)
    {
        var name = _names.Take(job.WantedName + ".all-keys");
        var file = new OutputFile(name + ".pdf", tools.ToBooklet(job.Tune.Title, booklet, request.Paper));
        if (outputs.TryWrite([file], cancellation, out var problem) is not { } written)
        {
            Fail(job, "", problem);
            return;
        }
        _written[^1] = _written[^1] with { Outputs = [.. _written[^1].Outputs, .. written] };
    }

    private ArrangeResult Set(Tune tune, Brief brief, CancellationToken cancellation) =>
        request.Pages is { } pages && !_isFormed
            ? new PageFitting(tools, request.Paper).Arrange(tune, brief, pages, cancellation)
            : tools.Arrange(tune, brief, cancellation);

    // The pages, where some were engraved and all was written.
    private EngravedPages? ArrangeTune(TuneJob job, Brief brief, OutputFiles outputs, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        var name = _names.Take(job.WantedName);
        var result = job.Result ?? Set(job.Tune, brief, cancellation);
        if (Passed.Of(tools, result, out var place, out var reason) is not var (arrangement, verdict))
        {
            Fail(job, place, reason);
            return null;
        }
        var made = new SettingFiles(tools, request, Files, _names, _saved).Of(
            name,
            job,
            brief,
            arrangement,
            cancellation
        );
        var problem = made.Problem;
        if (made.Contents is null || outputs.TryWrite(made.Contents, cancellation, out problem) is not { } written)
        {
            Fail(job, "", problem);
            return null;
        }
        var reasons = tools.Reasons(arrangement);
        var setting = ReportOf.Setting(
            arrangement,
            verdict,
            tools.HardestBars(verdict),
            tools.GivenUp(job.Tune, arrangement, reasons, cancellation)
        );
        _written.Add(
            new WrittenTune
            {
                File = job.Input.Name,
                Number = job.Number,
                Title = job.Tune.Title,
                Outputs = written,
                Setting = ReportOf.WithTurns(setting, made.Pages?.PageEnds ?? [], made.Turns),
                Reading = job.Named(name, made.Remarks),
                Adds = request.Levels is null ? job.Adds : _steps.Adds(arrangement),
                Reasons = request.Why ? ReportOf.Reasons(reasons) : [],
            }
        );
        return made.Pages;
    }

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
}
