using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Where the tune lies: the key wanted, and the octave in which the right hand has room under it.</summary>
internal static class Register
{
    /// <summary>Where the tune's median lies best, so that with the fillers below it the top notes have the median 75
    /// measured on 34 printed rags.</summary>
    private const int BestMedian = 77;

    /// <summary>F flat and E sharp on the line of fifths.</summary>
    private const int FurthestFlat = -8,
        FurthestSharp = 11;
    private const int Lowest = 60,
        Highest = 91;

    /// <summary>A piano's keys.</summary>
    private const int FirstKey = 21,
        LastKey = 108;

    /// <summary>How to move the tune.</summary>
    public static Interval For(Tune tune, Tone? tonic)
    {
        var toKey = tonic is { } wanted ? ToKey(tune.Bars[0].Key.Tonic, wanted) : Interval.Unison;
        var keys = tune.Bars.SelectMany(b => b.Notes).Select(n => n.Pitch.Midi + toKey.Semitones).Order().ToArray();
        if (keys.Length == 0)
        {
            return toKey;
        }
        var octaves = Enumerable.Range(-3, 7).OrderBy(o => Off(keys, 12 * o)).ThenBy(o => o).First();
        return new Interval(toKey.Steps + 7 * octaves, toKey.Semitones + 12 * octaves);
    }

    /// <summary>The first bar with a note that lies beyond the keys of a piano when the tune is moved; null: all lie on
    /// them.</summary>
    public static string? BeyondTheKeys(Tune tune, Tone? tonic)
    {
        var by = For(tune, tonic).Semitones;
        return tune.Bars.FirstOrDefault(b => b.Notes.Any(n => n.Pitch.Midi + by is < FirstKey or > LastKey))?.Number;
    }

    public static Tune Move(Tune tune, Interval interval) =>
        interval == Interval.Unison
            ? tune
            : tune with
            {
                Bars = tune
                    .Bars.Select(b =>
                        b with
                        {
                            Key = b.Key.Plus(interval),
                            Notes = b
                                .Notes.Select(n =>
                                    n with
                                    {
                                        Pitch = n.Pitch.Plus(interval),
                                        Graces = n.Graces.Select(g => g.Plus(interval)).ToValueList(),
                                    }
                                )
                                .ToValueList(),
                            Chords = b.Chords.Select(c => c with { Chord = Move(c.Chord, interval) }).ToValueList(),
                        }
                    )
                    .ToValueList(),
            };

    private static ChordSymbol Move(ChordSymbol chord, Interval interval) =>
        chord.IsNoChord || interval.Fifths == 0 ? chord : Readable(chord.Plus(interval));

    // A chord on a double flat or sharp (and on B sharp) is named by its neighbour on the keyboard: D for E double flat.
    private static ChordSymbol Readable(ChordSymbol chord)
    {
        var turns =
            chord.Root.Fifths < FurthestFlat ? (FurthestFlat - chord.Root.Fifths + 11) / 12
            : chord.Root.Fifths > FurthestSharp ? -((chord.Root.Fifths - FurthestSharp + 11) / 12)
            : 0;
        return turns == 0
            ? chord
            : chord with
            {
                Root = chord.Root.PlusFifths(12 * turns),
                Bass = chord.Bass?.PlusFifths(12 * turns),
            };
    }

    private static double Off(int[] keys, int by)
    {
        var median = keys[keys.Length / 2] + by;
        var outside = keys.Count(k => k + by < Lowest || k + by > Highest);
        return Math.Abs(median - BestMedian)
            + 40.0 * outside / keys.Length
            + (keys[0] + by < 36 || keys[^1] + by > 103 ? 1000 : 0)
            + (keys[0] + by < FirstKey || keys[^1] + by > LastKey ? 10_000 : 0);
    }

    /// <summary>The shorter way from one tonic to another, up or down, spelled.</summary>
    public static Interval ToKey(Tone from, Tone to)
    {
        var up = Interval.Between(new Pitch(from, 4), new Pitch(to, 4));
        return up.Semitones > 6 ? new Interval(up.Steps - 7, up.Semitones - 12)
            : up.Semitones < -5 ? new Interval(up.Steps + 7, up.Semitones + 12)
            : up;
    }
}
