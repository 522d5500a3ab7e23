using BenchmarkDotNet.Attributes;
using Stridewright.Arranging;
using Stridewright.Music;

namespace Stridewright.Bench;

/// <summary>Arranging 150 bars, figures per bar. Baseline: 32 bars as they stand. Promise: a form costs no more a bar than
/// the length does.</summary>
[MemoryDiagnoser]
public class FormBench
{
    // 152 bars, the nearest to 150 in strains of eight.
    private const int LongStrains = 19;
    private readonly Tune _long = Material.ReadAbc(LongStrains);

    [Params(1, 4, 6)]
    public int Level { get; set; }

    private Brief Usual => new() { LeftLevel = Level, RightLevel = Level };

    [Benchmark(Baseline = true, OperationsPerInvoke = 32)]
    public object Plain32() => Arranger.Arrange(Material.Tune, Usual);

    [Benchmark(OperationsPerInvoke = LongStrains * Material.BarsInStrain)]
    public object Plain152() => Arranger.Arrange(_long, Usual);

    [Benchmark(OperationsPerInvoke = Material.BarsInForm)]
    public object Form150() => Arranger.Arrange(Material.TwoStrains, Usual with { Form = Material.Form });

    [Benchmark(OperationsPerInvoke = Material.BarsInForm)]
    public object Accompanied150() =>
        Arranger.Arrange(Material.TwoStrains, Usual with { Form = Material.Form, Singer = new Singer() });
}
