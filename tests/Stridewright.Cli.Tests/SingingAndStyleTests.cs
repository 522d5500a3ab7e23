using System.Text.Json;
using Stridewright.Workbench;
using Stridewright.Workbench.Reports;

namespace Stridewright.Cli.Tests;

/// <summary><c>accompany</c>, sketches and <c>profile</c>: what reaches the request and what is told.</summary>
public sealed class SingingAndStyleTests
{
    private static readonly ProfileReport Measured = new()
    {
        Scores =
        [
            new ProfiledScore(
                "rag.musicxml",
                "A Rag",
                new MeasuredStyle(
                    "2/4",
                    32,
                    "34 published piano rags",
                    [
                        new MeasuredFigure("held_bars", "bars with a weak note held", "share", [0.284], [0.504])
                        {
                            Section = "Syncopation",
                        },
                        new MeasuredFigure("half_0100", "half bars .x..", "share", [0.004], [0.001])
                        {
                            Section = "Syncopation",
                        },
                        new MeasuredFigure(
                            "top",
                            "right hand, top note",
                            "key",
                            [60, 66, 70, 74, 83],
                            [65, 71, 75, 79, 86]
                        )
                        {
                            Section = "Where the right hand lies",
                        },
                    ]
                ),
                []
            ),
        ],
        Drawings = [new WrittenFile("style.png", 100, false)],
    };

    [Fact]
    public void Accompany_asks_for_a_voice_in_its_range()
    {
        var useCases = new FakeUseCases();
        var run = CliRun.Of(useCases, "accompany", "song.abc", "--range", "A3-D5", "--level", "3", "--sketch");
        Assert.Equal("", run.Error);
        Assert.Equal(
            new ArrangeRequest
            {
                Tunes = ["song.abc"],
                Sketch = true,
                Wishes = new Wishes
                {
                    Accompany = true,
                    Range = "A3-D5",
                    Level = 3,
                },
            },
            useCases.Asked
        );
    }

    [Theory]
    [InlineData("arrange", "--range", "A3-D5")]
    [InlineData("accompany", "--left-hand-only", null)]
    [InlineData("accompany", "--chords", "F | C7")]
    [InlineData("accompany", "--all-keys", null)]
    public void An_option_of_the_other_command_is_refused(string command, string option, string? value)
    {
        var useCases = new FakeUseCases();
        var run = CliRun.Of(
            useCases,
            [command, "song.abc", option, .. value is null ? Array.Empty<string>() : [value]]
        );
        Assert.Equal(2, run.ExitCode);
        Assert.Null(useCases.Asked);
        Assert.Contains($"See: stridewright {command} --help", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_the_voice_sings_is_told_in_place_of_the_tune()
    {
        var written = FakeUseCases.Written("song");
        written = written with { Setting = written.Setting with { Voice = new SungRange("C4", "A4") } };
        var run = CliRun.Of(
            new FakeUseCases { Answer = FakeUseCases.ReportOf(ArrangeOutcome.AllWritten, written) },
            "accompany",
            "song.abc"
        );
        Assert.Contains("  voice     sings from C4 to A4\n", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("notes kept", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_profile_is_told_by_section_with_registers_as_notes()
    {
        var useCases = new FakeUseCases { ProfileAnswer = Measured };
        var run = CliRun.Of(useCases, "profile", "rag.musicxml", "--plot", "style.png", "--replace");
        Assert.Equal(
            new ProfileRequest
            {
                Scores = ["rag.musicxml"],
                Plot = "style.png",
                Replace = true,
            },
            useCases.AskedToProfile
        );
        Assert.Equal((0, ""), (run.ExitCode, run.Error));
        Assert.Contains("\nSyncopation\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("28.4 %   (published 50.4 %)", run.Output, StringComparison.Ordinal);
        Assert.Contains(
            "C4 / F#4 / Bb4 / D5 / B5   (published F4 / B4 / Eb5 / G5 / D6)",
            run.Output,
            StringComparison.Ordinal
        );
        Assert.Contains("  written   style.png\n", run.Output, StringComparison.Ordinal);
        // Less than one in a hundred, here and in print, is left to --json.
        Assert.DoesNotContain("half bars .x..", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_profile_as_json_has_every_figure_with_its_section_and_the_drawings()
    {
        var run = CliRun.Of(new FakeUseCases { ProfileAnswer = Measured }, "profile", "rag.musicxml", "--json");
        using var json = JsonDocument.Parse(run.Output);
        var figures = json.RootElement.GetProperty("scores")[0].GetProperty("style").GetProperty("figures");
        Assert.Equal(3, figures.GetArrayLength());
        Assert.Equal("Syncopation", figures[1].GetProperty("section").GetString());
        Assert.Equal(60, figures[2].GetProperty("values")[0].GetDouble());
        Assert.Equal("style.png", json.RootElement.GetProperty("drawings")[0].GetProperty("path").GetString());
    }
}
