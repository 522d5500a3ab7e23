using System.Xml;
using BenchmarkDotNet.Attributes;
using Stridewright.Formats.Midi;
using Stridewright.Formats.MusicXml;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Sound;

namespace Stridewright.Bench;

/// <summary>Reading, writing and judging a score of 32 bars. Baseline: a bare XmlReader over its MusicXML.</summary>
[MemoryDiagnoser]
public class FormatsBench
{
    private readonly Score _score = Material.Score(5);
    private readonly byte[] _xml = Material.Xml(Material.Score(5));

    [Benchmark(Baseline = true)]
    public int BareXmlReader()
    {
        using var reader = XmlReader.Create(
            new MemoryStream(_xml),
            new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore, XmlResolver = null }
        );
        var nodes = 0;
        while (reader.Read())
        {
            nodes++;
        }
        return nodes;
    }

    [Benchmark]
    public object ReadScore() => MusicXmlReader.ReadScore(new MemoryStream(_xml));

    [Benchmark]
    public object WriteMusicXml() => Material.Xml(_score);

    [Benchmark]
    public long PerformAndWriteMidi()
    {
        using var stream = new MemoryStream();
        MidiWriter.Write(Performer.Perform(_score), stream);
        return stream.Length;
    }

    [Benchmark]
    public object JudgeScore() => Judge.Check(_score, new PlayerHands());
}
