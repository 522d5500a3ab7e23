using System.Text.Json;
using Stridewright.Workbench;
using Stridewright.Workbench.Reports;

namespace Stridewright.Cli.Tests;

public sealed class ArrangeCommandTests
{
    [Fact]
    public void Without_options_all_is_as_usual()
    {
        var useCases = new FakeUseCases();
        Assert.Equal(0, CliRun.Of(useCases, "arrange", "ferry.abc").ExitCode);
        Assert.Equal(new ArrangeRequest { Tunes = ["ferry.abc"] }, useCases.Asked);
        Assert.Equal(
            ("arrangements", Paper.A4, false),
            (useCases.Asked!.OutputFolder, useCases.Asked.Paper, useCases.Asked.Replace)
        );
        Assert.Equal([OutputFormat.MusicXml, OutputFormat.Midi, OutputFormat.Pdf], useCases.Asked.Formats);
    }

    [Fact]
    public void Chords_keys_and_the_left_hand_reach_the_request()
    {
        var useCases = new FakeUseCases();
        var run = CliRun.Of(
            useCases,
            ["arrange", "--chords", "F | C7", "--title", "Blues", "--all-keys", "--left-hand-only"]
        );
        Assert.Equal("", run.Error);
        Assert.Equal(
            new ArrangeRequest
            {
                Tunes = [],
                Chords = "F | C7",
                Title = "Blues",
                AllKeys = true,
                Wishes = new Wishes { LeftHandOnly = true },
            },
            useCases.Asked
        );
    }

    [Fact]
    public void Neither_a_tune_nor_chords_is_told_with_an_example()
    {
        var useCases = new FakeUseCases();
        var run = CliRun.Of(useCases, "arrange");
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("--chords \"F | D7 | G7 C7 | F\"", run.Error, StringComparison.Ordinal);
        Assert.Null(useCases.Asked);
    }

    [Fact]
    public void Every_option_reaches_the_request()
    {
        var useCases = new FakeUseCases();
        const string Line =
            "arrange a.abc b --out o --feel stride --left 2 --right 5 --raggedness 0.7 --key Bb --bpm 88.5 --span 8.1in "
            + "--octave-width 152.5 --no-octaves --paper letter --format midi,svg,png,mxl --seed 9 --replace --part Flute:2 "
            + "--plain --lyrics";
        Assert.Equal("", CliRun.Of(useCases, Line.Split(' ')).Error);
        Assert.Equal(
            new ArrangeRequest
            {
                Tunes = ["a.abc", "b"],
                OutputFolder = "o",
                Formats = [OutputFormat.Midi, OutputFormat.Svg, OutputFormat.Png, OutputFormat.Mxl],
                Part = "Flute:2",
                Paper = Paper.Letter,
                Replace = true,
                Plain = true,
                Wishes = new Wishes
                {
                    Feel = "stride",
                    LeftLevel = 2,
                    RightLevel = 5,
                    Raggedness = 0.7,
                    Key = "Bb",
                    BeatsPerMinute = 88.5,
                    Span = "8.1in",
                    OctaveWidth = "152.5",
                    NoOctaves = true,
                    Lyrics = true,
                    Seed = 9,
                },
            },
            useCases.Asked
        );
    }

    [Theory]
    [InlineData("--level seven", "--level: 'seven' is no whole number")]
    [InlineData("--level 4.5", "--level: '4.5' is no whole number")]
    [InlineData("--levels one-six", "--levels: 'one-six' is not among two levels such as 1-6")]
    [InlineData("--raggedness 0,5", "--raggedness: '0,5' is no number")]
    [InlineData("--paper a5", "--paper: 'a5' is not among a4|letter")]
    [InlineData("--format pdf,gif", "--format: 'pdf,gif' is not among")]
    [InlineData("--format ,", "--format: ',' is not among")]
    [InlineData("--loud", "--loud: there is no such option")]
    [InlineData("--level", "--level")]
    public void Bad_arguments_end_with_2_and_a_line_that_names_the_option(string options, string start)
    {
        var useCases = new FakeUseCases();
        var run = CliRun.Of(useCases, ["arrange", "ferry.abc", .. options.Split(' ')]);
        Assert.Equal((2, ""), (run.ExitCode, run.Output));
        Assert.Contains(start, run.Error);
        Assert.Contains("arrange --help", run.Error);
        Assert.Null(useCases.Asked);
    }

    [Fact]
    public void Arrange_without_a_tune_is_a_bad_argument() =>
        Assert.Equal(2, CliRun.Of(new FakeUseCases(), "arrange").ExitCode);

    [Theory]
    [InlineData(ArrangeOutcome.AllWritten, 0)]
    [InlineData(ArrangeOutcome.SomeWritten, 1)]
    [InlineData(ArrangeOutcome.NothingWritten, 2)]
    [InlineData(ArrangeOutcome.BadWish, 2)]
    [InlineData(ArrangeOutcome.Cancelled, 130)]
    public void The_exit_code_tells_the_outcome(ArrangeOutcome outcome, int code) =>
        Assert.Equal(
            code,
            CliRun.Of(new FakeUseCases { Answer = FakeUseCases.ReportOf(outcome) }, "arrange", "x.abc").ExitCode
        );

