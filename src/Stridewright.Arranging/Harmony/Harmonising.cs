using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// Chords for a tune that has none: one a half bar (a bar in three-time), the cheapest sequence of the key's common
/// chords and secondary dominants that holds the tune's strong notes and moves as functional harmony does, with a cadence
/// at phrase ends (chord tones by length, strong places double; transitions: common practice).
/// </summary>
public static class Harmonising
{
    // Degree on the line of fifths above the tonic, kind and own price, for major and for minor keys.
    private static readonly (int Fifths, ChordKind Kind, long Price)[] InMajor =
    [
        (0, ChordKind.Major, 0),
        (1, ChordKind.Dominant, 100),
        (-1, ChordKind.Major, 200),
        (2, ChordKind.MinorSeventh, 500),
        (3, ChordKind.Minor, 700),
        (2, ChordKind.Dominant, 900),
        (3, ChordKind.Dominant, 1200),
        (4, ChordKind.Dominant, 1600),
        (4, ChordKind.Minor, 1300),
        (0, ChordKind.Dominant, 1400),
    ];

    private static readonly (int Fifths, ChordKind Kind, long Price)[] InMinor =
    [
        (0, ChordKind.Minor, 0),
        (1, ChordKind.Dominant, 100),
        (-1, ChordKind.Minor, 200),
        (-3, ChordKind.Major, 500),
        (-4, ChordKind.Major, 600),
        (-2, ChordKind.Dominant, 700),
        (2, ChordKind.HalfDiminished, 900),
        (0, ChordKind.Dominant, 1300),
        (2, ChordKind.Dominant, 1500),
    ];

    /// <summary>The tune with a harmony found for it; chords that it has are left out of account.</summary>
    public static Tune Apply(Tune tune)
    {
        ArgumentNullException.ThrowIfNull(tune);
        var flat = FlatTune.Of(tune);
        var chords = Solve(tune, flat);
        var next = 0;
        var bars = new List<TuneBar>();
        for (var i = 0; i < tune.Bars.Count; i++)
        {
            var end = flat.Starts[i] + tune.Bars[i].Length;
            var here = new List<PlacedChord>();
            for (; next < chords.Count && chords[next].At < end; next++)
            {
                here.Add(new PlacedChord(chords[next].At - flat.Starts[i], chords[next].Chord));
            }
            bars.Add(tune.Bars[i] with { Chords = here.ToValueList() });
        }
        return tune with { Bars = bars.ToValueList() };
    }

    private static List<(ScoreTime At, ChordSymbol Chord)> Solve(Tune tune, FlatTune flat)
    {
        var spots = Spots(tune, flat);
        var key = tune.Bars[0].Key;
        var palette = (key.IsMinor ? InMinor : InMajor)
            .Select(p => (Chord: new ChordSymbol(key.Tonic.PlusFifths(p.Fifths), p.Kind), p.Price))
            .ToArray();
        var weights = Weights(flat, spots);
        var path = new LayeredPath();
        for (var i = 0; i < spots.Count; i++)
        {
            path.OpenLayer(palette.Length);
            for (var to = 0; to < palette.Length; to++)
            {
                var own = palette[to].Price / 3 + Fit(weights[i], palette[to].Chord);
                own += i == 0 || i == spots.Count - 1 ? (to == 0 ? 0 : 2500) : 0;
                own += spots[i].EndsPhrase && to > 1 ? 700 : 0;
                if (i == 0)
                {
                    path.Start(to, own, to);
                    continue;
                }
                for (var from = 0; from < palette.Length; from++)
                {
                    path.Offer(
                        from,
                        to,
                        path.EarlierCosts[from] + own + Move(palette[from].Chord, palette[to].Chord, spots[i]),
                        to
                    );
                }
            }
        }
        var steps = path.Best()!.Value.Steps;
        var found = new List<(ScoreTime, ChordSymbol)>();
        for (var i = 0; i < spots.Count; i++)
        {
            var chord = palette[steps[i].Node].Chord;
            if (i == 0 || !found[^1].Item2.Equals(chord))
            {
                found.Add((spots[i].Start, chord));
            }
        }
        return found;
    }

    private static List<Spot> Spots(Tune tune, FlatTune flat)
    {
        var spots = new List<Spot>();
        var full = 0;
        for (var b = 0; b < tune.Bars.Count; b++)
        {
            var bar = tune.Bars[b];
            var start = flat.Starts[b];
            full += bar.Length < bar.Metre.BarLength ? 0 : 1;
            var halves = bar.Metre.BarLength >= ScoreTime.Whole || bar.Metre.IsCompound ? 2 : 1;
            var size = bar.Metre.BarLength / halves;
            for (var at = ScoreTime.Zero; at < bar.Length; at += size)
            {
                var end = ScoreTime.Min(at + size, bar.Length);
                spots.Add(new Spot(start + at, start + end, at.IsZero, full % 4 == 0 && end == bar.Length));
            }
        }
        return spots;
    }

    // Per spot, the tune's notes in it by their share of its length, doubled on its first note. The notes follow each
    // other, so that one pass finds them all.
    private static List<(int PitchClass, double Weight)>[] Weights(FlatTune flat, List<Spot> spots)
    {
        var weights = new List<(int, double)>[spots.Count];
        var first = 0;
        for (var i = 0; i < spots.Count; i++)
        {
            var spot = spots[i];
            weights[i] = [];
            while (first < flat.Notes.Length && flat.Notes[first].Start + flat.Notes[first].Length <= spot.Start)
            {
                first++;
            }
            for (var n = first; n < flat.Notes.Length && flat.Notes[n].Start < spot.End; n++)
            {
                var note = flat.Notes[n];
                var from = ScoreTime.Max(note.Start, spot.Start);
                var to = ScoreTime.Min(note.Start + note.Length, spot.End);
                var share = (to - from).Per(spot.End - spot.Start);
                var weight = (double)share.Numerator / share.Denominator * (from == spot.Start ? 2 : 1);
                weights[i].Add((note.Pitch.Tone.PitchClass, weight));
            }
        }
        return weights;
    }

    // What sounds outside the chord.
    private static long Fit(List<(int PitchClass, double Weight)> notes, ChordSymbol chord)
    {
        var set = chord.PitchClassSet;
        return (long)(3000 * notes.Sum(n => (set >> n.PitchClass & 1) == 1 ? 0 : n.Weight));
    }

    private static long Move(ChordSymbol from, ChordSymbol to, Spot spot)
    {
        if (from.Equals(to))
        {
            return spot.StartsBar ? 150 : 0;
        }
        var fifths = from.Root.Fifths - to.Root.Fifths;
        var rhythm = spot.StartsBar ? 0 : 500;
        // Dominants want to fall a fifth; down a fifth is good for any chord, a step up or down fair.
        var resolves =
            from.Kind != ChordKind.Dominant ? 0
            : fifths == 1 ? -300
            : 1200;
        return rhythm
            + resolves
            + (
                fifths == 1 ? 0
                : fifths is -1 or 2 or -2 or 3 ? 250
                : 600
            );
    }

    private sealed record Spot(ScoreTime Start, ScoreTime End, bool StartsBar, bool EndsPhrase);
}
