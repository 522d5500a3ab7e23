using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// The key of music that is chords alone. Their tones, weighted by how long they last, are held against the profiles of
/// <see cref="KeyFinding"/>; and, as common practice has it, the last chord and then the first speak for themselves as
/// tonics. A dominant there speaks for the chord it leads to, unless the music begins and ends on its root, as a blues
/// does.
/// </summary>
public static class ChordKey
{
    /// <summary>Worth of being the last or the first chord, in correlation: a relative key is about 0.1 off.</summary>
    private const double Last = 0.35,
        First = 0.2;

    private const int FewestFlats = -7,
        MostSharps = 7;

    /// <summary>
    /// The tune in the key that its chords are in. Where that key would need more than seven sharps or flats, the chords
    /// are spelled anew. A tune without chords stays as it is.
    /// </summary>
    public static Tune Settle(Tune tune)
    {
        ArgumentNullException.ThrowIfNull(tune);
        var flat = FlatTune.Of(tune);
        var chords = flat.Chords.Where(c => !c.Chord.IsNoChord).Select(c => c.Chord).ToList();
        if (chords.Count == 0)
        {
            return tune;
        }
        var key = Of(flat, tune, chords);
        var settled = tune with { Bars = tune.Bars.Select(b => b with { Key = key }).ToValueList() };
        var written = key.Signature;
        return written < FewestFlats ? Register.Move(settled, new Interval(-1, 0))
            : written > MostSharps ? Register.Move(settled, new Interval(1, 0))
            : settled;
    }

    private static Key Of(FlatTune flat, Tune tune, List<ChordSymbol> chords)
    {
        var histogram = Histogram(flat, flat.Starts[^1] + tune.Bars[^1].Length);
        var best = (Score: double.MinValue, Tonic: 0, IsMinor: false);
        var closed = chords[0].Root.PitchClass == chords[^1].Root.PitchClass;
        foreach (var (tonic, isMinor, correlation) in KeyFinding.Correlations(histogram))
        {
            var score =
                (double.IsNaN(correlation) ? 0 : correlation)
                + Speaks(chords[^1], tonic, isMinor, closed, Last)
                + Speaks(chords[0], tonic, isMinor, closed, First);
            best = score > best.Score ? (score, tonic, isMinor) : best;
        }
        var mode = best.IsMinor ? Mode.Minor : Mode.Major;
        return new Key(Spelled(best.Tonic, mode, chords), mode);
    }

    private static double Speaks(ChordSymbol chord, int tonic, bool isMinor, bool closed, double worth)
    {
        var root = chord.Root.PitchClass;
        var leadsOn = !closed && chord.Intervals.Any(i => i is { Steps: 6, Semitones: 10 });
        return leadsOn
            ? (!IsMinor(chord) && root == (tonic + 7) % 12 ? worth : 0)
            : (root == tonic && isMinor == IsMinor(chord) ? worth : 0);
    }

    private static bool IsMinor(ChordSymbol chord) => chord.Intervals.Any(i => i is { Steps: 2, Semitones: 3 });

    // As the last chord on the tonic is spelled; where there is none, nearest to where the chords lie.
    private static Tone Spelled(int tonic, Mode mode, List<ChordSymbol> chords)
    {
        if (chords.FindLast(c => c.Root.PitchClass == tonic) is { } spelled)
        {
            return spelled.Root;
        }
        var middle = chords.Average(c => c.Root.Fifths);
        return Enumerable
            .Range(-12, 25)
            .Select(fifths => new Tone(fifths))
            .Where(tone => tone.PitchClass == tonic && Math.Abs(new Key(tone, mode).Signature) <= MostSharps)
            .MinBy(tone => Math.Abs(new Key(tone, mode).Signature - middle));
    }

    private static double[] Histogram(FlatTune flat, ScoreTime end)
    {
        var histogram = new double[12];
        for (var i = 0; i < flat.Chords.Length; i++)
        {
            var (at, chord) = flat.Chords[i];
            var until = i + 1 < flat.Chords.Length ? flat.Chords[i + 1].At : end;
            var length = (until - at).ToQuarters();
            foreach (var tone in chord.Tones)
            {
                histogram[tone.PitchClass] += length * (tone == chord.Root ? 2 : 1);
            }
        }
        return histogram;
    }
}
