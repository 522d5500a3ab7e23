using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>A tune's harmony on half bars (duple metres) or bars.</summary>
internal sealed class HarmonyGrid
{
    public required GridSpot[] Spots { get; init; }

    public static HarmonyGrid Of(Tune tune)
    {
        var flat = FlatTune.Of(tune);
        var keys = LocalKeys.Of(tune);
        var spots = new List<GridSpot>();
        var next = 0;
        foreach (var cut in HarmonyCut.Of(tune, flat))
        {
            while (next < flat.Chords.Length && flat.Chords[next].At <= cut.Start)
            {
                next++;
            }
            var bar = tune.Bars[cut.Bar];
            var chord = next == 0 ? null : flat.Chords[next - 1].Chord;
            var changes = next < flat.Chords.Length && flat.Chords[next].At < cut.End;
            var whole = bar.Length == bar.Metre.BarLength;
            spots.Add(
                new GridSpot(cut, chord, keys[cut.Bar])
                {
                    IsOpen = whole && !changes && chord is { IsNoChord: false },
                    Seam =
                        cut.At.IsZero && (BarSeams.TurnBefore(tune, cut.Bar) || BarSeams.StrainBefore(tune, cut.Bar)),
                    Strong = OnBeats(flat, bar.Metre.Beat, cut.Start, cut.End),
                    Again = bar.Marks.RepeatEnd > 0,
                }
            );
        }
        return new HarmonyGrid { Spots = [.. spots] };
    }

    /// <summary>The tune's notes on the beats belong to the chords, and the places are free for them.</summary>
    public bool Suits(HarmonyIdea idea)
    {
        for (var i = 0; i < idea.Chords.Length; i++)
        {
            var spot = Spots[idea.Start + i];
            if (!spot.IsOpen || (!idea.Chords[i].Equals(spot.Chord) && (spot.Strong & ~Tones(idea.Chords[i])) != 0))
            {
                return false;
            }
        }
        return true;
    }

    // A bass foreign to its chord makes no note of the tune consonant.
    private static int Tones(ChordSymbol chord) => (chord with { Bass = null }).PitchClassSet;

    /// <summary>The tune with these chords, written where they begin; bars whose chords stay keep their symbols.</summary>
    public Tune Written(Tune tune, ChordSymbol?[] chords)
    {
        var bars = tune.Bars.ToArray();
        for (var s = 0; s < Spots.Length; )
        {
            var bar = Spots[s].Cut.Bar;
            var first = s;
            while (s < Spots.Length && Spots[s].Cut.Bar == bar)
            {
                s++;
            }
            // A bar changes with its own chords, and takes its symbol anew after a change in the bar before.
            var touched = Enumerable.Range(first, s - first).Any(i => chords[i] != Spots[i].Chord);
            var after = first > 0 && chords[first - 1] != Spots[first - 1].Chord;
            if (!touched && !after)
            {
                continue;
            }
            var placed = new List<PlacedChord>();
            for (var i = first; i < s; i++)
            {
                if (chords[i] is { } chord && (i == first || !chord.Equals(chords[i - 1])))
                {
                    placed.Add(new PlacedChord(Spots[i].Cut.At, chord));
                }
            }
            // Symbols inside a spot that is not touched stay.
            placed.AddRange(
                bars[bar].Chords.Where(c => Enumerable.Range(first, s - first).All(i => Spots[i].Cut.At != c.At))
            );
            bars[bar] = bars[bar] with { Chords = placed.OrderBy(c => c.At).ToValueList() };
        }
        return tune with { Bars = bars.ToValueList() };
    }

    // Pitch classes that sound at a beat.
    private static int OnBeats(FlatTune flat, ScoreTime beat, ScoreTime from, ScoreTime to)
    {
        var set = 0;
        var low = 0;
        var high = flat.Notes.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) =
                flat.Notes[middle].Start + flat.Notes[middle].Length <= from ? (middle + 1, high) : (low, middle);
        }
        for (var n = low; n < flat.Notes.Length && flat.Notes[n].Start < to; n++)
        {
            var note = flat.Notes[n];
            for (var at = from; at < to; at += beat)
            {
                if (note.Start <= at && at < note.Start + note.Length)
                {
                    set |= 1 << note.Pitch.Tone.PitchClass;
                }
            }
        }
        return set;
    }
}

/// <summary>Half a bar or a bar.</summary>
internal sealed record GridSpot(HarmonyCut Cut, ChordSymbol? Chord, Key Key)
{
    /// <summary>One chord fills it, in a full bar.</summary>
    public bool IsOpen { get; init; }

    /// <summary>The written order may not be the played one before it.</summary>
    public bool Seam { get; init; }

    /// <summary>Pitch classes of the tune on its beats, bit 0 = C.</summary>
    public int Strong { get; init; }

    /// <summary>A repeat ends with its bar.</summary>
    public bool Again { get; init; }
}
