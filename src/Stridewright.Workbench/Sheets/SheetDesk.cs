using System.Text;
using Stridewright.Arranging;
using Stridewright.Music;
using Stridewright.Workbench.Inputs;
using Stridewright.Workbench.Outputs;
using Stridewright.Workbench.Pocket;
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
    private readonly SemaphoreSlim _playing = new(Environment.ProcessorCount);

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

    /// <summary>Gives back memory that is only needed at work; for when nobody waits.</summary>
    public static void Rest() => SpareMemory.GiveBack();

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
        SheetLook look,
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
        var about = new SheetAbout(source.Name, source.Tunes.Count > 1 ? number : null, look);
        return await Engraved(
            about,
            () => Set(about, tune, brief, source.Stored?.Figures ?? [], cancellation),
            cancellation
        );
    }

    /// <summary>A setting that is made in turn with others, on its pages.</summary>
    internal async Task<SheetResult> Engraved(SheetAbout about, Func<Draft> set, CancellationToken cancellation)
    {
        var draft = await InTurn(set, cancellation);
        if (draft.Sheet is not { } sheet)
        {
            return new(null, [draft.Problem!]);
        }
        var wish = new PageWish(about.Look.Paper) { LargePrint = about.Look.LargePrint, Once = true };
        var engraving = await _engraver.Do(stop => _tools.Engrave(sheet.MusicXml, wish, stop), cancellation);
        if (engraving.Value is not { } pages)
        {
            var why = WorkbenchMessages.NotEngraved(engraving.Diagnostics is [var fault, ..] ? fault.Message : "");
            return new(null, [new Problem(about.Source, null, "", why)]);
        }
        return new(sheet with { Engraved = pages }, []);
    }

    /// <summary>A sheet as it is printed: laid out when it is asked for first.</summary>
    /// <exception cref="BusyException">Too many wait already.</exception>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellation"/> is signalled.</exception>
    internal async Task<EngravedPages> Printed(Sheet sheet, CancellationToken cancellation)
    {
        if (sheet.Print.Pages is null)
        {
            var engraving = await Printed(sheet.MusicXml, sheet.Score!, sheet.About!.Look, cancellation);
            sheet.Print.Pages = engraving.Value ?? sheet.Engraved!;
        }
        return sheet.Print.Pages;
    }

    /// <summary>The pages of a sheet as it is printed, one SVG a page, in UTF-8.</summary>
    /// <exception cref="BusyException">Too many wait already.</exception>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellation"/> is signalled.</exception>
    public async Task<IReadOnlyList<byte[]>> PrintedPages(Sheet sheet, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return (await Printed(sheet, cancellation)).Svg;
    }

    private Task<Reading<EngravedPages>> Printed(
        byte[] musicXml,
        Score score,
        SheetLook look,
        CancellationToken cancellation
    )
    {
        var wish = new PageWish(look.Paper) { Turns = FreeHands.After(score), LargePrint = look.LargePrint };
        return _engraver.Do(stop => _tools.Engrave(musicXml, wish, stop), cancellation);
    }

    /// <summary>Work for the arranger, a few at a time.</summary>
    internal async Task<T> InTurn<T>(Func<T> work, CancellationToken cancellation)
    {
        await _arranging.WaitAsync(cancellation);
        try
        {
            return await Task.Run(work, cancellation);
        }
        finally
        {
            _arranging.Release();
        }
    }

    /// <summary>A few bars by themselves, on one page.</summary>
    internal async Task<byte[]> Picture(Score bars, CancellationToken cancellation)
    {
        var wish = new PageWish(Paper.A4);
        var engraving = await _engraver.Do(stop => _tools.Engrave(_tools.ToMusicXml(bars), wish, stop), cancellation);
        return engraving.Value is { Svg: [var first, ..] } ? first : [];
    }

    internal ITools Tools => _tools;

    /// <summary>Work for the engraver, one after the other.</summary>
    /// <exception cref="BusyException">Too many wait already.</exception>
    internal Task<T> Engraver<T>(Func<CancellationToken, T> work, CancellationToken cancellation) =>
        _engraver.Do(work, cancellation);

    /// <summary>The tune of a sheet with all that is kept of it, for further briefs.</summary>
    internal TuneSource Source(Sheet sheet)
    {
        var piece = sheet.Piece!;
        return new TuneSource
        {
            Name = sheet.About!.Source,
            Tunes = [piece.Tune],
            Stored = new ArrangementFile(piece.Brief, piece.Figures, _tools.ToAbc(piece.Tune)),
        };
    }

    /// <summary>A sheet as one file.</summary>
    /// <param name="format">Any but the pictures, which are several, and the sound, which is long.</param>
    public async Task<byte[]> File(Sheet sheet, OutputFormat format, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        switch (format)
        {
            case OutputFormat.MusicXml:
                return sheet.MusicXml;
            case OutputFormat.Mxl:
                return _tools.ToMxl(sheet.MusicXml);
            case OutputFormat.Midi:
                return _tools.ToMidi(sheet.Score!);
            case OutputFormat.Pdf:
                var pages = await Printed(sheet, cancellation);
                return await _engraver.Do(_ => pages.Pdf(), cancellation);
            default:
                throw new ArgumentOutOfRangeException(nameof(format));
        }
    }

    /// <summary>A sheet as a PDF of another look.</summary>
    internal Task<byte[]> Pdf(Sheet sheet, SheetLook look, CancellationToken cancellation) =>
        Pdf(sheet, look, score => score, cancellation);

    /// <summary>One hand of a sheet as a PDF.</summary>
    internal Task<byte[]> Pdf(Sheet sheet, Hand hand, CancellationToken cancellation) =>
        Pdf(sheet, sheet.About!.Look with { Notes = false }, score => HandAlone.Of(score, hand), cancellation);

    private async Task<byte[]> Pdf(
        Sheet sheet,
        SheetLook look,
        Func<Score, Score> change,
        CancellationToken cancellation
    )
    {
        var arrangement = sheet.Arrangement!;
        var score = await InTurn(() => change(look.Of(_tools, arrangement, cancellation)), cancellation);
        var engraving = await Printed(_tools.ToMusicXml(score), score, look, cancellation);
        return engraving.Value is { } pages ? await _engraver.Do(_ => pages.Pdf(), cancellation) : [];
    }

    /// <summary>A sheet as one file for a phone or a tablet.</summary>
    internal Task<byte[]> Phone(Sheet sheet, CancellationToken cancellation)
    {
        var title = sheet.Tune.Title;
        var wish = new PocketWish { Title = title, Parts = [new(title, sheet.Score!)] };
        return _engraver.Do(stop => new PocketFile(_tools).Write(wish, stop, out _) ?? [], cancellation);
    }

    /// <summary>A page of a sheet, from 1, as a picture.</summary>
    internal Task<byte[]> Png(Sheet sheet, int page, CancellationToken cancellation) =>
        _engraver.Do(_ => sheet.Engraved?.Png(page - 1) ?? [], cancellation);

    /// <summary>True where a sheet is short enough for a WAV file.</summary>
    internal bool FitsWav(Sheet sheet) => _tools.FitsWav(_tools.Perform(sheet.Score!));

    /// <summary>A sheet as it is heard.</summary>
    public Heard Heard(Sheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return Sheets.Heard.Of(sheet.Score!, _tools.Perform(sheet.Score!));
    }

    /// <summary>Writes a sheet as a WAV file while it is made; few are made at once.</summary>
    public async Task WriteWav(Sheet sheet, Stream stream, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(stream);
        await _playing.WaitAsync(cancellation);
        try
        {
            foreach (var block in _tools.ToWav(_tools.Perform(sheet.Score!), null, cancellation))
            {
                await stream.WriteAsync(block, cancellation);
            }
        }
        finally
        {
            _playing.Release();
        }
    }

    public void Dispose()
    {
        _engraver.Dispose();
        _tools.Dispose();
        _arranging.Dispose();
        _playing.Dispose();
    }

    private Draft Set(
        SheetAbout about,
        Tune tune,
        Brief brief,
        ValueList<FigureText> figures,
        CancellationToken cancellation
    ) => Drafted(about, new Piece(tune, brief, figures), _tools.Arrange(tune, brief, cancellation), cancellation);

    /// <summary>What was arranged, if it may leave.</summary>
    internal Draft Drafted(SheetAbout about, Piece piece, ArrangeResult result, CancellationToken cancellation)
    {
        var tune = piece.Tune;
        if (Passed.Of(_tools, result, out var place, out var reason) is not var (arrangement, verdict))
        {
            return new(null, new Problem(about.Source, tune.Title, place, reason));
        }
        var reasons = _tools.Reasons(arrangement);
        var report = new WrittenTune
        {
            File = about.Source,
            Number = about.Number,
            Title = tune.Title,
            Outputs = [],
            Setting = ReportOf.Setting(
                arrangement,
                verdict,
                _tools.HardestBars(verdict),
                _tools.GivenUp(tune, arrangement, reasons, cancellation)
            ),
        };
        var name = OutputNames.OfWords(tune.Title) is { Length: > 0 } words ? words : WorkbenchMessages.UntitledName;
        var sheet = new Sheet(report, name)
        {
            MusicXml = _tools.ToMusicXml(about.Look.Of(_tools, arrangement, cancellation)),
            Score = arrangement.Score,
            Piece = piece,
            Arrangement = arrangement,
            Verdict = verdict,
            Reasons = reasons,
            About = about,
        };
        return new(sheet, null);
    }

    private static ValueList<Diagnostic> Told(int tunes, ValueList<Diagnostic> findings) =>
        tunes + findings.Count(f => f.Severity == Severity.Error) > 0
            ? findings
            : [.. findings, new Diagnostic(Severity.Error, Place.Whole, WorkbenchMessages.NoTuneInside)];
}
