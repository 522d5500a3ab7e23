using BenchmarkDotNet.Attributes;
using Stridewright.Formats.MusicXml;

namespace Stridewright.Bench;

/// <summary>Reading a two-staff score of 32 bars from MusicXML. Baseline: a bare XmlReader over the same bytes.</summary>
[MemoryDiagnoser]
public class MusicXmlReadingBench
{
    private readonly byte[] _xml = Material.Xml(Material.Score(5));

    [Benchmark(Baseline = true)]
    public int BareXmlReader()
    {
        using var reader = Material.BareReader(_xml);
        var nodes = 0;
        while (reader.Read())
        {
            nodes++;
        }
        return nodes;
    }

    [Benchmark]
    public object ReadScore() => MusicXmlReader.ReadScore(new MemoryStream(_xml));
}
