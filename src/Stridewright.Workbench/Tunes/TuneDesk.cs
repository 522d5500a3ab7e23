using Stridewright.Arranging;
using Stridewright.Music;
using Stridewright.Shelf;
using Stridewright.Workbench.Sheets;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Workbench.Tunes;

/// <summary>Tunes looked at by themselves, corrected, and kept on the shelf.</summary>
public sealed class TuneDesk(SheetDesk desk, ShelfDesk shelf)
{
    /// <param name="number">Of the tune in its source, from 1.</param>
    public TuneTold Told(TuneSource source, int number)
    {
        ArgumentNullException.ThrowIfNull(source);
        var tune = source.Tunes[number - 1];
        var notes = tune.Bars.SelectMany(b => b.Notes).ToList();
        var isFine = notes.Exists(n => !n.At.IsMultipleOf(ScoreTime.Sixteenth));
        return new(
            tune.Bars[0].Key.ToString(),
            TuneCorrection.MainMetre(tune).ToString(),
            TuneCorrection.PickUp(tune).ToString(),
            (isFine ? new ScoreTime(1, 32) : ScoreTime.Sixteenth).ToString(),
            tune.Bars.Select(Bar).ToValueList(),
            desk.Tools.ToAbc(tune),
            !Places(desk.Tools.Plain(tune)).Except(Places(tune)).Any()
        );
    }

    /// <summary>The tune engraved, a picture a page.</summary>
    /// <param name="plain">Back on the beat, as it stands before it is ragged.</param>
    public async Task<ValueList<byte[]>> Pages(
        TuneSource source,
        int number,
        bool plain,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(source);
        var tune = source.Tunes[number - 1];
        var xml = await desk.InTurn(() => desk.Tools.ToMusicXml(plain ? desk.Tools.Plain(tune) : tune), cancellation);
        var engraved = await desk.Engraver(
            stop => desk.Tools.Engrave(xml, new PageWish(Paper.A4) { Cut = true }, stop),
            cancellation
        );
        return engraved.Value?.Svg.ToValueList() ?? [];
    }

    /// <summary>The same source with its tune corrected, alone; null, with the reason, where that cannot be. Bars that were
    /// kept stay where tune and harmony are as they were.</summary>
    public Task<(TuneSource? Corrected, string Fault)> Correct(
        TuneSource source,
        int number,
        TuneChange change,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(source);
        ArgumentNullException.ThrowIfNull(change);
        return desk.InTurn(() => (Corrected(source, number, change, out var fault, cancellation), fault), cancellation);
    }

    private TuneSource? Corrected(
        TuneSource source,
        int number,
        TuneChange change,
        out string fault,
        CancellationToken cancellation
    )
    {
        var tune = source.Tunes[number - 1];
        if (TuneCorrection.Of(tune, change, out fault) is not { } corrected)
        {
            return null;
        }
        return source with
        {
            Tunes = [corrected],
            Chords = null,
            Findings = [],
            Stored = source.Stored is { } stored
                ? stored with
                {
                    Brief = stored.Brief with
                    {
                        Kept = Carried(tune, corrected, stored.Brief, cancellation),
                        Settled = null,
                    },
                }
                : null,
        };
    }

    // None of them where the corrected tune cannot be set around them.
    private ValueList<KeptBar> Carried(Tune before, Tune after, Brief brief, CancellationToken cancellation)
    {
        var free = brief with { Kept = [], Settled = null };
        if (
            brief.Kept.Count == 0
            || desk.Tools.Arrange(before, brief, cancellation).Arrangement is not { } was
            || desk.Tools.Arrange(after, free, cancellation).Arrangement is not { } now
        )
        {
            return [];
        }
        var kept = Reworking.Carried(was, now);
        return desk.Tools.Arrange(after, free with { Kept = kept }, cancellation).Arrangement is null ? [] : kept;
    }

    /// <summary>Keeps a tune by itself.</summary>
    /// <exception cref="ShelfRefusedException">It cannot be kept.</exception>
    public Task<ShelfItem> Keep(TuneSource source, int number, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(source);
        var tune = source.Tunes[number - 1];
        var content = new Content(
            ItemOf.Title(tune.Title),
            desk.Tools.ToAbc(tune),
            tune.Bars[0].Key.ToString(),
            TuneCorrection.MainMetre(tune).ToString()
        );
        return shelf.Add(DocumentKind.Tune, content, cancellation);
    }

    /// <summary>Keeps a figure of a setting by itself; null: the setting has none of this name.</summary>
    public async Task<ShelfItem?> KeepFigure(Sheet sheet, string name, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return sheet.Piece!.Figures.FirstOrDefault(f => f.Name == name) is { } figure
            ? await shelf.Add(
                DocumentKind.Figure,
                new Content(ItemOf.Title(figure.Name), string.Concat(figure.Lines.Select(l => l + "\n"))),
                cancellation
            )
            : null;
    }

    /// <summary>A setting with a figure of the shelf at hand.</summary>
    /// <exception cref="ShelfRefusedException">There is none of this id.</exception>
    public async Task<SpotDone> TakeFigure(Sheet sheet, string id, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var document = await shelf.Get(id, null, cancellation);
        if (document.Head.Kind != DocumentKind.Figure)
        {
            throw new ShelfRefusedException(WorkbenchMessages.OtherKind);
        }
        var lines = document.Text.Split('\n', StringSplitOptions.RemoveEmptyEntries).ToValueList();
        if (OwnFigures.Read(lines, out var unread) is null)
        {
            throw new ShelfRefusedException(WorkbenchMessages.ShelvedUnreadable(unread ?? ""));
        }
        var name = document.Version.Title[..Math.Min(80, document.Version.Title.Length)].Trim();
        var figures = SpotCraft.Together(sheet.Piece!.Figures, [new FigureText(name, lines)]);
        var made = sheet with { Piece = sheet.Piece with { Figures = figures } };
        return new(new SheetResult(made, []), desk.Source(made), []);
    }

    private static IEnumerable<(int Bar, ScoreTime At)> Places(Tune tune) =>
        tune.Bars.SelectMany((b, i) => b.Notes.Select(n => (i, n.At)));

    private static TuneBarTold Bar(TuneBar bar) =>
        new(
            bar.Number,
            bar.Length.ToString(),
            bar.Notes.Select(n => new SheetStroke(n.At.ToString(), n.Length.ToString(), [n.Pitch.ToString()]))
                .ToValueList(),
            BarChords.Written(bar)
        );
}
