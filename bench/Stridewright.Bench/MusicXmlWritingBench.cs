using System.Xml;
using System.Xml.Linq;
using BenchmarkDotNet.Attributes;
using Stridewright.Formats.MusicXml;
using Stridewright.Music;

namespace Stridewright.Bench;

/// <summary>Writing a score of 32 bars as MusicXML. Baseline: a bare XmlWriter with the finished document.</summary>
[MemoryDiagnoser]
public class MusicXmlWritingBench
{
    private readonly Score _score = Material.Score(5);
    private readonly XDocument _document = XDocument.Load(Material.BareReader(Material.Xml(Material.Score(5))));

    [Benchmark(Baseline = true)]
    public long BareXmlWriter()
    {
        using var stream = new MemoryStream();
        using (var writer = XmlWriter.Create(stream, new XmlWriterSettings { Indent = true }))
        {
            _document.WriteTo(writer);
        }
        return stream.Length;
    }

    [Benchmark]
    public long WriteScore()
    {
        using var stream = new MemoryStream();
        MusicXmlWriter.Write(_score, stream);
        return stream.Length;
    }
}
