using System.Text.Json;
using Stridewright.Workbench;
using static Stridewright.Cli.Tests.RealProgram;

namespace Stridewright.Cli.Tests;

public sealed class PlayerCommandTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("stridewright-player-");

    public void Dispose() => _folder.Delete(recursive: true);

    private string File(string name) => Path.Combine(_folder.FullName, name);

    [Fact]
    public void What_is_said_of_the_hands_reaches_the_request()
    {
        var useCases = new FakeUseCases();
        CliRun.Of(
            useCases,
            "player",
            "ada.player",
            "--out",
            "bea.player",
            "--name",
            "Bea",
            "--left-span",
            "190",
            "--no-tenths",
            "--right-without",
            "4 5",
            "--usual",
            "men 75",
            "--replace"
        );
        Assert.Equal(
            new PlayerRequest
            {
                File = "ada.player",
                Out = "bea.player",
                Name = "Bea",
                Usual = "men 75",
                Replace = true,
                Hands = [new("left-span", "190"), new("right-without", "4 5"), new("no-tenths", "")],
            },
            useCases.AskedForPlayer
        );
    }

    [Fact]
    public void The_player_of_arrange_and_check_reaches_the_request()
    {
        var useCases = new FakeUseCases();
        CliRun.Of(useCases, "check", "rag.mxl", "--player", "ada.player");
        CliRun.Of(useCases, "arrange", "tune.abc", "--player", "ada.player");
        Assert.Equal(("ada.player", "ada.player"), (useCases.AskedToCheck!.Player, useCases.Asked!.Wishes.Player));
    }

    [Fact]
    public void A_player_is_written_shown_and_changed()
    {
        var made = Run(
            "player",
            "--out",
            File("ada.player"),
            "--name",
            "Ada",
            "--span",
            "8.1in",
            "--left-without",
            "4"
        );
        Assert.Equal((0, ""), (made.Code, made.Error));
        Assert.Contains("without finger 4", made.Output, StringComparison.Ordinal);
        Assert.Contains("possible    up to the octave", made.Output, StringComparison.Ordinal);
        var text = System.IO.File.ReadAllText(File("ada.player"));
        Assert.Contains("span 205.74\n", text, StringComparison.Ordinal);
        // It stays unless it may be replaced.
        var again = Run("player", File("ada.player"), "--weaker", "left", "--out", File("ada.player"));
        Assert.Contains("--replace", again.Error, StringComparison.Ordinal);
        Assert.Equal(text, System.IO.File.ReadAllText(File("ada.player")));
        Run("player", File("ada.player"), "--weaker", "left", "--out", File("ada.player"), "--replace");
        Assert.Contains("weaker left\n", System.IO.File.ReadAllText(File("ada.player")), StringComparison.Ordinal);
        var json = JsonDocument.Parse(Run("player", File("ada.player"), "--json").Output).RootElement;
        Assert.Equal("Ada", json.GetProperty("name").GetString());
        Assert.Equal(14.4, json.GetProperty("left").GetProperty("leapBitsPerSecond").GetDouble(), 1e-9);
    }

    [Fact]
    public void Check_judges_by_the_player_and_an_option_goes_before_it()
    {
        Run("player", "--out", File("ada.player"), "--name", "Ada", "--span", "160");
        var score = Path.Combine(Testing.Corpus.CheckoutRoot, "samples", "ferry-bell.abc");
        Run("arrange", score, "--level", "5", "--span", "230", "--format", "musicxml", "--out", _folder.FullName);
        var rag = File("ferry-bell.musicxml");
        Assert.Equal(1, Run("check", rag, "--player", File("ada.player")).Code);
        Assert.Equal(0, Run("check", rag, "--player", File("ada.player"), "--span", "230").Code);
    }

    [Fact]
    public void The_leap_test_is_written_and_a_take_of_it_measured()
    {
        var written = Run("player", "--write-leap-test", File("test"));
        Assert.Equal((0, ""), (written.Code, written.Error));
        foreach (var hand in new[] { "left", "right" })
        {
            if (Testing.Corpus.FilesIfThere("standards", ".xsd").Count > 0)
            {
                using var score = System.IO.File.OpenRead(File($"test/leap-test-{hand}.musicxml"));
                Assert.Empty(Testing.MusicXmlSchema.Faults(score));
            }
            // The test as the program plays it: all of it landed, sixteenths at 120 at last.
            Run(
                "player",
                "--name",
                "Ada",
                "--out",
                File($"{hand}.player"),
                "--leap-test",
                File($"test/leap-test-{hand}.mid")
            );
            var text = System.IO.File.ReadAllText(File($"{hand}.player"));
            Assert.Contains($"{hand}-leaps 18", text, StringComparison.Ordinal);
            Assert.Contains($"{hand}-strokes 8\n", text, StringComparison.Ordinal);
        }
        var other = Run(
            "player",
            "--leap-test",
            Path.Combine(Testing.Corpus.CheckoutRoot, "samples", "midi", "ferry-bell.mid")
        );
        Assert.Equal(2, other.Code);
        Assert.Contains("--leap-test: this is no take of the leap test", other.Error, StringComparison.Ordinal);
        Assert.Contains(
            "--leap-test: ",
            Run("player", "--leap-test", File("missing.mid")).Error,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "--leap-test: ",
            Run("player", "--leap-test", File("left.player")).Error,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("hands\n  span wide", "line 3, column 8", "span")]
    [InlineData("", "line 2, column 1", "needs a name")]
    public void A_fault_in_a_player_file_is_told_with_its_place(string lines, string place, string message)
    {
        System.IO.File.WriteAllText(File("bad.player"), "stridewright player 1\n" + lines);
        var run = Run("player", File("bad.player"));
        Assert.Equal(2, run.Code);
        Assert.Contains($"bad.player:{place}: ", run.Error, StringComparison.Ordinal);
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
        var check = Run("check", "rag.musicxml", "--player", File("bad.player"));
        Assert.Contains($"--player:{place}: ", check.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--usual", "children 50", "such as women 50")]
    [InlineData("--out", "ada.txt", ".player")]
    [InlineData("--out", "ada.player", "needs a name")]
    [InlineData("--span", "8.1", "did you mean 8.1in?")]
    [InlineData("--right-without", "1 2 3 4", "at least two")]
    public void A_bad_wish_is_told_in_a_sentence(string option, string value, string message)
    {
        var run = Run("player", option, value);
        Assert.Equal(2, run.Code);
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
    }
}
