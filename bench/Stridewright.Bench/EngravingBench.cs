using BenchmarkDotNet.Attributes;
using Stridewright.Engraving;

namespace Stridewright.Bench;

/// <summary>32 bars engraved. Baseline: the engraving library's own work to SVG. Promise: the PDF, SVG included, takes at
/// most 1.5 times as long.</summary>
[MemoryDiagnoser]
public class EngravingBench
{
    private readonly byte[] _xml = Material.Xml(Material.Score(5));
    private Engraver _engraver = null!;

    [GlobalSetup]
    public void Open() => _engraver = Engraver.Create();

    [GlobalCleanup]
    public void Close() => _engraver.Dispose();

    [Benchmark(Baseline = true)]
    public object Svg() => _engraver.Engrave(new MemoryStream(_xml), PageSetup.Default).Value!;

    [Benchmark]
    public long Pdf()
    {
        using var stream = new MemoryStream();
        PdfWriter.Write(_engraver.Engrave(new MemoryStream(_xml), PageSetup.Default).Value!, stream);
        return stream.Length;
    }
}
