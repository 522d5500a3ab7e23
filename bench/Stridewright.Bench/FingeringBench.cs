using BenchmarkDotNet.Attributes;
using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Bench;

/// <summary>Fingering ever longer settings at level 5, figures per bar; 32 bars have about 510 notes, 128 about 2,000.
/// Baseline: 32 bars. Promise: time grows linearly, so that the ratios are 1, and 1,500 notes take less than a
/// second.</summary>
[MemoryDiagnoser]
public class FingeringBench
{
    private static readonly PlayerHands Hands = new();
    private readonly Score _one = Material.Score(5);
    private readonly Score _four = Material.Score(5, 4 * Material.Strains);
    private readonly Score _sixteen = Material.Score(5, 16 * Material.Strains);

    [Benchmark(Baseline = true, OperationsPerInvoke = 32)]
    public object Bars32() => Fingerer.Finger(_one, Hands);

    [Benchmark(OperationsPerInvoke = 128)]
    public object Bars128() => Fingerer.Finger(_four, Hands);

    [Benchmark(OperationsPerInvoke = 512)]
    public object Bars512() => Fingerer.Finger(_sixteen, Hands);
}
