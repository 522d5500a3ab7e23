using Stridewright.Music;
using Stridewright.Shelf.Storage;

namespace Stridewright.Shelf;

/// <summary>
/// The store of documents in one folder. Whatever a call answered stands on the disk. Calls may come from anywhere at once;
/// they are done one after the other. All fail with <see cref="ShelfException"/>.
/// </summary>
public sealed class Shelf : IDisposable
{
    private const string Migration = "migration";

    /// <summary>Copies of each kind that stay in the folder.</summary>
    private const int CopiesKept = 5;

    private readonly ShelfFolder _folder;
    private readonly ShelfFile _file;
    private readonly TimeProvider _clock;
    private readonly SemaphoreSlim _turn = new(1);
    private readonly long _mostInside;
    private bool _isOpen,
        _isGivenBack;

    private Shelf(ShelfFolder folder, TimeProvider clock, long mostInside) =>
        (_folder, _file, _clock, _mostInside) = (folder, new ShelfFile(folder.Database), clock, mostInside);

    /// <summary>Where a shelf is kept unless somebody names a folder: below the user's own data.</summary>
    /// <exception cref="ShelfException">The user has none.</exception>
    public static string UsualFolder =>
        Environment.GetFolderPath(
            Environment.SpecialFolder.LocalApplicationData,
            Environment.SpecialFolderOption.DoNotVerify
        )
            is { Length: > 0 } own
            ? Path.Combine(own, "stridewright")
            : throw new ShelfException(ShelfMessages.NoOwnFolder);

    public string Folder => _folder.Path;

    /// <summary>Takes the folder, quickly, and opens no file of it yet. Nobody else can take it until this is disposed or
    /// the program ends in any way.</summary>
    /// <exception cref="ShelfException">It is in use, or cannot be used.</exception>
    public static Shelf Take(string folder, TimeProvider clock) => Take(folder, clock, Backups.MostInside);

    /// <param name="mostInside">Bytes that a backup may hold.</param>
    internal static Shelf Take(string folder, TimeProvider clock, long mostInside) =>
        new(ShelfFolder.Take(folder), clock, mostInside);

    /// <summary>Opens the file of the folder and brings it up to date, after it was copied; a new one is made where there is
    /// none. Once is enough; other calls do it where nobody did.</summary>
    public Task Open(CancellationToken cancellation) => Do(_ => true, cancellation);

    /// <summary>The documents that fit, without their texts.</summary>
    public Task<Found> Find(Sought sought, CancellationToken cancellation) =>
        Do(context => Searching.Find(context, sought), cancellation);

    /// <summary>All documents of a kind that stand, as their current versions have them, by id.</summary>
    /// <param name="tag">Null: whatever tags they have.</param>
    public Task<ValueList<Document>> All(DocumentKind kind, string? tag, CancellationToken cancellation) =>
        Do(context => Searching.All(context, kind, tag), cancellation);

    /// <param name="number">Of the version; null: the current one.</param>
    public Task<Document> Get(string id, int? number, CancellationToken cancellation) =>
        Do(
            context =>
            {
                var document = Reading.Of(context, id);
                var version = Reading.Version(context, id, number ?? document.Current);
                return new Document(Reading.Head(context, document), Reading.Head(version), version.Text);
            },
            cancellation
        );

    /// <summary>Its versions, the last first.</summary>
    public Task<ValueList<VersionHead>> History(string id, CancellationToken cancellation) =>
        Do(context => Reading.History(context, Reading.Of(context, id)), cancellation);

    /// <param name="sitting">One stretch of work, whose quick saves may be thinned out; null: this save stays.</param>
    public Task<DocumentHead> Add(
        DocumentKind kind,
        Content content,
        ValueList<string> tags,
        string? sitting,
        CancellationToken cancellation
    ) => Do(context => new Saving(context, Now).Add(kind, content, tags, sitting), cancellation);

    /// <summary>Saves a new version. Where <paramref name="from"/> is no longer the current one, it is kept beside it.</summary>
    /// <param name="from">Number of the version that it was made from.</param>
    /// <param name="sitting">As for <c>Add</c>.</param>
    public Task<Saved> Save(string id, int from, Content content, string? sitting, CancellationToken cancellation) =>
        Do(context => new Saving(context, Now).Save(id, from, content, sitting), cancellation);

    /// <summary>Makes an old version hold again, as a new one.</summary>
    public Task<Saved> Again(string id, int number, int from, CancellationToken cancellation) =>
        Do(context => new Saving(context, Now).Again(id, number, from), cancellation);

    /// <summary>Makes a document of its own of a version.</summary>
    public Task<DocumentHead> Copy(string id, int number, CancellationToken cancellation) =>
        Do(context => new Saving(context, Now).Copy(id, number), cancellation);

