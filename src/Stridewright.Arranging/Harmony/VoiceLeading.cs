using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>How far voices travel from one chord to the next: the taxicab distance, summed over voices.</summary>
internal static class VoiceLeading
{
    /// <summary>Of two registered voicings, lowest to lowest and so on; voices without a partner do not count.</summary>
    public static int Registered(ValueList<Pitch> from, ValueList<Pitch> to)
    {
        var distance = 0;
        for (var i = 0; i < Math.Min(from.Count, to.Count); i++)
        {
            distance += Math.Abs(from[i].Midi - to[i].Midi);
        }
        return distance;
    }

    /// <summary>
    /// Of two chords as pitch classes: the least sum over all pairings of voices, each voice going the shorter way round
    /// the octave. Defined for chords of the same number of tones; of others the surplus tones are left out at best.
    /// </summary>
    public static int OfChords(ChordSymbol from, ChordSymbol to)
    {
        var (few, many) = (Classes(from), Classes(to));
        if (few.Length > many.Length)
        {
            (few, many) = (many, few);
        }
        return Least(few, many, 0, 0);
    }

    private static int[] Classes(ChordSymbol chord) => [.. chord.Tones.Select(t => t.PitchClass).Distinct()];

    private static int Least(int[] few, int[] many, int index, int taken)
    {
        if (index == few.Length)
        {
            return 0;
        }
        var best = int.MaxValue;
        for (var k = 0; k < many.Length; k++)
        {
            if ((taken >> k & 1) == 0)
            {
                var apart = Math.Abs(few[index] - many[k]);
                best = Math.Min(best, Math.Min(apart, 12 - apart) + Least(few, many, index + 1, taken | 1 << k));
            }
        }
        return best;
    }
}
