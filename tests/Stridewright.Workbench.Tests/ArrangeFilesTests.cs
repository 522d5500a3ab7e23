using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Tests;

public sealed class ArrangeFilesTests : IDisposable
{
    private const string OneTune = "X:1\nT:Ferry\nK:C\n";
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_tune_is_written_under_its_file_name_in_all_usual_formats()
    {
        var report = Arrange(new FakeTools(), _folder.Put("in/ferry.abc", OneTune));
        Assert.Equal(ArrangeOutcome.AllWritten, report.Outcome);
        Assert.Equal(["ferry.mid", "ferry.musicxml", "ferry.pdf"], _folder.Files("out"));
        Assert.Equal("xml of Ferry 1", File.ReadAllText(_folder["out/ferry.musicxml"]));
        Assert.Equal("pdf of xml of Ferry 1 on A4", File.ReadAllText(_folder["out/ferry.pdf"]));
    }

    [Fact]
    public void The_report_tells_what_was_chosen()
    {
        var setting = Assert.Single(Arrange(new FakeTools(), _folder.Put("ferry.abc", OneTune)).Written).Setting;
        Assert.Equal(
            ("classic", "F major", "2/4", "quarter"),
            (setting.Feel, setting.Key, setting.Metre, setting.Beat)
        );
        Assert.Equal((4, 4, 0.5, 1), (setting.LeftLevel, setting.RightLevel, setting.Raggedness, setting.Seed));
        Assert.Equal(4, setting.Bars); // the pick-up is not counted
        Assert.Equal(new HandsUsed(205, 165.1, false), setting.Hands);
    }

    [Fact]
    public void The_engraver_is_asked_once_a_tune_and_only_for_pages()
    {
        var path = _folder.Put("ferry.abc", OneTune);
        var tools = new FakeTools();
        Arrange(tools, Request(path) with { Formats = [OutputFormat.MusicXml, OutputFormat.Midi] });
        Assert.DoesNotContain("engrave", tools.Calls);
        Arrange(tools, Request(path) with { Formats = [OutputFormat.Pdf, OutputFormat.Svg] });
        Assert.Single(tools.Calls, "engrave");
    }

    [Fact]
    public void A_score_that_cannot_be_engraved_is_reported_and_nothing_of_it_is_written()
    {
        var tools = new FakeTools { EngravingFault = "not on this system" };
        var report = Arrange(tools, _folder.Put("ferry.abc", OneTune));
        Assert.Contains("not on this system", Assert.Single(report.Problems).Message);
        Assert.Empty(_folder.Files("out"));
    }

    [Fact]
    public void Only_the_formats_asked_for_are_written_and_pictures_are_numbered_by_page()
    {
        var request = Request(_folder.Put("ferry.abc", OneTune)) with
        {
            Formats = [OutputFormat.Midi, OutputFormat.Svg],
        };
        Arrange(new FakeTools(), request);
        Assert.Equal(["ferry-page-1.svg", "ferry-page-2.svg", "ferry.mid"], _folder.Files("out"));
    }

    [Fact]
    public void Pictures_of_dots_and_the_compressed_score_are_written_on_request()
    {
        var request = Request(_folder.Put("ferry.abc", OneTune)) with
        {
            Formats = [OutputFormat.Png, OutputFormat.Mxl],
        };
        Arrange(new FakeTools(), request);
        Assert.Equal(["ferry-page-1.png", "ferry-page-2.png", "ferry.mxl"], _folder.Files("out"));
        Assert.Equal("mxl of xml of Ferry 1", File.ReadAllText(_folder["out/ferry.mxl"]));
        Assert.Equal("png 1", File.ReadAllText(_folder["out/ferry-page-2.png"]));
    }

    [Fact]
    public void The_part_asked_for_reaches_both_readers()
    {
        var tools = new FakeTools();
        Arrange(tools, Request(_folder.Put("in/ferry.abc", OneTune)) with { Part = "Voice" });
        Arrange(tools, Request(_folder.Put("in/sheet.musicxml", "<score-partwise/>")) with { Part = "2:1" });
        Assert.Contains("abc Voice", tools.Calls);
        Assert.Contains("musicxml 2:1", tools.Calls);
    }

