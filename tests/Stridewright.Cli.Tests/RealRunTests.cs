using Stridewright.Testing;
using Stridewright.Workbench;

namespace Stridewright.Cli.Tests;

/// <summary>The commands with everything real behind them.</summary>
public sealed class RealRunTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("stridewright-real-");

    public static TheoryData<string> BrokenScores =>
        new(Directory.Exists(Reject) ? Directory.EnumerateFiles(Reject).Select(f => Path.GetFileName(f)!).Order() : []);

    private static string Reject =>
        Path.Combine(
            Environment.GetEnvironmentVariable("STRIDEWRIGHT_SHARED")
                ?? Path.Combine(Corpus.CheckoutRoot, "..", "shared"),
            "corpus",
            "musicxml",
            "reject"
        );

    private static string Sample => Path.Combine(Corpus.CheckoutRoot, "samples", "ferry-bell.abc");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void A_tune_becomes_a_score_a_midi_file_and_a_pdf_and_the_score_passes_check()
    {
        var (code, output, error) = Run("arrange", Sample, "--out", _folder.FullName);
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("ferry-bell.pdf", output, StringComparison.Ordinal);
        Assert.Equal(
            ["ferry-bell.mid", "ferry-bell.musicxml", "ferry-bell.pdf"],
            _folder.EnumerateFiles().Select(f => f.Name).Order(StringComparer.Ordinal)
        );
        Assert.Equal(0, Run("check", Path.Combine(_folder.FullName, "ferry-bell.musicxml")).Code);
    }

    [Fact]
    public void A_score_for_large_hands_is_not_for_small_ones()
    {
        Run("arrange", Sample, "--level", "6", "--span", "230", "--out", _folder.FullName, "--format", "musicxml");
        var score = Path.Combine(_folder.FullName, "ferry-bell.musicxml");
        Assert.Equal(0, Run("check", score, "--span", "230").Code);
        var (code, output, _) = Run("check", score, "--span", "165");
        Assert.Equal(1, code);
        Assert.Contains("bar ", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1", "205")]
    [InlineData("4", "205")]
    [InlineData("6", "230")]
    public void Every_sample_passes_check_for_the_hands_it_was_set_for(string level, string span)
    {
        string[] wishes = ["--level", level, "--span", span, "--out", _folder.FullName, "--format", "musicxml"];
        var (code, output, error) = Run(["arrange", Path.GetDirectoryName(Sample)!, .. wishes]);
        Assert.True(code == 0, output + error);
        var scores = _folder.GetFiles("*.musicxml");
        Assert.True(scores.Length >= 8);
        Assert.All(
            scores,
            score =>
            {
                var check = Run("check", score.FullName, "--span", span);
                Assert.True(check is (0, _, ""), check.ToString());
            }
        );
        if (level == "6")
        {
            // Octaves are taken all over at this level; at 145 mm, 20 mm under an octave, none can be struck.
            Assert.All(
                scores,
                score =>
                {
                    var check = Run("check", score.FullName, "--span", "145");
                    Assert.Equal(1, check.Code);
                    Assert.Matches(@"bar \d+", check.Output);
                }
            );
            Assert.Contains(scores, score => Run("check", score.FullName, "--span", "185").Code == 1);
        }
    }

    [Theory]
    [InlineData("X:1\nT:No key\nM:2/4\nCDEF|\n", "K:")]
    [InlineData("not music at all", "there is no tune")]
    [InlineData("", "")]
    [InlineData("X:1\nK:C\n|||::||\n", "note")]
    [InlineData("X:1\nK:C\nC99999999999999999999D|\n", "line 3")]
    public void A_broken_tune_ends_with_2_or_is_repaired_with_a_word(string text, string expected)
    {
        var file = Path.Combine(_folder.FullName, "broken.abc");
        File.WriteAllText(file, text);
        var (code, output, error) = Run("arrange", file, "--out", _folder.FullName, "--format", "musicxml");
        Assert.True(
            code == 2
                || output.Contains("warning", StringComparison.Ordinal)
                || output.Contains("note", StringComparison.Ordinal),
            output + error
        );
        Assert.Contains(expected, code == 2 ? error : output, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("went wrong inside", error, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(BrokenScores))]
    public void A_broken_score_of_the_corpus_ends_with_2_and_its_place(string name)
    {
        var file = Corpus.PathOf("corpus/musicxml/reject/" + name);
        var (code, _, error) = Run("arrange", file, "--out", _folder.FullName, "--format", "musicxml");
        Assert.Equal(2, code);
        Assert.Contains(name + ":", error, StringComparison.Ordinal);
        Assert.Empty(_folder.EnumerateFiles());
        Assert.DoesNotContain("went wrong inside", error, StringComparison.Ordinal);
    }

    private static (int Code, string Output, string Error) Run(params string[] args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var code = new CommandLineApp(UseCases.Open, output, error).Run(args, TestContext.Current.CancellationToken);
        return (code, output.ToString(), error.ToString());
    }
}
