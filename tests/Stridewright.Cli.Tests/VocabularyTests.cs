using System.Text.RegularExpressions;
using Stridewright.Arranging;
using Stridewright.Testing;
using Stridewright.Workbench;

namespace Stridewright.Cli.Tests;

/// <summary>Every line of docs/vocabulary.md shows its word: found in the score that the line writes, by the word's
/// definition.</summary>
public sealed class VocabularyTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("stridewright-words-");

    public static TheoryData<string, string> Lines =>
        [
            .. File.ReadAllLines(Path.Combine(Corpus.CheckoutRoot, "docs", "vocabulary.md"))
                .Select(l => Regex.Match(l, @"^\| `(?<word>[\w-]+)` \| .+ \| `arrange (?<line>.+)` \|$"))
                .Where(m => m.Success)
                .Select(m => (m.Groups["word"].Value, m.Groups["line"].Value)),
        ];

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void Every_word_has_its_line() =>
        Assert.Equal(
            Manners.Left.Keys.Concat(Manners.Right.Keys).Order(StringComparer.Ordinal),
            Lines.Select(l => l.Data.Item1).Order(StringComparer.Ordinal)
        );

    [Theory]
    [MemberData(nameof(Lines))]
    public void A_line_shows_its_word(string word, string line)
    {
        var words = line.Split(' ');
        words[0] = Path.Combine(Corpus.CheckoutRoot, words[0]);
        using var output = new StringWriter();
        using var error = new StringWriter();
        string[] command = ["arrange", .. words, "--format", "musicxml", "--out", _folder.FullName];
        var code = new CommandLineApp(UseCases.Open, output, error).Run(command, TestContext.Current.CancellationToken);
        Assert.True((code, error.ToString()) == (0, ""), output.ToString() + error);
        using var file = Assert.Single(_folder.GetFiles("*.musicxml")).OpenRead();
        if (Corpus.FilesIfThere("standards", ".xsd").Count > 0)
        {
            Assert.Empty(MusicXmlSchema.Faults(file));
            file.Position = 0;
        }
        var sheet = Sheet.Read(file);
        Assert.Contains(Enumerable.Range(0, sheet.Count), i => Vocabulary.Has(word, sheet, i) == true);
    }
}
