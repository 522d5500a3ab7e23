using Stridewright.Music;

namespace Stridewright.Sound;

/// <summary>The strings that a performance strikes, each as long as it rings at the longest.</summary>
internal static class Strings
{
    private const int LowestKey = 21,
        HighestKey = 108;

    /// <summary>The key that is sounded for one: those off the keyboard are brought onto it by octaves.</summary>
    public static int OnKeyboard(int key) =>
        key < LowestKey ? LowestKey + (((key - LowestKey) % 12) + 12) % 12
        : key > HighestKey ? HighestKey - (((HighestKey - key) % 12) + 12) % 12
        : key;

    public static Dictionary<int, PianoString> Of(
        RecordedPiano piano,
        ValueList<RingingStroke> strokes,
        CancellationToken cancellation
    )
    {
        var longest = strokes
            .GroupBy(s => OnKeyboard(s.Stroke.Key))
            .Select(g => (Key: g.Key, Frames: FramesOf(g.Key, g.Max(s => s.Damped - s.Start))))
            .GroupBy(k => RecordedPiano.Nearest(k.Key))
            .ToList();
        var strings = new Dictionary<int, PianoString>();
        var options = new ParallelOptions { CancellationToken = cancellation };
        Parallel.ForEach(
            longest,
            options,
            recorded =>
            {
                var made = recorded
                    .Select(k => (k.Key, k.Frames, Speed: new Resampler(StepOf(k.Key, recorded.Key))))
                    .ToList();
                var (left, right) = piano.Decode(recorded.Key, made.Max(k => k.Speed.InputFor(k.Frames)));
                foreach (var (key, frames, speed) in made)
                {
                    var sound = new PianoString(key, speed.Resample(left, frames), speed.Resample(right, frames));
                    lock (strings)
                    {
                        strings.Add(key, sound);
                    }
                }
            }
        );
        return strings;
    }

    private static double StepOf(int key, int recorded) =>
        Math.Pow(2, (key - recorded) / 12.0) * RecordedPiano.Rate / Wav.Rate;

    // With room for the damper; a string without one is heard to its end.
    private static int FramesOf(int key, double seconds) =>
        PianoString.IsDamped(key)
            ? (int)((Math.Min(seconds, LongestSeconds) + DampingSeconds) * Wav.Rate)
            : LongestSeconds * Wav.Rate;

    private const int LongestSeconds = 60; // no recording lasts so long
    private const double DampingSeconds = 1.2;
}
