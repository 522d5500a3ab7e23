using Stridewright.Arranging;
using Stridewright.Formats.Abc;
using Stridewright.Music;
using Stridewright.Practice.Listening;
using Stridewright.Testing;

namespace Stridewright.Practice.Tests.Takes;

/// <summary>Scores to make takes of: each tune that comes with the project, set at every level in turn.</summary>
internal static class Pieces
{
    private const int BarsOfExcerpt = 20;

    /// <summary>As they are played, repeats and all.</summary>
    public static IReadOnlyList<ExpectedScore> Whole { get; } = [.. Settings().Select(ExpectedScore.Of)];

    /// <summary>Their first twenty bars, each once: what was jumped to can then be known.</summary>
    public static IReadOnlyList<ExpectedScore> Excerpts { get; } =
    [.. Settings().Select(s => ExpectedScore.Of(Excerpt(s)))];

    private static ScoreNotes Excerpt(ScoreNotes score) =>
        score with
        {
            Bars = score.Bars.Take(BarsOfExcerpt).Select(b => b with { Marks = BarMarks.None }).ToValueList(),
        };

    private static IEnumerable<ScoreNotes> Settings()
    {
        var files = Directory
            .EnumerateFiles(Path.Combine(Corpus.CheckoutRoot, "samples"), "*.abc")
            .Order(StringComparer.Ordinal)
            .ToList();
        for (var i = 0; i < files.Count; i++)
        {
            var tune = AbcReader.Read(new StringReader(File.ReadAllText(files[i]))).Value![0];
            var brief = new Brief { LeftLevel = 1 + i % 6, RightLevel = 1 + i % 6 };
            if (Arranger.Arrange(tune, brief).Arrangement is { } made)
            {
                yield return ScoreNotes.Of(made.Score);
            }
        }
    }
}
