using System.Text.Json;
using Stridewright.Workbench;
using Stridewright.Workbench.Reports;

namespace Stridewright.Cli.Tests;

public sealed class CheckCommandTests
{
    private static readonly UnplayableSpot Spot = new(
        "4",
        "bar 4 beat 1",
        "left",
        "reach",
        236,
        201,
        35,
        "F2 to A3 is too wide"
    );

    [Fact]
    public void Hands_and_tempo_reach_the_request()
    {
        var useCases = new FakeUseCases();
        CliRun.Of(useCases, "check", "rag.mxl", "--span", "ninth", "--octave-width", "6in", "--bpm", "72");
        Assert.Equal(
            new CheckRequest
            {
                Score = "rag.mxl",
                Span = "ninth",
                OctaveWidth = "6in",
                BeatsPerMinute = 72,
            },
            useCases.AskedToCheck
        );
    }

    [Theory]
    [InlineData(CheckOutcome.Playable, 0)]
    [InlineData(CheckOutcome.NotPlayable, 1)]
    [InlineData(CheckOutcome.Unreadable, 2)]
    [InlineData(CheckOutcome.BadWish, 2)]
    [InlineData(CheckOutcome.Cancelled, 130)]
    public void The_exit_code_tells_the_outcome(CheckOutcome outcome, int code) =>
        Assert.Equal(code, Check(new CheckReport { Outcome = outcome, File = "x" }).ExitCode);

    [Fact]
    public void Every_spot_is_told_with_its_reason_and_by_how_much()
    {
        var run = Check(Unplayable());
        Assert.Contains(
            "bar 4 beat 1, left hand, reach: F2 to A3 is too wide (needs 236, limit 201, over by 35)\n",
            run.Output
        );
        Assert.Contains("1 spots cannot be played by these hands", run.Output.Split('\n')[1]);
    }

    [Fact]
    public void A_playable_score_is_called_so() =>
        Assert.StartsWith(
            "These hands can play it.",
            CliRun.Of(new FakeUseCases(), "check", "x").Output.Split('\n')[1]
        );

    [Fact]
    public void Json_prints_one_object()
    {
        using var json = JsonDocument.Parse(Check(Unplayable(), "--json").Output);
        Assert.Equal("not-playable", json.RootElement.GetProperty("outcome").GetString());
        var spot = json.RootElement.GetProperty("score").GetProperty("spots")[0];
        Assert.Equal(35, spot.GetProperty("over").GetDouble());
    }

    [Fact]
    public void A_real_score_is_told_with_parts_hard_bars_what_ifs_and_cautions_and_drawn()
    {
        var folder = Directory.CreateTempSubdirectory("stridewright-check-");
        try
        {
            var tune = Path.Combine(Testing.Corpus.CheckoutRoot, "samples", "ferry-bell.abc");
            Real("arrange", tune, "--level", "6", "--span", "230", "--format", "musicxml", "--out", folder.FullName);
            var score = Path.Combine(folder.FullName, "ferry-bell.musicxml");
            var picture = Path.Combine(folder.FullName, "effort.svg");
            var (code, output) = Real("check", score, "--span", "205", "--plot", picture);
            Assert.Equal(1, code);
            Assert.All(
                [
                    "parts     right hand ",
                    "hard      bar ",
                    "comfort   up to quarter = ",
                    "span      right hand: 193 mm reach it",
                    ": roll D3 and F#4",
                    "Take care (after the British Association for Performing Arts Medicine",
                    "Pain means stop",
                ],
                words => Assert.Contains(words, output, StringComparison.Ordinal)
            );
            var svg = File.ReadAllText(picture);
            Assert.Contains("cannot be played: ", svg, StringComparison.Ordinal);
            Assert.Equal(2, Real("check", score, "--plot", "effort.doc").Code);
            using var json = JsonDocument.Parse(Real("check", score, "--json").Output);
            var judged = json.RootElement.GetProperty("score");
            Assert.Equal(27, judged.GetProperty("barEfforts").GetArrayLength());
            var right = judged.GetProperty("effort").GetProperty("right");
            var points = right.GetProperty("parts").EnumerateArray().Sum(p => p.GetProperty("points").GetDouble());
            Assert.Equal(right.GetProperty("value").GetDouble(), 1 + points, 1e-9);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static (int Code, string Output) Real(params string[] args)
    {
        using var output = new StringWriter();
        var code = new CommandLineApp(UseCases.Open, output, output).Run(args, TestContext.Current.CancellationToken);
        return (code, output.ToString());
    }

    private static CheckReport Unplayable() =>
        new()
        {
            Outcome = CheckOutcome.NotPlayable,
            File = "x",
            Score = FakeUseCases.Judged(Spot),
        };

    private static CliRun Check(CheckReport answer, params string[] options) =>
        CliRun.Of(new FakeUseCases { CheckAnswer = answer }, ["check", "x", .. options]);
}