    [Fact]
    public void Each_level_asked_for_is_written_with_what_it_adds()
    {
        var request = Request(_folder.Put("ferry.abc", OneTune)) with
        {
            Levels = new(2, 4),
            Formats = [OutputFormat.Midi],
        };
        var report = Arrange(new FakeTools(), request);
        Assert.Equal(["ferry.level-2.mid", "ferry.level-3.mid", "ferry.level-4.mid"], _folder.Files("out"));
        Assert.Equal([2, 3, 4], report.Written.Select(w => w.Setting.LeftLevel));
        Assert.DoesNotContain("again", report.Written[0].Adds, StringComparison.Ordinal);
        Assert.All(report.Written.Skip(1), w => Assert.Contains("again", w.Adds, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0, 3)]
    [InlineData(3, 7)]
    [InlineData(4, 2)]
    public void Levels_that_there_are_not_are_a_bad_wish(int first, int last)
    {
        var request = Request(_folder.Put("ferry.abc", OneTune)) with { Levels = new(first, last) };
        var report = Arrange(new FakeTools(), request);
        Assert.Equal(ArrangeOutcome.BadWish, report.Outcome);
        Assert.Equal("levels", report.Problems[0].File);
    }

    [Fact]
    public void The_plain_tune_is_written_beside_the_setting_in_the_same_formats()
    {
        var ferry = _folder.Put("ferry.abc", OneTune);
        var other = _folder.Put("ferry.plain.abc", "X:1\nT:Other\nK:C\n");
        var request = Request(ferry) with
        {
            Tunes = [ferry, other],
            Formats = [OutputFormat.Midi, OutputFormat.Svg],
            Plain = true,
        };
        var report = Arrange(new FakeTools(), request);
        Assert.Equal("midi of Ferry plain", File.ReadAllText(_folder["out/ferry.plain.mid"]));
        Assert.Equal("midi of Other 1", File.ReadAllText(_folder["out/ferry.plain-2.mid"]));
        Assert.Contains("ferry.plain-page-1.svg", _folder.Files("out"));
        Assert.Equal(6, report.Written[0].Outputs.Count);
    }

    [Fact]
    public void The_tunes_of_a_book_are_numbered_and_named()
    {
        var book = _folder.Put("book.abc", "T:The Ferry Bell\nT:Clockmaker's Rest\nT:???\n");
        var report = Arrange(new FakeTools(), Request(book) with { Formats = [OutputFormat.Midi] });
        Assert.Equal(
            ["book-01-the-ferry-bell.mid", "book-02-clockmakers-rest.mid", "book-03.mid"],
            _folder.Files("out")
        );
        Assert.Equal([1, 2, 3], report.Written.Select(t => t.Number!.Value));
    }

    [Fact]
    public void A_folder_stands_for_the_tunes_in_it_and_below_it_in_ordinal_order()
    {
        _folder.Put("in/b.abc", "T:B\n");
        _folder.Put("in/a.musicxml", "<score-partwise/>");
        _folder.Put("in/more/c.abc", "T:C\n");
        _folder.Put("in/notes.txt", "T:no tune\n");
        _folder.Put("in/.hidden.abc", "T:hidden\n");
        var tools = new FakeTools();
        Arrange(tools, Request(_folder["in"]) with { Formats = [OutputFormat.Midi] });
        Assert.Equal(
            ["arrange Sheet", "arrange B", "arrange C"],
            tools.Calls.Where(c => c.StartsWith("arrange", StringComparison.Ordinal))
        );
    }

    [Fact]
    public void In_a_folder_a_midi_file_beside_the_written_tune_of_its_name_is_left_out()
    {
        _folder.Put("in/ferry.abc", OneTune);
        _folder.Put("in/ferry.mid", "MThd");
        _folder.Put("in/ferry.melody.mid", "MThd");
        _folder.Put("in/ferryman.MID", "MThd");
        _folder.Put("in/more/ferry.midi", "MThd");
        var report = Arrange(new FakeTools(), _folder["in"]);
        Assert.Equal(["ferry.abc", "ferryman.MID", "ferry.midi"], report.Written.Select(t => Path.GetFileName(t.File)));
        var tools = new FakeTools();
        Arrange(tools, _folder["in/ferry.mid"]); // named, it is read
        Assert.Equal("midi", tools.Calls[0]);
    }

    [Fact]
    public void A_folder_is_searched_without_the_results_of_earlier_runs()
    {
        _folder.Put("ferry.abc", OneTune);
        var request = Request(_folder.Root);
        Assert.Single(Arrange(new FakeTools(), request).Written);
        var again = Arrange(new FakeTools(), request);
        Assert.Equal("Ferry", Assert.Single(again.Written).Title);
    }

    [Fact]
    public void A_folder_that_links_to_itself_ends()
    {
        _folder.Put("in/ferry.abc", OneTune);
        Directory.CreateSymbolicLink(_folder["in/again"], _folder["in"]);
        Assert.Single(Arrange(new FakeTools(), _folder["in"]).Written);
    }

    [Fact]
    public void A_folder_without_tunes_is_reported()
    {
        Directory.CreateDirectory(_folder["in"]);
        Assert.Contains(
            "no tune lies in this folder",
            Assert.Single(Arrange(new FakeTools(), _folder["in"]).Problems).Message
        );
    }

    [Fact]
    public void A_file_of_faults_is_told_by_its_first_ones()
    {
        var path = _folder.Put("noise.abc", string.Concat(Enumerable.Repeat("!bad\n", 1000)));
        var problems = Arrange(new FakeTools(), path).Problems;
        Assert.Equal(21, problems.Count);
        Assert.StartsWith("and 980 more", problems[^1].Message);
    }

    [Fact]
    public void A_file_named_twice_is_arranged_once()
    {
        var path = _folder.Put("in/ferry.abc", OneTune);
        Assert.Single(Arrange(new FakeTools(), Request(path, _folder["in"], path)).Written);
    }

    [Fact]
    public void Two_tunes_of_one_name_get_different_outputs_and_a_note_says_so()
    {
        var report = Arrange(
            new FakeTools(),
            Request(_folder.Put("a/ferry.abc", "T:A\n"), _folder.Put("b/FERRY.abc", "T:B\n")) with
            {
                Formats = [OutputFormat.MusicXml],
            }
        );
        Assert.Equal(ArrangeOutcome.AllWritten, report.Outcome);
        Assert.Equal("xml of A 1", File.ReadAllText(_folder["out/ferry.musicxml"]));
        Assert.Equal("xml of B 1", File.ReadAllText(_folder["out/FERRY-2.musicxml"]));
        Assert.Contains("FERRY-2", Assert.Single(report.Written[1].Reading).Message);
    }

    [Fact]
    public void The_run_goes_on_after_a_bad_file_and_lists_it_with_its_place()
    {
        var bad = _folder.Put("bad.abc", "X:1\n!the key is missing: add K:\n");
        var report = Arrange(new FakeTools(), Request(bad, _folder["missing.abc"], _folder.Put("good.abc", OneTune)));
        Assert.Equal(ArrangeOutcome.SomeWritten, report.Outcome);
        Assert.Equal([(_folder["missing.abc"], ""), (bad, "line 2")], report.Problems.Select(p => (p.File, p.Place)));
        Assert.Single(report.Written);
    }

    [Fact]
    public void The_good_tunes_of_a_book_with_a_bad_one_are_written()
    {
        var report = Arrange(new FakeTools(), _folder.Put("book.abc", "T:One\n!bad\nT:Two\n"));
        Assert.Equal(ArrangeOutcome.SomeWritten, report.Outcome);
        Assert.Equal(2, report.Written.Count);
    }

    [Fact]
    public void A_refusal_is_reported_with_its_bar_and_nothing_is_written()
    {
        var tools = new FakeTools { Arranging = (_, _) => FakeTools.Refused("too wide: try --level 3") };
        var path = _folder.Put("ferry.abc", OneTune);
        var report = Arrange(tools, path);
        Assert.Equal(ArrangeOutcome.NothingWritten, report.Outcome);
        Assert.Equal(new Problem(path, null, "bar 7", "too wide: try --level 3"), Assert.Single(report.Problems));
        Assert.Empty(_folder.Files("out"));
    }

    [Fact]
    public void What_the_judge_does_not_pass_is_not_written()
    {
        var fault = new Fault(FaultKind.Reach, Hand.Left, 3, "bar 4 beat 1", 240, 201, "a tenth of 240 mm");
        var tools = new FakeTools { Judging = _ => new Verdict([fault], FakeTools.EffortOf(90)) };
        var report = Arrange(tools, _folder.Put("ferry.abc", OneTune));
        Assert.Equal(ArrangeOutcome.NothingWritten, report.Outcome);
        Assert.Equal("bar 4 beat 1", Assert.Single(report.Problems).Place);
        Assert.Empty(_folder.Files("out"));
    }

    [Fact]
    public void A_fault_of_the_program_costs_only_its_own_tune()
    {
        var tools = new FakeTools
        {
            Arranging = (tune, brief) =>
                tune.Title == "Two" ? throw new InvalidOperationException("broken") : FakeTools.Done(tune, brief),
        };
        var report = Arrange(tools, _folder.Put("book.abc", "T:One\nT:Two\nT:Three\n"));
        Assert.Equal(["One", "Three"], report.Written.Select(t => t.Title));
        Assert.Equal("tune 2, Two", Assert.Single(report.Problems).Tune);
    }

    [Theory]
    [InlineData("empty.abc", "", "empty")]
    [InlineData("letter.txt", "Dear all", "neither ABC nor MusicXML nor MIDI")]
    [InlineData("nothing.abc", "%abc-2.1\n", "could be read as a tune")]
    public void What_is_no_tune_is_refused_with_a_reason(string name, string content, string reason)
    {
        var report = Arrange(new FakeTools(), _folder.Put(name, content));
        Assert.Equal(ArrangeOutcome.NothingWritten, report.Outcome);
        Assert.Contains(reason, Assert.Single(report.Problems).Message);
    }

    [Theory]
    [InlineData("tune.abc", "X:1", "abc")]
    [InlineData("tune.txt", "X:1\nT:Ferry\nK:G\n", "abc")]
    [InlineData("tune.txt", "<?xml version='1.0'?>", "musicxml")]
    [InlineData("tune.abc", "\uFEFF <score-partwise/>", "musicxml")]
    [InlineData("tune.mxl", "PK", "musicxml")]
    [InlineData("tune.xml", "broken", "musicxml")]
    [InlineData("take.mid", "MThd", "midi")]
    [InlineData("letter.abc", "MThd", "midi")]
    [InlineData("page.mid", "<!DOCTYPE html>", "midi")]
    [InlineData("take.MIDI", "", "midi")]
    public void A_file_is_known_by_its_content_before_its_ending(string name, string content, string reader)
    {
        var tools = new FakeTools();
        Arrange(tools, _folder.Put(name, content));
        Assert.Equal(reader, tools.Calls[0]);
    }

    [Fact]
    public void A_file_over_the_limit_is_refused()
    {
        using (var file = File.Create(_folder["huge.abc"]))
        {
            file.SetLength(Inputs.InputBytes.Limit + 1L);
        }
        Assert.Contains("32 MiB", Assert.Single(Arrange(new FakeTools(), _folder["huge.abc"]).Problems).Message);
    }

    [Fact]
    public void A_cancelled_run_keeps_what_is_finished_and_writes_nothing_more()
    {
        using var stop = new CancellationTokenSource();
        var tools = new FakeTools
        {
            Arranging = (tune, brief) =>
            {
                if (tune.Title == "Two")
                {
                    stop.Cancel();
                }
                return FakeTools.Done(tune, brief);
            },
        };
        var request = Request(_folder.Put("book.abc", "T:One\nT:Two\nT:Three\n")) with
        {
            Formats = [OutputFormat.Midi],
        };
        var report = new UseCases(tools).Arrange(request, null, stop.Token);
        Assert.Equal(ArrangeOutcome.Cancelled, report.Outcome);
        Assert.Equal(["book-01-one.mid"], _folder.Files("out"));
    }

    [Fact]
    public void Progress_counts_files_and_the_tunes_of_books_up_to_all_of_them()
    {
        var seen = new List<ArrangeProgress>();
        var request = Request(_folder.Put("a.abc", OneTune), _folder.Put("b.abc", "T:One\nT:Two\n"));
        new UseCases(new FakeTools()).Arrange(request, new Listener(seen.Add), TestContext.Current.CancellationToken);
        Assert.Equal([(0, 2), (1, 2), (1.5, 2), (2, 2)], seen.Select(p => (p.Done, p.Files)));
    }

    private ArrangeRequest Request(params string[] tunes) =>
        new() { Tunes = tunes.ToValueList(), OutputFolder = _folder["out"] };

    private ArrangeReport Arrange(FakeTools tools, string tune) => Arrange(tools, Request(tune));

    private static ArrangeReport Arrange(FakeTools tools, ArrangeRequest request) =>
        new UseCases(tools).Arrange(request, null, TestContext.Current.CancellationToken);

    private sealed class Listener(Action<ArrangeProgress> heard) : IProgress<ArrangeProgress>
    {
        public void Report(ArrangeProgress value) => heard(value);
    }
}
