using Stridewright.Music;
using Stridewright.Shelf;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Workbench.Practising;

/// <summary>The takes of a shelf. Calls fail with <see cref="ShelfRefusedException"/>.</summary>
public sealed class TakeShelf
{
    private readonly Shelf.Shelf _shelf;

    internal TakeShelf(Shelf.Shelf shelf) => _shelf = shelf;

    /// <summary>Keeps a take that has begun, or that is there already.</summary>
    public async Task<ShelvedTake> Save(KeptTake take, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(take);
        var head = await ShelfDesk.Told(
            _shelf.Add(DocumentKind.Take, ContentOf(take), Tags(take), sitting: null, cancellation)
        );
        return new(head.Id, take);
    }

    /// <summary>Keeps a take as it has become meanwhile, in the place of what was kept of it.</summary>
    public async Task<ShelvedTake> Save(string id, KeptTake take, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(take);
        var stands = (await Of(id, cancellation)).Head;
        await ShelfDesk.Told(_shelf.Save(id, stands.Current.Number, ContentOf(take), sitting: id, cancellation));
        await ShelfDesk.Told(_shelf.Tag(id, Tags(take), cancellation));
        return new(id, take);
    }

    public async Task<ShelvedTake> Get(string id, CancellationToken cancellation) => Read(await Of(id, cancellation));

    /// <summary>Takes, the last begun first.</summary>
    /// <param name="playerId">Null: of everybody.</param>
    /// <param name="pieceId">Null: of every piece.</param>
    public async Task<ValueList<ShelvedTake>> List(string? playerId, string? pieceId, CancellationToken cancellation)
    {
        var tag =
            playerId is not null ? OfPlayer(playerId)
            : pieceId is not null ? OfPiece(pieceId)
            : null;
        var documents = await ShelfDesk.Told(_shelf.All(DocumentKind.Take, tag, cancellation));
        return documents
            .Select(Read)
            .Where(t => pieceId is null || t.Take.PieceId == pieceId)
            .OrderByDescending(t => t.Take.At)
            .ThenBy(t => t.Id, StringComparer.Ordinal)
            .ToValueList();
    }

    /// <summary>Puts a take aside, from where it can be taken back as any document.</summary>
    public async Task Delete(string id, CancellationToken cancellation)
    {
        await Of(id, cancellation);
        await ShelfDesk.Told(_shelf.Delete(id, cancellation));
    }

    internal static string OfPlayer(string id) => "player-" + id;

    private static string OfPiece(string id) => "piece-" + id;

    private async Task<Document> Of(string id, CancellationToken cancellation)
    {
        var document = await ShelfDesk.Told(_shelf.Get(id, null, cancellation));
        return document.Head.Kind == DocumentKind.Take
            ? document
            : throw new ShelfRefusedException(WorkbenchMessages.NoTake) { IsMissing = true };
    }

    private static Content ContentOf(KeptTake take) => new(ItemOf.Title(take.Title), TakeJson.Write(take));

    private static ValueList<string> Tags(KeptTake take) =>
        [
            .. take.PlayerId is { } player ? [OfPlayer(player)] : Array.Empty<string>(),
            .. take.PieceId is { } piece ? [OfPiece(piece)] : Array.Empty<string>(),
        ];

    private static ShelvedTake Read(Document document) =>
        new(
            document.Head.Id,
            TakeJson.Read(document.Text)
                ?? throw new ShelfRefusedException(WorkbenchMessages.TakeUnreadable(document.Version.Title))
        );
}
