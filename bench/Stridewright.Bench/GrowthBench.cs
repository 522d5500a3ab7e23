using BenchmarkDotNet.Attributes;
using Stridewright.Arranging;
using Stridewright.Music;

namespace Stridewright.Bench;

/// <summary>Arranging ever longer tunes at level 4. Baseline: 32 bars. Promise: time grows linearly with bars.</summary>
[MemoryDiagnoser]
public class GrowthBench
{
    private readonly Tune _fourTimes = Material.ReadAbc(4 * Material.Strains);
    private readonly Tune _sixteenTimes = Material.ReadAbc(16 * Material.Strains);

    [Benchmark(Baseline = true)]
    public object Bars32() => Arranger.Arrange(Material.Tune, new Brief());

    [Benchmark]
    public object Bars128() => Arranger.Arrange(_fourTimes, new Brief());

    [Benchmark]
    public object Bars512() => Arranger.Arrange(_sixteenTimes, new Brief());
}
