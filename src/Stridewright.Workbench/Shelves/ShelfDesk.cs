using System.Text;
using Stridewright.Arranging;
using Stridewright.Music;
using Stridewright.Shelf;
using Stridewright.Workbench.Inputs;
using Stridewright.Workbench.Outputs;
using Stridewright.Workbench.Practising;
using Stridewright.Workbench.Sheets;

namespace Stridewright.Workbench.Shelves;

/// <summary>
/// The shelf of one data folder, for a host that serves several pages at once: settings are kept on it as arrangement files
/// and put back on the desk. Calls fail with <see cref="ShelfRefusedException"/>.
/// </summary>
public sealed class ShelfDesk : IDisposable
{
    private readonly Shelf.Shelf _shelf;
    private readonly ITools _tools;

    private ShelfDesk(Shelf.Shelf shelf, ITools tools)
    {
        (_shelf, _tools) = (shelf, tools);
        Players = new PlayerShelf(shelf);
        Takes = new TakeShelf(shelf);
        Progress = new ProgressDesk(Players, Takes);
    }

    /// <summary>The players on it.</summary>
    public PlayerShelf Players { get; }

    /// <summary>The takes on it.</summary>
    public TakeShelf Takes { get; }

    /// <summary>How they have come on.</summary>
    public ProgressDesk Progress { get; }

    /// <summary>Takes a data folder for this program alone, quickly; its file is opened when it is asked to, or
    /// when it is first needed.</summary>
    /// <param name="folder">Null: one of the user's own.</param>
    /// <exception cref="ShelfRefusedException">It is in use, or cannot be used.</exception>
    public static ShelfDesk Take(string? folder)
    {
        try
        {
            return new(Shelf.Shelf.Take(folder ?? Shelf.Shelf.UsualFolder, TimeProvider.System), new StandardTools());
        }
        catch (ShelfException fault)
        {
            throw Refused(fault);
        }
    }

    public string Folder => _shelf.Folder;

    public Task Open(CancellationToken cancellation) =>
        Told(
            Task.Run(
                async () =>
                {
                    await _shelf.Open(cancellation);
                    return true;
                },
                cancellation
            )
        );

    public async Task<ShelfList> Find(ShelfWish wish, CancellationToken cancellation)
    {
        var sought = new Sought
        {
            Kind = ItemOf.Kind(wish.Kind),
            Words = wish.Words ?? "",
            Key = wish.Key,
            Metre = wish.Metre,
            Easiest = wish.Easiest,
            Hardest = wish.Hardest,
            Tag = wish.Tag,
            Deleted = wish.Deleted,
            Skip = wish.Skip ?? 0,
            Most = wish.Most ?? DocumentLimits.Hits,
        };
        var found = await Told(_shelf.Find(sought, cancellation));
        var standing = found.Standing;
        return new(
            found.Documents.Select(ItemOf.Document).ToValueList(),
            found.Count,
            standing.Tags,
            standing.Keys,
            standing.Metres
        );
    }

    /// <summary>Keeps a setting as an arrangement of its own.</summary>
    /// <param name="sitting">One stretch of work on one page, whose quick saves may be thinned out.</param>
    public async Task<ShelfItem> Keep(Sheet sheet, string? sitting, CancellationToken cancellation)
    {
        var content = ContentOf(sheet, sheet.Tune.Title);
        return ItemOf.Document(
            await Told(_shelf.Add(DocumentKind.Arrangement, content, [], Sitting(sitting), cancellation))
        );
    }

    /// <summary>Keeps a setting as a new version of an arrangement, under the title that it has on the shelf.</summary>
    /// <param name="from">The version that it was made from.</param>
    public async Task<ShelfSaved> Keep(
        Sheet sheet,
        string id,
        int from,
        string? sitting,
        CancellationToken cancellation
    )
    {
        var stands = await Told(_shelf.Get(id, null, cancellation));
        if (stands.Head.Kind != DocumentKind.Arrangement)
        {
            throw new ShelfRefusedException(WorkbenchMessages.NoArrangement);
        }
        var content = ContentOf(sheet, stands.Version.Title);
        return ItemOf.Saved(await Told(_shelf.Save(id, from, content, Sitting(sitting), cancellation)));
    }

    /// <summary>Puts an arrangement, or a tune under the usual brief, on the desk.</summary>
    /// <param name="version">Null: the current one.</param>
    public async Task<ShelfOpened> Open(string id, int? version, CancellationToken cancellation)
    {
        var document = await Told(_shelf.Get(id, version, cancellation));
        var bytes = Encoding.UTF8.GetBytes(document.Text);
        var read = document.Head.Kind switch
        {
            DocumentKind.Arrangement => StoredArrangement.Read(_tools, bytes),
            DocumentKind.Tune => TuneOf(bytes),
            _ => throw new ShelfRefusedException(WorkbenchMessages.NotForTheDesk),
        };
        if (read.Value is not { } stored)
        {
            throw new ShelfRefusedException(
                WorkbenchMessages.ShelvedUnreadable(
                    read.Diagnostics.First(d => d.Severity == Severity.Error).ToString()
                )
            );
        }
        var source = new TuneSource
        {
            Name = document.Version.Title,
            Tunes = [stored.Tune],
            Stored = stored.File,
        };
        return new(
            ItemOf.Document(document.Head),
            ItemOf.Version(document.Version),
            source,
            BriefTold.Wishes(stored.File.Brief)
        )
        {
            Look = SheetLook.Read(stored.File.Shown),
        };
    }

