using System.IO.Compression;
using System.Text.RegularExpressions;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Engraving.Tests;

public sealed partial class EngraverTests(WarmEngraver warm)
{
    private static readonly PageSetup Timed = PageSetup.Default with { Timed = true };

    [Fact]
    public void Ids_of_notes_and_bars_stand_in_the_pages()
    {
        var svg = string.Concat(warm.Engrave(PianoXml.Rag(8)).Pages);
        for (var bar = 1; bar <= 8; bar++)
        {
            Assert.Contains($"id=\"b{bar}\" class=\"measure\"", svg, StringComparison.Ordinal);
            Assert.Contains($"id=\"n{bar}.3\" class=\"note\"", svg, StringComparison.Ordinal);
            Assert.Contains($"id=\"l{bar}\" class=\"note\"", svg, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(32)]
    [InlineData(64)]
    [InlineData(66)]
    [InlineData(96)]
    public void Lines_hold_four_to_six_bars_pages_are_full_and_none_has_a_lone_line(int length)
    {
        var pages = warm.Engrave(PianoXml.Rag(length)).Pages;
        var systems = pages.Select(p => SystemClass().Split(p).Skip(1).ToList()).ToList();
        var bars = systems.SelectMany(s => s).Select(s => MeasureClass().Count(s)).ToList();
        Assert.Equal(length, bars.Sum());
        Assert.All(bars.SkipLast(1), count => Assert.InRange(count, 4, 6));
        var counts = systems.Select(s => s.Count).ToList();
        Assert.All(counts.SkipLast(1), count => Assert.InRange(count, 5, 7));
        Assert.True(counts[^1] >= 2, string.Join(" ", counts));
    }

    [Fact]
    public void A_last_bar_is_not_alone_where_the_line_before_can_spare_one()
    {
        for (var length = 17; length <= 29; length++)
        {
            var bars = warm.Engrave(PianoXml.Rag(length))
                .Pages.SelectMany(p => SystemClass().Split(p).Skip(1))
                .Select(s => MeasureClass().Count(s))
                .ToList();
            Assert.Equal(length, bars.Sum());
            Assert.True(bars[^1] > 1 || bars[^2] < 5, $"{length}: {string.Join(" ", bars)}");
        }
    }

    [Fact]
    public void Time_map_tells_when_notes_begin()
    {
        // Onsets in quarter notes by common practice: a quarter, two eighths, a triplet of eighths, a half in bar 2.
        const string ratio =
            "<time-modification><actual-notes>3</actual-notes><normal-notes>2</normal-notes></time-modification>";
        static string Bracket(string type) => $"<notations><tuplet type=\"{type}\"/></notations>";
        var xml = PianoXml.Score(
            "<measure number=\"1\"><attributes><divisions>12</divisions><time><beats>3</beats><beat-type>4</beat-type></time>"
                + "<staves>2</staves><clef number=\"1\"><sign>G</sign><line>2</line></clef>"
                + "<clef number=\"2\"><sign>F</sign><line>4</line></clef></attributes><sound tempo=\"60\"/>"
                + PianoXml.Note("a", "C5", 12, "quarter")
                + PianoXml.Note("b", "D5", 6, "eighth")
                + PianoXml.Note("c", "E5", 6, "eighth")
                + PianoXml
                    .Note("d", "F5", 4, "eighth", ratio)
                    .Replace("</note>", Bracket("start") + "</note>", StringComparison.Ordinal)
                + PianoXml.Note("e", "G5", 4, "eighth", ratio)
                + PianoXml
                    .Note("f", "A5", 4, "eighth", ratio)
                    .Replace("</note>", Bracket("stop") + "</note>", StringComparison.Ordinal)
                + "<backup><duration>36</duration></backup>"
                + PianoXml.Note("g", "C3", 36, "half", "<dot/>", 2)
                + "</measure><measure number=\"2\">"
                + PianoXml.Note("h", "C5", 36, "half", "<dot/>")
                + PianoXml.Note("i", "+E5", 36, "half", "<dot/>")
                + "</measure>"
        );
        var map = warm.Engrave(xml, Timed).TimeMap;
        (double, string)[] expected =
        [
            (0, "a g"),
            (1, "b"),
            (1.5, "c"),
            (2, "d"),
            (2 + 1 / 3.0, "e"),
            (2 + 2 / 3.0, "f"),
            (3, "h i"),
        ];
        Assert.Equal(expected.Select(e => e.Item2), map.Select(m => string.Join(" ", m.Notes)));
        Assert.All(
            map.Zip(expected),
            pair =>
            {
                Assert.Equal(pair.Second.Item1, pair.First.Quarters, 0.001);
                // At 60 quarters a minute.
                Assert.Equal(pair.Second.Item1 * 1000, pair.First.Milliseconds, 1.0);
            }
        );
    }

    [Fact]
    public void A_repeat_is_played_twice_in_the_time_map()
    {
        var xml = PianoXml
            .Rag(2)
            .Replace(
                "<bar-style>light-heavy</bar-style>",
                "<bar-style>light-heavy</bar-style><repeat direction=\"backward\"/>",
                StringComparison.Ordinal
            );
        var starts = warm.Engrave(xml, Timed)
            .TimeMap.SelectMany(m =>
                m.Notes.Where(n => n.StartsWith("n1.0", StringComparison.Ordinal)).Select(n => (n, m.Quarters))
            );
        Assert.Equal([("n1.0", 0), ("n1.0-rend2", 4)], starts);
    }

    [Fact]
    public void The_same_score_gives_the_same_pages()
    {
        using var other = Engraver.Create();
        var again = other.Engrave(PianoXml.Rag(6), PageSetup.Default, TestContext.Current.CancellationToken).Value!;
        Assert.Equal(again.Pages, warm.Engrave(PianoXml.Rag(6)).Pages);
    }

    [Theory]
    [InlineData("", "well-formed")]
    [InlineData("<score-partwise><part>", "well-formed")]
    [InlineData("no music at all", "well-formed")]
    [InlineData("<html/>", "<html>")]
    [InlineData("<score-partwise version=\"4.0\"/>", "no bars")]
    [InlineData(
        "<!DOCTYPE a [<!ENTITY b SYSTEM \"/etc/hostname\">]><score-partwise>&b;</score-partwise>",
        "well-formed"
    )]
    public void What_is_no_score_gets_a_clear_error(string text, string word)
    {
        var read = warm.Engraver.Engrave(text, PageSetup.Default, TestContext.Current.CancellationToken);
        Assert.Null(read.Value);
        var finding = Assert.Single(read.Diagnostics);
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Contains(word, finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_broken_tag_is_named_by_its_line()
    {
        var read = warm.Engraver.Engrave(
            "<score-partwise>\n<part>\n</prat>",
            PageSetup.Default,
            TestContext.Current.CancellationToken
        );
        Assert.Equal(3, Assert.Single(read.Diagnostics).Place.Line);
    }

    [Fact]
    public void What_the_engraver_remarks_is_handed_over()
    {
        // A slur without an end.
        var xml = PianoXml.Score(
            "<measure number=\"1\"><attributes><divisions>1</divisions></attributes>"
                + PianoXml
                    .Note("a", "C5", 4, "whole")
                    .Replace(
                        "</note>",
                        "<notations><slur type=\"stop\" number=\"1\"/></notations></note>",
                        StringComparison.Ordinal
                    )
                + "</measure>"
        );
        var read = warm.Engraver.Engrave(xml, PageSetup.Default, TestContext.Current.CancellationToken);
        Assert.NotNull(read.Value);
        Assert.Contains(read.Diagnostics, d => d.Severity == Severity.Warning);
    }

    [Fact]
    public void Any_file_of_others_gives_pages_or_an_error()
    {
        string[] folders = ["corpus/musicxml/valid", "corpus/musicxml/reject"];
        // A fixed third of them.
        var files = folders.SelectMany(f => Corpus.Files(f, ".musicxml", ".xml", ".mxl")).Where((_, i) => i % 3 == 0);
        foreach (var file in files)
        {
            if (Text(file) is { } text)
            {
                var read = warm.Engraver.Engrave(text, PageSetup.Default, TestContext.Current.CancellationToken);
                Assert.True(
                    read.Value is { Pages.Count: > 0 } || read.Diagnostics.Any(d => d.Severity == Severity.Error),
                    file
                );
            }
        }
    }

    [Fact]
    public void Too_long_a_score_is_stopped()
    {
        using var hasty = Engraver.Create(TimeSpan.FromMilliseconds(20));
        var read = hasty.Engrave(PianoXml.Rag(400), PageSetup.Default, TestContext.Current.CancellationToken);
        Assert.True(read.Value is null, "it was engraved all the same");
        Assert.Contains("0.08 s", Assert.Single(read.Diagnostics).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void After_a_cancelled_score_the_next_one_is_engraved()
    {
        using var engraver = Engraver.Create(TimeSpan.FromSeconds(60));
        using var source = new CancellationTokenSource(50);
        Assert.ThrowsAny<OperationCanceledException>(() =>
            engraver.Engrave(PianoXml.Rag(600), PageSetup.Default, source.Token)
        );
        var next = engraver.Engrave(PianoXml.Rag(2), PageSetup.Default, TestContext.Current.CancellationToken);
        Assert.NotNull(next.Value);
    }

    [Fact]
    public async Task Callers_at_the_same_time_take_turns()
    {
        var engraver = warm.Engraver;
        var calls = Enumerable
            .Range(1, 4)
            .Select(bars =>
                Task.Run(() => engraver.Engrave(PianoXml.Rag(bars), PageSetup.Default, CancellationToken.None))
            );
        var scores = await Task.WhenAll(calls);
        Assert.Equal([1, 2, 3, 4], scores.Select(s => MeasureClass().Count(s.Value!.Pages[0])));
    }

    [Fact]
    public void A_disposed_engraver_says_so()
    {
        var engraver = Engraver.Create();
        engraver.Dispose();
        engraver.Dispose();
        Assert.Throws<ObjectDisposedException>(() =>
            engraver.Engrave(PianoXml.Rag(1), PageSetup.Default, TestContext.Current.CancellationToken)
        );
    }

    [Fact]
    public void A_margin_out_of_range_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            warm.Engraver.Engrave(
                PianoXml.Rag(1),
                new PageSetup { SideMargin = double.NaN },
                TestContext.Current.CancellationToken
            )
        );

    private static string? Text(string file)
    {
        try
        {
            if (!file.EndsWith(".mxl", StringComparison.Ordinal))
            {
                return File.ReadAllText(file);
            }
            using var archive = ZipFile.OpenRead(file);
            var entry = archive.Entries.FirstOrDefault(e =>
                !e.FullName.StartsWith("META-INF", StringComparison.Ordinal) && e.Length is > 0 and < 20_000_000
            );
            return entry is null ? null : new StreamReader(entry.Open()).ReadToEnd();
        }
        catch (InvalidDataException)
        {
            // No archive: reading it is not the engraver's task.
            return null;
        }
    }

    [GeneratedRegex("class=\"system\"")]
    private static partial Regex SystemClass();

    [GeneratedRegex("class=\"measure\"")]
    private static partial Regex MeasureClass();

    [Fact]
    public void A_page_ends_where_a_hand_is_free_to_turn_it()
    {
        var xml = PianoXml.Rag(100);
        var usual = warm.Engrave(xml);
        Assert.True(usual.Pages.Count >= 3);
        Assert.Equal(usual.Pages.Count - 1, usual.PageEnds.Count);
        // The last bar of the system before the last of the first page.
        var earlier = usual.Pages[0].Split("class=\"system\"")[^2];
        var wanted = earlier.Split("class=\"measure\"")[^2].Split("id=\"")[^1].Split('"')[0];
        Assert.NotEqual(wanted, usual.PageEnds[0]);
        var turned = warm.Engrave(xml, new PageSetup { Turns = [wanted] });
        Assert.Equal(usual.Pages.Count, turned.Pages.Count);
        Assert.Equal(wanted, turned.PageEnds[0]);
        Assert.Equal(usual.Pages, warm.Engrave(xml, new PageSetup { Turns = usual.PageEnds }).Pages);
        // Two pages lie side by side.
        Assert.Empty(warm.Engrave(PianoXml.Rag(45)).PageEnds);
    }

    [Fact]
    public void One_page_more_is_taken_where_that_leaves_a_hand_free_at_more_turns()
    {
        var xml = PianoXml.Rag(100);
        var usual = warm.Engrave(xml);
        var bars = MeasureId().Matches(string.Concat(usual.Pages)).Select(m => m.Groups[1].Value).ToList();
        // So far apart that a page ends at each of them, and none is full.
        var apart = (int)(0.8 * bars.Count / (usual.Pages.Count - 0.5));
        var free = bars.Where((_, i) => (i + 1) % apart == 0).ToValueList();
        var turned = warm.Engrave(xml, new PageSetup { Turns = free });
        Assert.Equal(usual.Pages.Count + 1, turned.Pages.Count);
        Assert.All(turned.PageEnds, end => Assert.Contains(end, free));
        var most = usual.Pages.Count;
        var held = warm.Engrave(xml, new PageSetup { Turns = free, MostPages = most });
        Assert.Equal(most, held.Pages.Count);
        Assert.Contains(held.PageEnds, end => !free.Contains(end));
    }

    [GeneratedRegex("id=\"([^\"]+)\" class=\"measure\"")]
    private static partial Regex MeasureId();
}
