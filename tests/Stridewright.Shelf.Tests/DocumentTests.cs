using static Stridewright.Shelf.Tests.Place;

namespace Stridewright.Shelf.Tests;

public sealed class DocumentTests : IDisposable
{
    private readonly Place _place = new();
    private readonly Shelf _shelf;

    public DocumentTests() => _shelf = _place.Take();

    public void Dispose()
    {
        _shelf.Dispose();
        _place.Dispose();
    }

    [Fact]
    public async Task Every_save_is_a_version_with_its_time_and_an_old_one_can_hold_again()
    {
        var head = await Add(_shelf, Setting("one"));
        _place.Wait(TimeSpan.FromHours(1));
        await _shelf.Save(head.Id, 1, Setting("two", effort: 55), sitting: null, None);
        var history = await _shelf.History(head.Id, None);
        Assert.Equal([2, 1], history.Select(v => v.Number));
        Assert.Equal(TimeSpan.FromHours(1), history[0].Saved - history[1].Saved);
        Assert.Equal("one", (await _shelf.Get(head.Id, 1, None)).Text);

        var again = await _shelf.Again(head.Id, 1, from: 2, None);
        Assert.Equal((3, 40), (again.Document.Current.Number, again.Document.Current.Effort));
        Assert.Equal("one", (await _shelf.Get(head.Id, null, None)).Text);
        Assert.Equal("two", (await _shelf.Get(head.Id, 2, None)).Text);
    }

    [Fact]
    public async Task A_save_from_a_version_that_no_longer_holds_lies_beside_the_other_and_neither_is_lost()
    {
        var head = await Add(_shelf, Setting("first"));
        var here = await _shelf.Save(head.Id, 1, Setting("from here"), "here", None);
        var there = await _shelf.Save(head.Id, 1, Setting("from there"), "there", None);
        Assert.Null(here.Beside);
        Assert.Equal((2, 3), (there.Document.Current.Number, there.Beside!.Number));
        Assert.True(there.Beside.IsBeside);
        Assert.Equal("from here", (await _shelf.Get(head.Id, null, None)).Text);
        Assert.Equal("from there", (await _shelf.Get(head.Id, 3, None)).Text);

        var chosen = await _shelf.Again(head.Id, 3, from: 2, None);
        Assert.Null(chosen.Beside);
        Assert.Equal("from there", (await _shelf.Get(head.Id, null, None)).Text);
        var apart = await _shelf.Copy(head.Id, 2, None);
        Assert.NotEqual(head.Id, apart.Id);
        Assert.Equal("from here", (await _shelf.Get(apart.Id, null, None)).Text);
        Assert.Equal(4, (await _shelf.History(head.Id, None)).Count);
    }

    [Fact]
    public async Task Saving_the_same_again_makes_no_version_so_that_a_lost_answer_is_no_conflict()
    {
        var head = await Add(_shelf, Setting("one"));
        await _shelf.Save(head.Id, 1, Setting("two"), null, None);
        var repeated = await _shelf.Save(head.Id, 1, Setting("two"), null, None);
        Assert.Equal((2, null), (repeated.Document.Current.Number, repeated.Beside));
        Assert.Equal(2, (await _shelf.History(head.Id, None)).Count);
    }

    [Fact]
    public async Task Of_a_hundred_saves_in_one_race_one_holds_and_all_are_kept()
    {
        var head = await Add(_shelf, Setting("start"));
        var saves = Enumerable
            .Range(0, 100)
            .Select(i => Task.Run(() => _shelf.Save(head.Id, 1, Setting($"save {i}"), null, None)));
        var saved = await Task.WhenAll(saves);
        Assert.Single(saved, s => s.Beside is null);
        var texts = new HashSet<string>();
        foreach (var version in await _shelf.History(head.Id, None))
        {
            texts.Add((await _shelf.Get(head.Id, version.Number, None)).Text);
        }
        Assert.Equal(101, texts.Count);
    }

    [Fact]
    public async Task Quick_saves_of_one_sitting_are_thinned_to_one_in_two_minutes_but_never_the_last_or_a_named_one()
    {
        var head = await _shelf.Add(DocumentKind.Arrangement, Setting("0"), [], "sitting", None);
        for (var second = 10; second <= 600; second += 10)
        {
            _place.Wait(TimeSpan.FromSeconds(10));
            var from = (await _shelf.Get(head.Id, null, None)).Version.Number;
            await _shelf.Save(head.Id, from, Setting($"{second}"), "sitting", None);
            if (second == 50)
            {
                await _shelf.Name(head.Id, from + 1, "as for Saturday", None);
            }
        }
        var seconds = new List<int>();
        foreach (var version in (await _shelf.History(head.Id, None)).Reverse())
        {
            seconds.Add(int.Parse((await _shelf.Get(head.Id, version.Number, None)).Text));
        }
        Assert.Equal([0, 50, 170, 290, 410, 530, 600], seconds);

        // Another sitting thins out nothing of this one.
        _place.Wait(TimeSpan.FromSeconds(1));
        var last = (await _shelf.Get(head.Id, null, None)).Version.Number;
        await _shelf.Save(head.Id, last, Setting("other"), "other", None);
        Assert.Equal(8, (await _shelf.History(head.Id, None)).Count);
    }

    [Fact]
    public async Task A_history_has_at_most_two_hundred_versions_without_a_name()
    {
        var head = await Add(_shelf, Setting("0"));
        await _shelf.Name(head.Id, 1, "the first", None);
        for (var i = 1; i <= 250; i++)
        {
            _place.Wait(TimeSpan.FromMinutes(i == 17 ? 0.1 : 5));
            await _shelf.Save(head.Id, i, Setting($"{i}"), null, None);
        }
        var history = await _shelf.History(head.Id, None);
        Assert.Equal(201, history.Count);
        Assert.Equal((251, 1), (history[0].Number, history[^1].Number));
        // The one that stood nearest behind another went first.
        Assert.DoesNotContain(18, history.Select(v => v.Number));
        Assert.Equal("250", (await _shelf.Get(head.Id, null, None)).Text);
    }

