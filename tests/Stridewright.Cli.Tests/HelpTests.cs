namespace Stridewright.Cli.Tests;

public sealed class HelpTests
{
    [Theory]
    [InlineData("arrange", "stridewright arrange tune.abc --left 3 --right 1")]
    [InlineData("check", "stridewright check rag.musicxml")]
    [InlineData("accompany", "stridewright accompany song.abc --range A3-D5")]
    [InlineData("profile", "stridewright profile rag.musicxml --plot rag-style.png")]
    [InlineData("finger", "stridewright finger rag.musicxml --span 185 --density changes --out for-lena")]
    [InlineData("compare", "stridewright compare rag.musicxml monday.mid")]
    [InlineData("handout", "stridewright handout tune.abc --bars 5-8 --items plain,keyboard,reasons --out lesson.pdf")]
    [InlineData("serve", "stridewright serve --port 8080 --no-browser")]
    public void Help_teaches_by_examples(string command, string example)
    {
        var run = CliRun.Of(new FakeUseCases(), command, "--help");
        Assert.Equal(0, run.ExitCode);
        Assert.Contains(example, run.Output);
    }

    [Fact]
    public void Without_a_command_the_help_is_shown_and_nothing_is_done()
    {
        var run = CliRun.Of(new FakeUseCases());
        Assert.Equal((2, ""), (run.ExitCode, run.Output));
        Assert.Contains("arrange", run.Error);
    }

    [Fact]
    public void Every_option_of_arrange_is_explained()
    {
        var help = CliRun.Of(new FakeUseCases(), "arrange", "--help").Output;
        string[] options =
        [
            "out",
            "part",
            "feel",
            "level",
            "left",
            "right",
            "raggedness",
            "key",
            "bpm",
            "span",
            "octave-width",
            "no-octaves",
            "lyrics",
            "plain",
            "paper",
            "format",
            "json",
            "seed",
            "replace",
        ];
        Assert.All(options, option => Assert.Contains("  --" + option + " ", help));
    }
}