    /// <summary>Gives a title, as a new version.</summary>
    public Task<DocumentHead> Rename(string id, string title, CancellationToken cancellation) =>
        Do(context => new Saving(context, Now).Rename(id, title), cancellation);

    /// <summary>Names a version, which then always stays; null takes the name away.</summary>
    public Task<ValueList<VersionHead>> Name(string id, int number, string? name, CancellationToken cancellation) =>
        Do(context => new Saving(context, Now).Name(id, number, name), cancellation);

    /// <summary>Puts these tags on a document instead of those it had.</summary>
    public Task<DocumentHead> Tag(string id, ValueList<string> tags, CancellationToken cancellation) =>
        Do(context => new Saving(context, Now).Tag(id, tags), cancellation);

    /// <summary>Puts a document aside, where it stays until somebody takes it back or throws it away.</summary>
    public Task<DocumentHead> Delete(string id, CancellationToken cancellation) =>
        Do(context => new Saving(context, Now).PutAside(id, isAside: true), cancellation);

    /// <summary>Takes a document back that was put aside.</summary>
    public Task<DocumentHead> TakeBack(string id, CancellationToken cancellation) =>
        Do(context => new Saving(context, Now).PutAside(id, isAside: false), cancellation);

    /// <summary>Throws away for good what was put aside.</summary>
    /// <param name="id">Null: all of it.</param>
    /// <returns>How many documents.</returns>
    public Task<int> Purge(string? id, CancellationToken cancellation) =>
        Do(context => Saving.Purge(context, id), cancellation);

    /// <summary>
    /// Throws away for good a document and all that bear a tag, standing or put aside, with all their versions, and leaves
    /// nothing of them in the free pages of the file. Backups and the copies beside the file keep theirs.
    /// </summary>
    /// <returns>How many documents.</returns>
    public Task<int> Forget(string id, string tag, CancellationToken cancellation) =>
        Do(
            context =>
            {
                var count = Saving.Forget(context, id, tag);
                _file.Tidy();
                return count;
            },
            cancellation
        );

    /// <summary>The whole shelf as a zip, as of this moment. The stream's file goes with it.</summary>
    public Task<Stream> BackUp(CancellationToken cancellation) =>
        Do<Stream>(_ => Backups.Write(_folder, _file), cancellation);

    /// <summary>Puts a backup in the place of the shelf, once it is found whole. The shelf as it was is kept beside it.</summary>
    /// <returns>The file in which it was kept.</returns>
    public async Task<string> Restore(Stream zip, CancellationToken cancellation)
    {
        var file = await Backups.Receive(_folder, zip, cancellation);
        try
        {
            return await Do(
                _ =>
                {
                    var restored = Backups.Unpack(_folder, file, _mostInside);
                    var kept = _folder.KeptFile(Backups.Restoring, Now);
                    _file.CopyTo(kept);
                    _file.Close();
                    _isOpen = false;
                    File.Move(restored, _folder.Database, overwrite: true);
                    OpenInTurn();
                    _folder.KeepOnly(CopiesKept, Backups.Restoring);
                    return kept;
                },
                cancellation
            );
        }
        finally
        {
            File.Delete(file);
        }
    }

    public void Dispose()
    {
        if (Interlocked.Exchange(ref _isGivenBack, true))
        {
            return;
        }
        _turn.Wait();
        _file.LetGo();
        _folder.Dispose();
        _turn.Dispose();
    }

    private DateTimeOffset Now => _clock.GetUtcNow();

    private async Task<T> Do<T>(Func<ShelfContext, T> work, CancellationToken cancellation)
    {
        await _turn.WaitAsync(cancellation);
        try
        {
            OpenInTurn();
            using var context = _file.Context();
            return work(context);
        }
        catch (Exception fault) when (ShelfFile.Sentence(fault, _folder.Database) is not null)
        {
            throw new ShelfException(ShelfFile.Sentence(fault, _folder.Database)!, fault);
        }
        finally
        {
            _turn.Release();
        }
    }

    private void OpenInTurn()
    {
        if (_isOpen)
        {
            return;
        }
        try
        {
            if (!File.Exists(_folder.Database))
            {
                ShelfFolder.CreatePrivate(_folder.Database).Dispose();
            }
            _file.BringUpToDate(() =>
            {
                _file.CopyTo(_folder.KeptFile(Migration, Now));
                _folder.KeepOnly(CopiesKept, Migration);
            });
            _isOpen = true;
        }
        finally
        {
            if (!_isOpen)
            {
                _file.LetGo();
            }
        }
    }
}