    [Fact]
    public void Problems_go_to_stderr_one_a_line_with_file_and_place()
    {
        var answer = FakeUseCases.ReportOf(ArrangeOutcome.SomeWritten, FakeUseCases.Written("ferry")) with
        {
            Problems =
            [
                new Problem("a.abc", null, "line 4, column 2", "no key: add K:"),
                new Problem("book.abc", "tune 3, Up\nDown\u001b[31m", "bar 7", "too wide: try --level 3"),
                new Problem("missing.abc", null, "", "not there: check the name"),
            ],
        };
        var run = CliRun.Of(new FakeUseCases { Answer = answer }, "arrange", "x");
        Assert.Equal(
            "a.abc:line 4, column 2: no key: add K:\n"
                + "book.abc:tune 3, Up Down [31m, bar 7: too wide: try --level 3\n"
                + "missing.abc: not there: check the name\n",
            run.Error
        );
        Assert.Contains("1 written, 3 failed", run.Output);
    }

    [Fact]
    public void A_bad_wish_is_told_by_its_option()
    {
        var answer = FakeUseCases.ReportOf(ArrangeOutcome.BadWish) with
        {
            Problems = [new Problem("key", null, "", "'H' is no tonic")],
        };
        var run = CliRun.Of(new FakeUseCases { Answer = answer }, "arrange", "x", "--json");
        Assert.Equal(("", "--key: 'H' is no tonic\n"), (run.Output, run.Error));
    }

    [Fact]
    public void The_summary_of_one_tune_tells_what_was_chosen_and_how_hard_it_is() =>
        Assert.Equal(
            """
            The Ferry Bell (ferry.abc)
              setting   classic, F major, 2/4, quarter = 96
              levels    left 3, right 4, raggedness 0.5, seed 1
              hands     span 205 mm, octave 165.1 mm
              length    32 bars, 1:24 minutes with repeats
              tune      119 of 120 notes kept (14 early, 2 late), 40 fillers
              effort    31 of 100
                right   4.3 strokes a second, leaps up to 9.8 bits a second, stretch 61% of the span, strained 2%
                left    3.0 strokes a second, leaps up to 11.0 bits a second, stretch 80% of the span, strained 0%
              hardest   bars 12 (48), 7 (45)
              note      bar 5: the chord is rolled
              written   out/ferry.musicxml
              unchanged out/ferry.mid

            An arrangement of a work in copyright needs its owner's permission where the law says so.

            """,
            CliRun.Of(new FakeUseCases(), "arrange", "ferry.abc").Output
        );

    [Fact]
    public void Several_tunes_get_a_line_each()
    {
        var answer = FakeUseCases.ReportOf(
            ArrangeOutcome.AllWritten,
            FakeUseCases.Written("ferry"),
            FakeUseCases.Written("clock", "Clockmaker's Rest")
        );
        var lines = CliRun.Of(new FakeUseCases { Answer = answer }, "arrange", "x").Output.Split('\n');
        Assert.StartsWith("The Ferry Bell: classic, F major", lines[0]);
        Assert.StartsWith("Clockmaker's Rest: ", lines[1]);
        Assert.Equal("2 written, 0 failed", lines[3]);
    }

    [Fact]
    public void Json_prints_one_object_and_nothing_else()
    {
        var output = CliRun.Of(new FakeUseCases(), "arrange", "ferry.abc", "--json").Output;
        using var json = JsonDocument.Parse(output);
        var root = json.RootElement;
        Assert.Equal("arrange", root.GetProperty("kind").GetString());
        Assert.Equal("all-written", root.GetProperty("outcome").GetString());
        var tune = root.GetProperty("written")[0];
        Assert.Equal("out/ferry.mid", tune.GetProperty("outputs")[1].GetProperty("path").GetString());
        Assert.True(tune.GetProperty("outputs")[1].GetProperty("unchanged").GetBoolean());
        Assert.Equal(96, tune.GetProperty("setting").GetProperty("beatsPerMinute").GetDouble());
        Assert.Equal("12", tune.GetProperty("setting").GetProperty("hardestBars")[0].GetProperty("bar").GetString());
    }

    [Fact]
    public void A_cancelled_run_ends_with_130()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Equal(130, CliRun.Of(new FakeUseCases(), false, stop.Token, "arrange", "x").ExitCode);
    }

    [Fact]
    public void Progress_changes_neither_output_nor_exit_code()
    {
        var stop = TestContext.Current.CancellationToken;
        var unwatched = CliRun.Of(new FakeUseCases(), false, stop, "arrange", "x");
        var watched = CliRun.Of(new FakeUseCases(), true, stop, "arrange", "x");
        Assert.Equal("", unwatched.Error);
        Assert.Equal((unwatched.ExitCode, unwatched.Output), (watched.ExitCode, watched.Output));
    }
}
