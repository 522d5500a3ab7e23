using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Shelf;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Workbench.Practising;

/// <summary>The players of a shelf, each a player file. Calls fail with <see cref="ShelfRefusedException"/>.</summary>
public sealed class PlayerShelf
{
    private readonly Shelf.Shelf _shelf;

    internal PlayerShelf(Shelf.Shelf shelf) => _shelf = shelf;

    /// <summary>All players, by name.</summary>
    public async Task<ValueList<ShelvedPlayer>> List(CancellationToken cancellation)
    {
        var documents = await ShelfDesk.Told(_shelf.All(DocumentKind.Player, tag: null, cancellation));
        return documents
            .Select(d => new ShelvedPlayer(d.Head.Id, d.Version.Title))
            .OrderBy(p => p.Name, StringComparer.OrdinalIgnoreCase)
            .ThenBy(p => p.Id, StringComparer.Ordinal)
            .ToValueList();
    }

    /// <summary>The player of a name, small and capital letters alike; null: there is none.</summary>
    public async Task<ShelvedPlayer?> Find(string name, CancellationToken cancellation) =>
        (await List(cancellation)).FirstOrDefault(p =>
            string.Equals(p.Name, name?.Trim(), StringComparison.OrdinalIgnoreCase)
        );

    /// <summary>The player of a name; where there is none, one with usual hands is put on the shelf.</summary>
    public async Task<ShelvedPlayer> Named(string name, CancellationToken cancellation)
    {
        if (await Find(name, cancellation) is { } there)
        {
            return there;
        }
        if (!Player.IsName(name?.Trim()))
        {
            throw new ShelfRefusedException(WorkbenchMessages.PlayerName(Player.LongestName));
        }
        var player = new Player(name!.Trim(), new PlayerHands());
        var head = await ShelfDesk.Told(
            _shelf.Add(
                DocumentKind.Player,
                new Content(player.Name, PlayerText.Write(player)),
                [],
                sitting: null,
                cancellation
            )
        );
        return new(head.Id, player.Name);
    }

    /// <summary>
    /// Throws away for good a player and all takes of theirs, with every version, and leaves nothing of them in the file.
    /// Backups, and the copies that were made before a migration or a restoring, keep theirs.
    /// </summary>
    /// <returns>How many takes went.</returns>
    public async Task<int> Forget(string id, CancellationToken cancellation)
    {
        var document = await ShelfDesk.Told(_shelf.Get(id, null, cancellation));
        return document.Head.Kind == DocumentKind.Player
            ? await ShelfDesk.Told(_shelf.Forget(id, TakeShelf.OfPlayer(id), cancellation)) - 1
            : throw new ShelfRefusedException(WorkbenchMessages.NoPlayer) { IsMissing = true };
    }
}
