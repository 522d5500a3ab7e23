using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>The scale that runs go by: the key's, with the chord's own tones in place of those on the same letter.</summary>
internal static class RunScale
{
    /// <summary>The pitch so many steps of the scale away.</summary>
    public static Pitch Move(Lattice lattice, int tick, Pitch from, int steps)
    {
        var index = from.DiatonicIndex + steps;
        var step = (Step)(((index % 7) + 7) % 7);
        var tone = Tone(lattice, tick, step);
        return new Pitch(tone, (index - (int)step) / 7);
    }

    private static Tone Tone(Lattice lattice, int tick, Step step)
    {
        var chord = lattice.ChordAt(tick).Chord;
        foreach (var tone in chord.IsNoChord ? [] : chord.Tones)
        {
            if (tone.Step == step)
            {
                return tone;
            }
        }
        return lattice.Bars[lattice.BarAt(tick)].Key.ToneOf(step);
    }
}
