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
        ChordSymbol? now = null;
        var next = 0;
        for (var b = 0; b < tune.Bars.Count; b++)
        {
            var bar = tune.Bars[b];
            var size = bar.Metre.BarLength / HarmonySpot.Parts(bar.Metre);
            var whole = bar.Length == bar.Metre.BarLength;
            var end = flat.Starts[b] + bar.Length;
            for (var from = flat.Starts[b]; from < end; from = ScoreTime.Min(from + size, end))
            {
                var to = ScoreTime.Min(from + size, end);
                while (next < flat.Chords.Length && flat.Chords[next].At <= from)
                {
                    now = flat.Chords[next++].Chord;
                }
                var changes = next < flat.Chords.Length && flat.Chords[next].At < to;
                var first = from == flat.Starts[b];
                spots.Add(
                    new GridSpot(b, from, now, keys[b])
                    {
                        IsOpen = whole && !changes && now is { IsNoChord: false },
                        StartsBar = first,
                        Seam = first && (BarSeams.TurnBefore(tune, b) || BarSeams.StrainBefore(tune, b)),
                        StrainSeam = first && BarSeams.StrainBefore(tune, b),
                        Strong = OnBeats(flat, bar.Metre.Beat, from, to),
                        Again = bar.Marks.RepeatEnd > 0,
                    }
                );
                while (next < flat.Chords.Length && flat.Chords[next].At < to)
                {
                    now = flat.Chords[next++].Chord;
                }
            }
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
        var starts = FlatTune.Of(tune).Starts;
        var bars = tune.Bars.ToArray();
        for (var s = 0; s < Spots.Length; )
        {
            var bar = Spots[s].Bar;
            var first = s;
            while (s < Spots.Length && Spots[s].Bar == bar)
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
                    placed.Add(new PlacedChord(Spots[i].Start - starts[bar], chord));
                }
            }
            // Symbols inside a spot that is not touched stay.
            placed.AddRange(
                bars[bar]
                    .Chords.Where(c =>
                        Enumerable.Range(first, s - first).All(i => Spots[i].Start - starts[bar] != c.At)
                    )
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
internal sealed record GridSpot(int Bar, ScoreTime Start, ChordSymbol? Chord, Key Key)
{
    /// <summary>One chord fills it, in a full bar.</summary>
    public bool IsOpen { get; init; }

    public bool StartsBar { get; init; }

    /// <summary>The written order may not be the played one before it.</summary>
    public bool Seam { get; init; }

    public bool StrainSeam { get; init; }

    /// <summary>Pitch classes of the tune on its beats, bit 0 = C.</summary>
    public int Strong { get; init; }

    /// <summary>A repeat ends with its bar.</summary>
    public bool Again { get; init; }
}
