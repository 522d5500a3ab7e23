using BenchmarkDotNet.Attributes;
using Stridewright.Arranging;

namespace Stridewright.Bench;

/// <summary>Arranging 32 bars, warm. Baseline: reading the same tune from ABC. Promise: under 20 ms.</summary>
[MemoryDiagnoser]
public class ArrangingBench
{
    [Params(1, 3, 4, 5, 6)]
    public int Level { get; set; }

    [Benchmark(Baseline = true)]
    public object ReadTheTune() => Material.ReadAbc();

    [Benchmark]
    public object Arrange() => Arranger.Arrange(Material.Tune, new Brief { LeftLevel = Level, RightLevel = Level });
}
