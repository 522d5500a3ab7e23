using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// Voicings of the off-beat chord: three notes around middle C (measured: lowest key 50–58, highest 59–66, three notes
/// in 87 % of chords). Which tones are left out follows common practice: the fifth of a seventh chord first; the root
/// only over a root bass; classic rags reduce added notes to triad and seventh, stride keeps the sixth and the ninth.
/// </summary>
internal static class ChordShapes
{
    private const int MiddleLow = 55,
        MiddleHigh = 63;
    private const long PerSemitoneOff = 70;

    /// <summary>Highest key of a chord.</summary>
    public const int HighestKey = 66;

    /// <summary>Lowest key of a chord at a place: lower where it brings in a harmony and its root must lie lowest.</summary>
    public static int LowestKey(LeftSlot slot) => slot.Changes ? 45 : 50;

    /// <summary>How far a chord lies from the middle of the register, in semitones of its outer notes.</summary>
    public static int Off(int low, int high) => Math.Abs(low - MiddleLow) + Math.Abs(high - MiddleHigh);

    /// <summary>Voicings with their prices, whatever else sounds.</summary>
    /// <param name="lowest">Lowest key allowed for the chord's lowest note.</param>
    /// <param name="highest">Highest key allowed for its highest note.</param>
    /// <param name="rootLowest">The chord's bass tone must lie lowest, as at a change on a weak place.</param>
    public static IEnumerable<LeftShape> Of(
        ChordSymbol chord,
        Feel feel,
        Reach reach,
        int lowest,
        int highest,
        bool rootLowest
    )
    {
        foreach (var (tones, price) in Selections(chord, feel))
        {
            foreach (var pitches in Close(tones, lowest, highest))
            {
                if (rootLowest && pitches[0].Tone.PitchClass != chord.Lowest.PitchClass)
                {
                    continue;
                }
                var (low, high) = (pitches[0].Midi, pitches[^1].Midi);
                var stretch = reach.Of(low, high);
                if (stretch == Stretch.Out || pitches.Length > reach.Fingers)
                {
                    continue;
                }
                var total = price + PerSemitoneOff * Off(low, high) + (pitches.Length == 2 ? 700 : 0) + Mud(pitches);
                yield return new LeftShape(LeftKind.Chord, pitches.ToValueList(), stretch, total, false);
            }
        }
    }

    // Thirds below C3 are muddy (arranger's rule of thumb).
    private static long Mud(Pitch[] pitches)
    {
        var price = 0L;
        for (var i = 1; i < pitches.Length; i++)
        {
            var gap = pitches[i].Midi - pitches[i - 1].Midi;
            price += gap is 3 or 4 && pitches[i - 1].Midi < 48 ? 3000 : 0;
            price += gap <= 1 ? 900 : 0;
        }
        return price;
    }

    /// <summary>Which tones to strike, with the price of what is left out.</summary>
    private static List<(Tone[] Tones, long Price)> Selections(ChordSymbol chord, Feel feel)
    {
        var found = new List<(Tone[], long)>();
        Tone? Of(params int[] steps)
        {
            foreach (var interval in chord.Intervals)
            {
                if (steps.Contains(interval.Steps))
                {
                    return chord.Root.Plus(interval);
                }
            }
            return null;
        }
        var root = chord.Root;
        var third = Of(2) ?? Of(3, 1);
        var fifth = Of(4);
        var seventh = Of(6);
        var sixth = Of(5, 12);
        var ninth = Of(8);
        var isMajorSeventh = chord.Intervals.Any(i => i is { Steps: 6, Semitones: 11 });
        void Add(long price, params Tone?[] tones)
        {
            if (tones.All(t => t is not null))
            {
                found.Add((tones.Select(t => t!.Value).Distinct().ToArray(), price));
            }
        }
        if (feel == Feel.Stride && sixth is not null)
        {
            Add(0, third, fifth, sixth);
            Add(200, root, third, sixth);
        }
        if (seventh is not null && !isMajorSeventh)
        {
            Add(0, root, third, seventh);
            Add(feel == Feel.Stride ? 300 : 450, third, fifth, seventh);
            if (feel == Feel.Stride)
            {
                Add(250, third, seventh, ninth);
                Add(250, third, seventh, sixth);
            }
            if (chord.Kind == ChordKind.DiminishedSeventh)
            {
                Add(200, root, third, fifth);
                Add(200, root, fifth, seventh);
            }
            Add(800, root, third, fifth, seventh);
            Add(100, third, seventh);
        }
        else
        {
            Add(0, root, third, fifth);
            if (feel == Feel.Stride && isMajorSeventh)
            {
                Add(300, root, third, seventh);
            }
        }
        // Two notes where the right hand leaves no room for three.
        Add(200, third, fifth);
        Add(200, root, third);
        Add(600, root, fifth);
        if (found.Count == 0)
        {
            var tones = chord.Tones.Take(3).ToArray();
            found.Add((tones, 0));
        }
        if (chord.Bass is { } bass && !found.Any(f => f.Item1.Contains(bass)))
        {
            // A slash bass foreign to the shapes: offer one with it, for changes on weak places.
            found.Add(([bass, .. found[0].Item1.Take(2)], 1500));
        }
        return found;
    }

    // Every close position of the tones within the window, lowest first.
    private static IEnumerable<Pitch[]> Close(Tone[] tones, int lowest, int highest)
    {
        for (var start = 0; start < tones.Length; start++)
        {
            for (var key = lowest; key <= highest; key++)
            {
                if (key % 12 != tones[start].PitchClass)
                {
                    continue;
                }
                var others = tones
                    .Where((_, i) => i != start)
                    .Select(t =>
                        Pitch.At(key + ((t.PitchClass - key % 12 + 12) % 12 is var up && up == 0 ? 12 : up), t)
                    );
                Pitch[] pitches = [Pitch.At(key, tones[start]), .. others.OrderBy(p => p.Midi)];
                if (pitches[^1].Midi <= highest)
                {
                    yield return pitches;
                }
            }
        }
    }
}
