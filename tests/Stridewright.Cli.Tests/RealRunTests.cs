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
