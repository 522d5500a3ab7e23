using BenchmarkDotNet.Attributes;
using Stridewright.Arranging;
using Stridewright.Music;

namespace Stridewright.Bench;

/// <summary>Working 64 bars again after one change. Baseline: arranging them. Promise: under 20 ms.</summary>
[MemoryDiagnoser]
public class ReworkBench
{
    private const int Strains = 8;
    private const int Bar = 20;
    private readonly Tune _tune = Material.ReadAbc(Strains);
    private Arrangement _before = null!;
    private ValueList<KeptBar> _right = [];
    private ValueList<KeptBar> _left = [];

    [Params(2, 4, 6)]
    public int Level { get; set; }

    private Brief Usual => new() { LeftLevel = Level, RightLevel = Level };

    [GlobalSetup]
    public void Choose()
    {
        _before = Arranger.Arrange(_tune, Usual).Arrangement!;
        var ways = OtherWays.Of(_before, Bar, 1);
        _right = [ways.First(w => w.Kind == WayKind.Rhythm).Spot];
        _left = [ways.First(w => w.Kind == WayKind.LeftHand).Spot];
    }

    [Benchmark(Baseline = true)]
    public object Arranged() => Arranger.Arrange(_tune, Usual);

    [Benchmark]
    public object RightHandChanged() => Reworking.Rework(_before, _right);

    [Benchmark]
    public object LeftHandChanged() => Reworking.Rework(_before, _left);
}
