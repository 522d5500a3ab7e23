using System.Text;
using Stridewright.Arranging;
using Stridewright.Music;
using Stridewright.Workbench.Inputs;
using Stridewright.Workbench.Outputs;
using Stridewright.Workbench.Reports;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Workbench.Sheets;

/// <summary>
/// Tunes in memory to settings in memory, for a host that serves several people at once; no file is opened. Arranging goes
/// on side by side, engraving one after the other on a thread that keeps the engraver warm.
/// </summary>
public sealed class SheetDesk : IDisposable
{
    private const int MostWaiting = 64;

    private readonly ITools _tools;
    private readonly OneAtATime _engraver = new(MostWaiting);
    private readonly SemaphoreSlim _arranging = new(Environment.ProcessorCount);

    internal SheetDesk(ITools tools) => _tools = tools;

    /// <summary>A desk with the project's own readers, arranger, judge and engraver.</summary>
    public static SheetDesk Open() => new(new StandardTools());

    /// <summary>Loads the engraver ahead of the first page (about a second).</summary>
    public Task WarmUp(CancellationToken cancellation) =>
        _engraver.Do(
            stop =>
            {
                var line = _tools.ReadChords("C", Feel.Classic, "").Value;
                return line is null ? null : _tools.Engrave(_tools.ToMusicXml(line), new PageWish(Paper.A4), stop);
            },
            cancellation
        );

    /// <summary>The tunes of a file of any kind, whose name only helps to tell the kind.</summary>
    /// <param name="part">Part that has the tune; null for the likeliest.</param>
    public TuneSource Read(string name, byte[] bytes, string? part = null)
    {
        var read = TuneInput.Read(_tools, new InputFile(name, name), bytes, part);
        return new TuneSource
        {
            Name = name,
            Tunes = read.Tunes,
            Stored = read.Stored,
            Findings = Told(read.Tunes.Count, read.Findings),
        };
    }

    /// <summary>The tunes of typed text: ABC, or else chords alone.</summary>
    public TuneSource ReadText(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (InputKinds.HasFields(text))
        {
            return Read(WorkbenchMessages.TypedName + ".abc", Encoding.UTF8.GetBytes(text)) with
            {
                Name = WorkbenchMessages.TypedName,
            };
        }
        var reading = _tools.ReadChords(text, Feel.Classic, WorkbenchMessages.LeftHandTitle);
        return new TuneSource
        {
            Name = WorkbenchMessages.ChordsName,
            Tunes = reading.Value is { } tune ? [tune] : [],
            Chords = text,
            Findings = Told(reading.Value is null ? 0 : 1, reading.Diagnostics),
        };
    }

    /// <param name="number">Of the tune in its source, from 1.</param>
    /// <exception cref="BusyException">Too many wait already.</exception>
    /// <exception cref="OperationCanceledException">The caller cancelled.</exception>
    public async Task<SheetResult> Arrange(
        TuneSource source,
        int number,
        Wishes wishes,
        Paper paper,
        CancellationToken cancellation
    )
    {
        var reader = new BriefReader(_tools);
        var brief = reader.Read(wishes, source.Stored is { } stored ? BriefTold.Rest(stored.Brief, wishes) : null);
        if (brief.Settled is not null && brief != source.Stored?.Brief)
        {
            // What was settled holds for the brief it was found for.
            brief = brief with
            {
                Settled = null,
            };
        }
        if (reader.Faults.Count > 0)
        {
            return new(null, reader.Faults, IsBadWish: true);
        }
        var tune = source.Tunes[number - 1];
        if (source.Chords is { } line)
        {
            tune = _tools.ReadChords(line, brief.Feel ?? Feel.Classic, tune.Title).Value ?? tune;
            brief = brief with { LeftHandOnly = true };
        }
        await _arranging.WaitAsync(cancellation);
        Draft draft;
        try
        {
            draft = await Task.Run(() => Set(source, number, tune, brief, cancellation), cancellation);
        }
        finally
        {
            _arranging.Release();
        }
        if (draft.Sheet is not { } sheet)
        {
            return new(null, [draft.Problem!]);
        }
        var wish = new PageWish(paper) { Turns = draft.Turns };
        var engraving = await _engraver.Do(stop => _tools.Engrave(sheet.MusicXml, wish, stop), cancellation);
        if (engraving.Value is not { } pages)
        {
            var why = WorkbenchMessages.NotEngraved(engraving.Diagnostics is [var fault, ..] ? fault.Message : "");
            return new(null, [new Problem(source.Name, null, "", why)]);
        }
        var setting = ReportOf.WithTurns(sheet.Tune.Setting, pages.PageEnds, draft.Turns);
        return new(
            sheet with
            {
                Tune = sheet.Tune with { Setting = setting },
                Pages = pages.Svg.ToValueList(),
                Engraved = pages,
            },
            []
        );
    }

    /// <summary>A sheet as one file.</summary>
    /// <param name="format">Any but the pictures, which are several.</param>
    public Task<byte[]> File(Sheet sheet, OutputFormat format, CancellationToken cancellation) =>
        format switch
        {
            OutputFormat.MusicXml => Task.FromResult(sheet.MusicXml),
            OutputFormat.Mxl => Task.FromResult(_tools.ToMxl(sheet.MusicXml)),
            OutputFormat.Midi => Task.FromResult(sheet.Midi()),
            OutputFormat.Pdf => _engraver.Do(_ => sheet.Engraved?.Pdf() ?? [], cancellation),
            _ => throw new ArgumentOutOfRangeException(nameof(format)),
        };

    public void Dispose()
    {
        _engraver.Dispose();
        _tools.Dispose();
        _arranging.Dispose();
    }

    private Draft Set(TuneSource source, int number, Tune tune, Brief brief, CancellationToken cancellation)
    {
        var result = _tools.Arrange(tune, brief, cancellation);
        if (Passed.Of(_tools, result, out var place, out var reason) is not var (arrangement, verdict))
        {
            return new(null, new Problem(source.Name, tune.Title, place, reason), []);
        }
        var report = new WrittenTune
        {
            File = source.Name,
            Number = source.Tunes.Count > 1 ? number : null,
            Title = tune.Title,
            Outputs = [],
            Setting = ReportOf.Setting(arrangement, verdict, _tools.HardestBars(verdict), _tools.Reasons(arrangement)),
        };
        var name = OutputNames.OfWords(tune.Title) is { Length: > 0 } words ? words : WorkbenchMessages.UntitledName;
        var sheet = new Sheet(report, [], name)
        {
            MusicXml = _tools.ToMusicXml(arrangement.Score),
            Midi = () => _tools.ToMidi(arrangement.Score),
            Piece = new Piece(tune, brief, source.Stored?.Figures ?? []),
        };
        return new(sheet, null, arrangement.Brief.Form is null ? [] : FreeHands.After(arrangement.Score));
    }

    private static ValueList<Diagnostic> Told(int tunes, ValueList<Diagnostic> findings) =>
        tunes + findings.Count(f => f.Severity == Severity.Error) > 0
            ? findings
            : [.. findings, new Diagnostic(Severity.Error, Place.Whole, WorkbenchMessages.NoTuneInside)];

    /// <summary>A setting that is not engraved yet, or why there is none.</summary>
    private sealed record Draft(Sheet? Sheet, Problem? Problem, ValueList<string> Turns);
}
