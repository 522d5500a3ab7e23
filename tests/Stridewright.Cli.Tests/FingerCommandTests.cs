using System.Text.Json;
using Stridewright.Workbench;
using Stridewright.Workbench.Reports;

namespace Stridewright.Cli.Tests;

public sealed class FingerCommandTests
{
    private static readonly FingeredFile Rag = new()
    {
        File = "rag.musicxml",
        Title = "A Rag",
        Outputs = [new WrittenFile("out/rag.musicxml", 100, false), new WrittenFile("out/rag.pdf", 100, true)],
        Hands = FakeUseCases.Judged().Hands,
        Bars = 16,
        Notes = 200,
        Fingered = 199,
        Printed = 80,
        Costs =
        [
            new FingeredBar("3", "left", 4.25, [new FingeringTerm("the thumb on a black key", 4.25, "a source")]),
            new FingeredBar("1", "right", 0, []),
        ],
        Remarks = [new Remark("warning", "bar 5 beat 2", "the left hand has no finger for C3")],
    };

    [Fact]
    public void Scores_hands_and_density_reach_the_request()
    {
        var useCases = new FakeUseCases();
        CliRun.Of(
            useCases,
            "finger",
            "a.mxl",
            "scores",
            "--span",
            "185",
            "--density",
            "changes",
            "--keep",
            "none",
            "--out",
            "f"
        );
        Assert.Equal(
            new FingerRequest
            {
                Scores = ["a.mxl", "scores"],
                Span = "185",
                Density = "changes",
                Keep = "none",
                OutputFolder = "f",
            },
            useCases.AskedToFinger
        );
    }

    [Fact]
    public void The_summary_tells_what_is_fingered_and_what_is_dearest()
    {
        var run = Finger(new FingerReport { Written = [Rag] });
        Assert.Equal(0, run.ExitCode);
        Assert.Equal(
            "A Rag (rag.musicxml), 16 bars\n"
                + "  hands     span 185 mm, octave 165.1 mm\n"
                + "  fingers   199 of 200 notes have one, 80 are printed\n"
                + "  dearest   bar 3 left (4.3: the thumb on a black key)\n"
                + "  warning   bar 5 beat 2: the left hand has no finger for C3\n"
                + "  written   out/rag.musicxml\n"
                + "  unchanged out/rag.pdf\n",
            run.Output
        );
    }

    [Fact]
    public void The_exit_code_tells_the_outcome()
    {
        Problem[] problem = [new("b.xml", null, "line 2", "broken: mend it")];
        Assert.Equal(1, Finger(new FingerReport { Written = [Rag], Problems = [.. problem] }).ExitCode);
        Assert.Equal(2, Finger(new FingerReport { Problems = [.. problem] }).ExitCode);
        Assert.Equal(130, Finger(new FingerReport { Written = [Rag], Cancelled = true }).ExitCode);
        var bad = Finger(new FingerReport { IsBadWish = true, Problems = [new("density", null, "", "no density")] });
        Assert.Equal((2, "", "--density: no density\n"), (bad.ExitCode, bad.Output, bad.Error));
    }

    [Fact]
    public void Json_prints_one_object()
    {
        using var json = JsonDocument.Parse(Finger(new FingerReport { Written = [Rag] }, "--json").Output);
        Assert.Equal("finger", json.RootElement.GetProperty("kind").GetString());
        var bar = json.RootElement.GetProperty("written")[0].GetProperty("costs")[0];
        Assert.Equal("a source", bar.GetProperty("terms")[0].GetProperty("source").GetString());
    }

    private static CliRun Finger(FingerReport answer, params string[] options) =>
        CliRun.Of(new FakeUseCases { FingerAnswer = answer }, ["finger", "x", .. options]);
}
