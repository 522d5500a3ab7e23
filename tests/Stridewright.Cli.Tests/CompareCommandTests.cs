using System.Text.Json;
using Stridewright.Testing;
using Stridewright.Workbench;
using Stridewright.Workbench.Reports;
using static Stridewright.Cli.Tests.RealProgram;

namespace Stridewright.Cli.Tests;

public sealed class CompareCommandTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("stridewright-compare-");

    public void Dispose() => _folder.Delete(recursive: true);

    private string At(string name) => Path.Combine(_folder.FullName, name);

    [Fact]
    public void Range_hand_and_folder_reach_the_request()
    {
        var useCases = new FakeUseCases();
        var run = CliRun.Of(
            useCases,
            "compare",
            "a.mxl",
            "b.mid",
            "--range",
            "5-8",
            "--hand",
            "left",
            "--out",
            "heard"
        );
        Assert.Equal(0, run.ExitCode);
        Assert.Equal(
            new CompareRequest
            {
                Score = "a.mxl",
                Take = "b.mid",
                Range = "5-8",
                Hand = "left",
                OutputFolder = "heard",
            },
            useCases.AskedToCompare
        );
    }

    [Theory]
    [InlineData(CompareOutcome.Compared, 0)]
    [InlineData(CompareOutcome.AnotherPiece, 1)]
    [InlineData(CompareOutcome.Unreadable, 2)]
    [InlineData(CompareOutcome.BadWish, 2)]
    [InlineData(CompareOutcome.Cancelled, 130)]
    public void The_exit_code_tells_what_came_of_it(CompareOutcome outcome, int code)
    {
        var answer = new CompareReport
        {
            Outcome = outcome,
            Score = "a",
            Take = "b",
        };
        var run = CliRun.Of(new FakeUseCases { CompareAnswer = answer }, "compare", "a", "b");
        Assert.Equal(code, run.ExitCode);
    }

    [Fact]
    public void A_setting_played_as_written_is_matched_note_by_note()
    {
        var sample = Path.Combine(Corpus.CheckoutRoot, "samples", "ferry-bell.abc");
        Run("arrange", sample, "--format", "musicxml,midi", "--save", At("ferry.stridewright"), "--out", At(""));
        foreach (var score in (string[])["ferry-bell.musicxml", "ferry.stridewright"])
        {
            var (code, output, error) = Run(
                "compare",
                At(score),
                At("ferry-bell.mid"),
                "--out",
                At("heard"),
                "--json",
                "--replace"
            );
            Assert.Equal((0, ""), (code, error));
            var heard = JsonDocument.Parse(output).RootElement.GetProperty("heard");
            Assert.Equal(heard.GetProperty("asked").GetInt32(), heard.GetProperty("right").GetInt32());
            Assert.Equal(0, heard.GetProperty("extra").GetInt32());
            Assert.Empty(heard.GetProperty("remarks").EnumerateArray());
            var lines = File.ReadAllLines(At("heard/ferry-bell.alignment.tsv"));
            Assert.Equal("score_onset_beats\tscore_pitch\tnote_id\tperformed_onset_s\tperformed_pitch\tkind", lines[0]);
            Assert.Equal(heard.GetProperty("asked").GetInt32() + 1, lines.Length);
            Assert.All(lines.Skip(1), l => Assert.EndsWith("\tmatch", l, StringComparison.Ordinal));
            Assert.StartsWith(
                "The Ferry Bell\n",
                File.ReadAllText(At("heard/ferry-bell.report.txt")),
                StringComparison.Ordinal
            );
        }
    }

    [Fact]
    public void What_cannot_be_heard_is_told_in_a_sentence()
    {
        var sample = Path.Combine(Corpus.CheckoutRoot, "samples", "ferry-bell.abc");
        Run("arrange", sample, "--format", "musicxml,midi", "--out", At(""));
        var (score, take) = (At("ferry-bell.musicxml"), At("ferry-bell.mid"));
        File.WriteAllText(At("broken.mid"), "MThd");
        File.WriteAllText(At("broken.musicxml"), "<score-partwise><part>");
        (string[] Args, string Says)[] cases =
        [
            ([score, At("broken.mid")], "broken.mid:byte 4:"),
            ([At("broken.musicxml"), take], "broken.musicxml:line 1"),
            ([score, At("none.mid")], "there is no such file"),
            ([score, score], "this is no MIDI file"),
            ([sample, take], "ABC holds a tune"),
            ([score, take, "--range", "90-91"], "--range: '90-91' is no range of bars"),
        ];
        foreach (var (args, says) in cases)
        {
            var (code, _, error) = Run(["compare", .. args, "--out", At("heard")]);
            Assert.Equal(2, code);
            Assert.Contains(says, error, StringComparison.Ordinal);
            Assert.Single(error.TrimEnd().Split('\n'));
        }
        Assert.False(Directory.Exists(At("heard")));
    }
}
