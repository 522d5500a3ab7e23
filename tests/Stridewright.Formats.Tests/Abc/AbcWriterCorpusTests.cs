using Stridewright.Formats.Abc;
using Stridewright.Formats.Midi;
using Stridewright.Formats.MusicXml;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Formats.Tests.Abc;

/// <summary>What the writer makes of every tune at hand, whatever format it came in, is read back as the same tune.</summary>
public sealed class AbcWriterCorpusTests
{
    [Fact]
    public void Samples_come_back()
    {
        var samples = Path.Combine(Corpus.CheckoutRoot, "samples");
        var files = Directory.EnumerateFiles(samples, "*", SearchOption.AllDirectories).SelectMany(TunesOf).ToList();
        Assert.InRange(files.Count, 10, 1000);
        AssertComeBack(files);
    }

    [Theory]
    [InlineData("corpus/abc", 90)]
    [InlineData("corpus/musicxml/valid", 60)]
    [InlineData("corpus/midi/valid", 5)]
    public void The_corpus_comes_back(string folder, int atLeast)
    {
        var tunes = Corpus.Files(folder, ".abc", ".musicxml", ".xml", ".mxl", ".mid").SelectMany(TunesOf).ToList();
        Assert.True(tunes.Count >= atLeast, $"{tunes.Count} tunes");
        AssertComeBack(tunes);
    }

    private static void AssertComeBack(List<(string File, Tune Tune)> tunes)
    {
        var lost = tunes
            .Select(t => (t.File, Difference: RoundTrip.Difference(t.Tune)))
            .Where(t => t.Difference is not null)
            .ToList();
        Assert.True(lost.Count == 0, $"{lost.Count} of {tunes.Count}\n" + string.Join("\n", lost.Take(20)));
    }

    private static IEnumerable<(string File, Tune Tune)> TunesOf(string path)
    {
        using var stream = File.OpenRead(path);
        ValueList<Tune> tunes = Path.GetExtension(path) switch
        {
            ".abc" => AbcReader.Read(new StringReader(AbcReader.Decode(stream).Value!)).Value ?? [],
            ".musicxml" or ".xml" or ".mxl" => MusicXmlReader.ReadTune(stream, null).Value is { } sheet ? [sheet] : [],
            ".mid" => MidiTuneReader.Read(stream, null).Value is { } heard ? [heard] : [],
            _ => [],
        };
        return tunes.Select(t => (Path.GetFileName(path), t));
    }
}