    [Fact]
    public async Task What_was_put_away_is_not_found_comes_back_and_is_purged_only_on_request()
    {
        var head = await Add(_shelf, Setting("text"), "Saturday");
        await _shelf.Delete(head.Id, None);
        Assert.Empty((await _shelf.Find(new(), None)).Documents);
        Assert.Empty((await _shelf.Find(new(), None)).Standing.Tags);
        Assert.Equal(head.Id, Assert.Single((await _shelf.Find(new() { Deleted = true }, None)).Documents).Id);
        var back = await _shelf.TakeBack(head.Id, None);
        Assert.Equal((null, "Saturday"), (back.Deleted, back.Tags[0]));
        var refused = await Assert.ThrowsAsync<ShelfException>(() => _shelf.Purge(head.Id, None));
        Assert.Equal(ShelfFault.Refused, refused.Fault);
        await _shelf.Delete(head.Id, None);
        Assert.Equal(1, await _shelf.Purge(null, None));
        var missing = await Assert.ThrowsAsync<ShelfException>(() => _shelf.Get(head.Id, null, None));
        Assert.Equal(ShelfFault.Missing, missing.Fault);
    }

    [Fact]
    public async Task Work_that_goes_on_brings_a_piece_back_that_was_put_away_elsewhere()
    {
        var head = await Add(_shelf, Setting("one"));
        await _shelf.Delete(head.Id, None);
        // Looking at it, unchanged, does not.
        Assert.NotNull((await _shelf.Save(head.Id, 1, Setting("one"), null, None)).Document.Deleted);
        Assert.Null((await _shelf.Save(head.Id, 1, Setting("two"), null, None)).Document.Deleted);
    }

    [Fact]
    public async Task It_is_found_by_title_key_metre_effort_tag_and_kind()
    {
        var ferry = await Add(_shelf, new("The Ferry Bell", "", "F major", "2/4", 31.9), "Saturday", "Été");
        var lamps = await Add(_shelf, new("Lamps along the Quay", "", "D major", "4/4", 62), "saturday");
        var cafe = await Add(_shelf, new("Café by the 100% River_", "", "F major", "3/4", 80));
        await _shelf.Add(DocumentKind.Player, new("Ada", ""), [], null, None);

        await Finds(new() { Words = "ferry" }, ferry);
        await Finds(new() { Words = "BELL ferry" }, ferry);
        await Finds(new() { Words = "cafe" }, cafe);
        await Finds(new() { Words = "0% r" }, cafe);
        await Finds(new() { Words = "%" }, cafe);
        await Finds(new() { Words = "_" }, cafe);
        await Finds(new() { Words = "'; DROP TABLE Documents" });
        await Finds(new() { Words = "quay satur" }, lamps);
        await Finds(new() { Key = "F major" }, cafe, ferry);
        await Finds(new() { Metre = "4/4" }, lamps);
        await Finds(new() { Easiest = 31.9, Hardest = 62 }, lamps, ferry);
        await Finds(new() { Easiest = 62.1 }, cafe);
        await Finds(new() { Tag = "ete" }, ferry);
        await Finds(new() { Tag = "SATURDAY" }, lamps, ferry);
        Assert.Equal(
            "Ada",
            Assert.Single((await _shelf.Find(new() { Kind = DocumentKind.Player }, None)).Documents).Current.Title
        );
        var some = await _shelf.Find(new() { Skip = 1, Most = 2 }, None);
        Assert.Equal((4, 2), (some.Count, some.Documents.Count));
        Assert.Equal(["D major", "F major"], some.Standing.Keys);
        Assert.Equal(["2/4", "3/4", "4/4"], some.Standing.Metres);
        Assert.Equal(["Été", "Saturday"], some.Standing.Tags);

        async Task Finds(Sought sought, params DocumentHead[] expected)
        {
            var found = await _shelf.Find(sought, None);
            Assert.Equal(expected.Select(d => d.Id).Order(), found.Documents.Select(d => d.Id).Order());
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("  ")]
    [InlineData("two\nlines")]
    [InlineData(null)]
    public async Task A_title_is_one_line(string? title)
    {
        var refused = await Assert.ThrowsAsync<ShelfException>(() =>
            Add(_shelf, Setting("", title ?? new string('x', DocumentLimits.Title + 1)))
        );
        Assert.Equal(ShelfFault.Refused, refused.Fault);
        Assert.Empty((await _shelf.Find(new(), None)).Documents);
    }

    [Fact]
    public async Task Titles_tags_and_texts_of_any_letters_come_back_as_they_were()
    {
        var title = "<script>alert(1)</script> ♭ \u202E 🎹 \uD800";
        var head = await Add(_shelf, Setting("text\0\r\n\uFEFF'\"", title), "<b>", "🎹");
        var back = await _shelf.Get(head.Id, null, None);
        Assert.Equal("text\0\r\n\uFEFF'\"", back.Text);
        // A lone half of a pair is no text.
        Assert.Equal(title.Replace('\uD800', '\uFFFD'), back.Version.Title);
        Assert.Equal(["<b>", "🎹"], back.Head.Tags);
        Assert.Equal("renamed", (await _shelf.Rename(head.Id, "renamed", None)).Current.Title);
        Assert.Equal(title.Replace('\uD800', '\uFFFD'), (await _shelf.Get(head.Id, 1, None)).Version.Title);
    }
}
