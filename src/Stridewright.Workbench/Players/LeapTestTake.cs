using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Workbench;

/// <summary>What a recorded leap test says of a hand.</summary>
internal static class LeapTestTake
{
    /// <summary>Null, with the reason, where the take cannot be read as one.</summary>
    public static LeapTestResult? Measure(ITools tools, byte[] midi, double octaveMm, out string problem)
    {
        using var stream = new MemoryStream(midi, writable: false);
        var take = tools.ReadTake(stream);
        if (take.Value is not { } played)
        {
            problem = take.Diagnostics.First(d => d.Severity == Severity.Error).ToString();
            return null;
        }
        var keys = played
            .Strokes.Take(LeapTestReading.MostStrokes + 1)
            .Select(s => new StruckKey(played.SecondsAt(s.Tick), s.Key))
            .ToList();
        var reading = LeapTestReading.Measure(keys, octaveMm);
        problem = reading.Value is null ? reading.Diagnostics[0].Message : "";
        return reading.Value;
    }

    /// <summary>To a tenth: no take is more exact. By the words of a file, so that it holds what a file can hold.</summary>
    public static IEnumerable<HandsSaid> Said(LeapTestResult measured)
    {
        var side = Arranging.Words.Of(measured.Hand);
        yield return new($"{side}-leaps", Written(measured.LeapBitsPerSecond));
        if (measured.StrokesPerSecond is { } strokes)
        {
            yield return new($"{side}-strokes", Written(strokes));
        }

        static string Written(double value) =>
            Math.Round(value, 1).ToString(System.Globalization.CultureInfo.InvariantCulture);
    }
}
