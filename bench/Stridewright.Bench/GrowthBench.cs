using BenchmarkDotNet.Attributes;
using Stridewright.Arranging;
using Stridewright.Music;

namespace Stridewright.Bench;

/// <summary>Arranging ever longer tunes at level 4, figures per bar. Baseline: 32 bars. Promise: time grows linearly, so
/// that the ratios are 1.</summary>
[MemoryDiagnoser]
public class GrowthBench
{
    private readonly Tune _four = Material.ReadAbc(4 * Material.Strains);
    private readonly Tune _sixteen = Material.ReadAbc(16 * Material.Strains);
    private readonly Tune _thirtyTwo = Material.ReadAbc(32 * Material.Strains);

    [Benchmark(Baseline = true, OperationsPerInvoke = 32)]
    public object Bars32() => Arranger.Arrange(Material.Tune, new Brief());

    [Benchmark(OperationsPerInvoke = 128)]
    public object Bars128() => Arranger.Arrange(_four, new Brief());

    [Benchmark(OperationsPerInvoke = 512)]
    public object Bars512() => Arranger.Arrange(_sixteen, new Brief());

    [Benchmark(OperationsPerInvoke = 1024)]
    public object Bars1024() => Arranger.Arrange(_thirtyTwo, new Brief());
}
