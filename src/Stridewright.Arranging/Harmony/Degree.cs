using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>A chord seen from its key.</summary>
/// <param name="Above">Semitones of its root above the tonic, 0 to 11.</param>
internal readonly record struct Degree(int Above, Quality Quality)
{
    /// <summary>The chord as a degree; a major triad on the fifth counts as a dominant seventh.</summary>
    public static Degree Of(ChordSymbol chord, Key key)
    {
        var above = (chord.Root.PitchClass - key.Tonic.PitchClass + 12) % 12;
        var third = chord.Intervals.FirstOrDefault(i => i.Steps == 2).Semitones;
        var fifth = chord.Intervals.FirstOrDefault(i => i.Steps == 4).Semitones;
        var seventh = chord.Intervals.Any(i => i is { Steps: 6, Semitones: 10 });
        var quality =
            third == 3 && fifth == 6 ? Quality.Diminished
            : third == 3 ? Quality.Minor
            : seventh || above == 7 ? Quality.Dominant
            : Quality.Major;
        return new Degree(above, quality);
    }

    /// <summary>The chord, its root spelled from the key.</summary>
    public ChordSymbol In(Key key)
    {
        var root = key.Tonic.PlusFifths(FifthsOf(Above));
        return new ChordSymbol(
            root,
            Quality switch
            {
                Quality.Major => ChordKind.Major,
                Quality.Minor => ChordKind.Minor,
                Quality.Dominant => ChordKind.Dominant,
                _ => ChordKind.DiminishedSeventh,
            }
        );
    }

    // Raised fourth; lowered second, third, sixth and seventh.
    private static int FifthsOf(int above) => (7 * above + 5) % 12 - 5;
}

/// <summary>The make of a chord, as far as its function goes.</summary>
internal enum Quality
{
    Major,
    Minor,
    Dominant,
    Diminished,
}
