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
            "bar 4 beat 1, left hand, reach: F2 to A3 is too wide (needs 236, limit 201, over by 35)\n"
                + "1 spots cannot be played by these hands.\n",
            run.Output
        );
    }

    [Fact]
    public void A_playable_score_is_called_so() =>
        Assert.EndsWith("These hands can play it.\n", CliRun.Of(new FakeUseCases(), "check", "x").Output);

    [Fact]
    public void Json_prints_one_object()
    {
        using var json = JsonDocument.Parse(Check(Unplayable(), "--json").Output);
        Assert.Equal("not-playable", json.RootElement.GetProperty("outcome").GetString());
        var spot = json.RootElement.GetProperty("score").GetProperty("spots")[0];
        Assert.Equal(35, spot.GetProperty("over").GetDouble());
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
