using System.Text;
using Stridewright.Workbench.Practising;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Workbench.Tests.Practising;

public sealed class TakeShelfTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;

    private readonly TemporaryFolder _folder = new();
    private readonly ShelfDesk _shelf;

    public TakeShelfTests() => _shelf = ShelfDesk.Take(_folder.Root);

    public void Dispose()
    {
        _shelf.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public async Task A_take_is_kept_from_its_first_notes_on_and_as_it_goes_on()
    {
        var ada = await _shelf.Players.Named("Ada", None);
        var begun = await _shelf.Takes.Save(KeptTakes.Of(ada, 1), None);
        Assert.Null((await _shelf.Takes.Get(begun.Id, None)).Take.Heard);

        var whole = KeptTakes.Of(ada, 1) with
        {
            Midi = [77, 84, 104, 100, 0, 255],
            Range = "5-12",
            Heard = KeptTakes.Heard with { Next = [new("leap", "5", "6", "the leap in bar 5")] },
        };
        await _shelf.Takes.Save(begun.Id, whole, None);
        Assert.Equal(new ShelvedTake(begun.Id, whole), await _shelf.Takes.Get(begun.Id, None));
        Assert.Single(await _shelf.Takes.List(null, null, None));
    }

    [Fact]
    public async Task Takes_are_found_by_player_and_piece_the_last_first_and_not_among_pieces()
    {
        var (ada, ben) = (await _shelf.Players.Named("Ada", None), await _shelf.Players.Named("Ben", None));
        Assert.Equal(ada, await _shelf.Players.Named("ada", None));
        await _shelf.Takes.Save(KeptTakes.Of(ada, 1) with { PieceId = "p" }, None);
        await _shelf.Takes.Save(KeptTakes.Of(ada, 3), None);
        await _shelf.Takes.Save(KeptTakes.Of(ben, 2) with { PieceId = "p" }, None);

        Assert.Equal([3, 1], (await _shelf.Takes.List(ada.Id, null, None)).Select(t => t.Take.At.Day));
        Assert.Equal([2, 1], (await _shelf.Takes.List(null, "p", None)).Select(t => t.Take.At.Day));
        Assert.Equal([1], (await _shelf.Takes.List(ada.Id, "p", None)).Select(t => t.Take.At.Day));
        var found = await _shelf.Find(new ShelfWish(), None);
        Assert.Equal(2, found.Count); // the players
        Assert.Empty(found.Tags);
        Assert.Equal(3, (await _shelf.Find(new ShelfWish { Kind = "take" }, None)).Count);
    }

    [Fact]
    public async Task A_forgotten_player_leaves_nothing_in_the_files_of_the_shelf()
    {
        var (ada, ben) = (await _shelf.Players.Named("Ada Q7RN", None), await _shelf.Players.Named("Ben", None));
        var take = await _shelf.Takes.Save(KeptTakes.Of(ada, 1) with { Title = "Lamp X9KT" }, None);
        await _shelf.Takes.Save(take.Id, KeptTakes.Of(ada, 1) with { Title = "Lamp X9KT", Hand = "left" }, None);
        var away = await _shelf.Takes.Save(KeptTakes.Of(ada, 2) with { Title = "Lamp X9KT" }, None);
        await _shelf.Takes.Delete(away.Id, None);
        var bens = await _shelf.Takes.Save(KeptTakes.Of(ben, 3), None);
        Assert.True(Stands("X9KT") && Stands("Q7RN"));

        Assert.Equal(2, await _shelf.Players.Forget(ada.Id, None));
        Assert.False(Stands("X9KT") || Stands("Q7RN") || Stands(ada.Id));
        Assert.Equal([bens.Id], (await _shelf.Takes.List(null, null, None)).Select(t => t.Id));
        Assert.Equal([ben], await _shelf.Players.List(None));
        var again = await Assert.ThrowsAsync<ShelfRefusedException>(() => _shelf.Players.Forget(ada.Id, None));
        Assert.True(again.IsMissing);
    }

    [Fact]
    public async Task What_is_no_player_is_not_forgotten_and_what_is_no_take_is_not_read()
    {
        var ada = await _shelf.Players.Named("Ada", None);
        var take = await _shelf.Takes.Save(KeptTakes.Of(ada, 1), None);
        await Assert.ThrowsAsync<ShelfRefusedException>(() => _shelf.Players.Forget(take.Id, None));
        await Assert.ThrowsAsync<ShelfRefusedException>(() => _shelf.Takes.Get(ada.Id, None));
        await Assert.ThrowsAsync<ShelfRefusedException>(() => _shelf.Takes.Delete(ada.Id, None));
        await Assert.ThrowsAsync<ShelfRefusedException>(() => _shelf.Players.Named(" \n ", None));
    }

    // Read beside the shelf, which is open.
    private bool Stands(string text)
    {
        var sought = Encoding.UTF8.GetBytes(text);
        return Directory
            .GetFiles(_folder.Root, "shelf.db*")
            .Any(file =>
            {
                using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
                var bytes = new byte[stream.Length];
                stream.ReadExactly(bytes);
                return bytes.AsSpan().IndexOf(sought) >= 0;
            });
    }
}
