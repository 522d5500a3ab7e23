using Stridewright.Arranging;
using Stridewright.Formats.Abc;
using Stridewright.Music;
using Stridewright.Practice.Listening;
using Stridewright.Testing;

namespace Stridewright.Practice.Tests.Takes;

/// <summary>Scores to make takes of.</summary>
internal static class Pieces
{
    /// <summary>Each tune that comes with the project, set at every level in turn.</summary>
    public static IReadOnlyList<ExpectedScore> Samples { get; } = [.. Settings().Select(ExpectedScore.Of)];

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
