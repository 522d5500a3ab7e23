using BenchmarkDotNet.Attributes;
using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Bench;

/// <summary>Spelling a score of 32 bars and judging it. Baseline: its key presses in time.</summary>
[MemoryDiagnoser]
public class ScoreBench
{
    private readonly Score _score = Material.Score(5);
    private readonly Draft _draft = Material.Draft();

    [Benchmark(Baseline = true)]
    public object KeyPresses() => Timeline.Of(_score);

    [Benchmark]
    public object Spell() => Notator.Write(_draft);

    [Benchmark]
    public object Check() => Judge.Check(_score, new PlayerHands());
}
