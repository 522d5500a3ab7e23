using Stridewright.Music;

namespace Stridewright.Formats.Midi;

/// <summary>
/// The key of a file without a key signature: the signature that holds most of the tune, by length; of several the one on
/// whose tonic the tune ends, then the one with fewest signs. Minor when it ends on the tonic of the relative minor.
/// </summary>
internal static class KeyGuess
{
    public static Key Of(IReadOnlyList<LineNote> line)
    {
        var weights = new double[12];
        foreach (var note in line)
        {
            weights[note.Stroke.Key % 12] += (note.End - note.Start).ToQuarters();
        }
        var last = line[^1].Stroke.Key % 12;
        return Enumerable
            .Range(-6, 13)
            .SelectMany(sharps =>
                new[] { Key.FromSignature(sharps, Mode.Major), Key.FromSignature(sharps, Mode.Minor) }
            )
            .OrderByDescending(key => Math.Round(Inside(key, weights), 6))
            .ThenByDescending(key => key.Tonic.PitchClass == last)
            .ThenBy(key => Math.Abs(key.Signature))
            .ThenBy(key => key.IsMinor)
            .ThenBy(key => key.Signature)
            .First();
    }

    private static double Inside(Key key, double[] weights)
    {
        var inside = 0.0;
        for (var fifths = key.Signature - 1; fifths <= key.Signature + 5; fifths++)
        {
            inside += weights[new Tone(fifths).PitchClass];
        }
        return inside;
    }
}