    // A tune by itself, under the usual brief.
    private Reading<StoredArrangement> TuneOf(byte[] abc)
    {
        using var stream = new MemoryStream(abc, writable: false);
        var book = _tools.ReadAbc(stream, part: null);
        return new(
            book.Value is [var tune, ..]
                ? new StoredArrangement(new ArrangementFile(new Brief(), [], Encoding.UTF8.GetString(abc)), tune)
                : null,
            book.Diagnostics
        );
    }

    /// <summary>A document with its text.</summary>
    /// <param name="version">Null: the current one.</param>
    internal Task<Document> Get(string id, int? version, CancellationToken cancellation) =>
        Told(_shelf.Get(id, version, cancellation));

    /// <summary>Puts something new on the shelf.</summary>
    internal async Task<ShelfItem> Add(DocumentKind kind, Content content, CancellationToken cancellation) =>
        ItemOf.Document(await Told(_shelf.Add(kind, content, [], null, cancellation)));

    /// <summary>A new version of a document of this kind.</summary>
    internal async Task<ShelfSaved> Save(
        string id,
        int from,
        DocumentKind kind,
        Content content,
        CancellationToken cancellation
    ) =>
        (await Get(id, null, cancellation)).Head.Kind == kind
            ? ItemOf.Saved(await Told(_shelf.Save(id, from, content, null, cancellation)))
            : throw new ShelfRefusedException(WorkbenchMessages.OtherKind);

    public async Task<ShelfHistory> History(string id, CancellationToken cancellation) =>
        ItemOf.History(await Told(_shelf.History(id, cancellation)));

    /// <summary>Makes an old version hold again, as a new one.</summary>
    public async Task<ShelfSaved> Again(string id, int version, int from, CancellationToken cancellation) =>
        ItemOf.Saved(await Told(_shelf.Again(id, version, from, cancellation)));

    /// <summary>Makes a document of its own of a version.</summary>
    public async Task<ShelfItem> Copy(string id, int version, CancellationToken cancellation) =>
        ItemOf.Document(await Told(_shelf.Copy(id, version, cancellation)));

    public async Task<ShelfItem> Rename(string id, string title, CancellationToken cancellation) =>
        ItemOf.Document(await Told(_shelf.Rename(id, title, cancellation)));

    /// <summary>Names a version, which then always stays; null takes the name away.</summary>
    public async Task<ShelfHistory> Name(string id, int version, string? name, CancellationToken cancellation) =>
        ItemOf.History(await Told(_shelf.Name(id, version, name, cancellation)));

    public async Task<ShelfItem> Tag(string id, ValueList<string> tags, CancellationToken cancellation) =>
        ItemOf.Document(await Told(_shelf.Tag(id, tags, cancellation)));

    /// <summary>Puts a document aside, where it stays until somebody takes it back or throws it away.</summary>
    public async Task<ShelfItem> Delete(string id, CancellationToken cancellation) =>
        ItemOf.Document(await Told(_shelf.Delete(id, cancellation)));

    public async Task<ShelfItem> TakeBack(string id, CancellationToken cancellation) =>
        ItemOf.Document(await Told(_shelf.TakeBack(id, cancellation)));

    /// <summary>Throws away for good what was put aside; how many documents that were.</summary>
    /// <param name="id">Null: all of it.</param>
    public Task<int> Purge(string? id, CancellationToken cancellation) => Told(_shelf.Purge(id, cancellation));

    /// <summary>The whole shelf as a zip.</summary>
    public Task<Stream> BackUp(CancellationToken cancellation) => Told(_shelf.BackUp(cancellation));

    /// <summary>Puts a backup in the place of the shelf; the name of the file that the shelf is kept in as it was.</summary>
    public async Task<string> Restore(Stream zip, CancellationToken cancellation) =>
        Path.GetFileName(await Told(_shelf.Restore(zip, cancellation)));

    public void Dispose()
    {
        _shelf.Dispose();
        _tools.Dispose();
    }

    private Content ContentOf(Sheet sheet, string title)
    {
        var piece = sheet.Piece!;
        var bytes = SavedArrangement.Of(
            _tools,
            piece.Tune,
            piece.Brief,
            piece.Figures,
            out var problem,
            sheet.About!.Look.Shown
        );
        var setting = sheet.Tune.Setting;
        return bytes is null
            ? throw new ShelfRefusedException(problem)
            : new Content(
                ItemOf.Title(title),
                Encoding.UTF8.GetString(bytes),
                setting.Key,
                setting.Metre,
                Math.Round(setting.Effort.Overall, 1)
            );
    }

    // A page names its own; only what names can be is kept of it.
    private static string? Sitting(string? given) =>
        given is { Length: > 0 and <= 32 } && given.All(char.IsAsciiLetterOrDigit) ? given : null;

    /// <summary>The shelf's answer, its refusals as ours.</summary>
    internal static async Task<T> Told<T>(Task<T> work)
    {
        try
        {
            return await work;
        }
        catch (ShelfException fault)
        {
            throw Refused(fault);
        }
    }

    private static ShelfRefusedException Refused(ShelfException fault) =>
        new(fault.Message, fault)
        {
            IsMissing = fault.Fault == ShelfFault.Missing,
            IsUnusable = fault.Fault == ShelfFault.Unusable,
        };
}
