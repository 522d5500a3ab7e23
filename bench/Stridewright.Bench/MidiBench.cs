using BenchmarkDotNet.Attributes;
using Stridewright.Formats.Midi;
using Stridewright.Music;
using Stridewright.Sound;

namespace Stridewright.Bench;

/// <summary>Playing a score of 32 bars and writing it as MIDI. Baseline: its key presses in time.</summary>
[MemoryDiagnoser]
public class MidiBench
{
    private readonly Score _score = Material.Score(5);
    private readonly Performance _performance = Performer.Perform(Material.Score(5));

    [Benchmark(Baseline = true)]
    public object KeyPresses() => Timeline.Of(_score);

    [Benchmark]
    public object Perform() => Performer.Perform(_score);

    [Benchmark]
    public long Write()
    {
        using var stream = new MemoryStream();
        MidiWriter.Write(_performance, stream);
        return stream.Length;
    }
}
