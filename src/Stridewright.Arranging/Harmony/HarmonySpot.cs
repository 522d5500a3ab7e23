using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>What the search for a harmony sees of a stretch of the tune.</summary>
/// <param name="Key">Of its bar, as it is heard.</param>
/// <param name="Place">Where in its strain: strains open and close on what their phrases ask for.</param>
/// <param name="Weights">Of the twelve pitch classes: how long each sounds in it, in shares of its size, doubled for what
/// is struck on its first place.</param>
internal sealed record HarmonySpot(HarmonyCut Cut, Key Key, int Place, double[] Weights)
{
    /// <summary>Places in a strain: its first bar; the bars of its eights, from 1; the last bar but one; the last. In the
    /// second half of a bar, <see cref="SecondHalf"/> more.</summary>
    public const int Opening = 0,
        BeforeClose = 9,
        Close = 10,
        SecondHalf = 11,
        PlaceCount = 22;

    /// <summary>What lies before it: a bar line between whole-bar spots (0) or half-bar spots (1), or nothing (2).</summary>
    public required int Boundary { get; init; }

    public static List<HarmonySpot> Of(Tune tune)
    {
        var flat = FlatTune.Of(tune);
        var places = Places(tune);
        var keys = LocalKeys.Of(tune);
        var spots = new List<HarmonySpot>();
        var first = 0;
        foreach (var cut in HarmonyCut.Of(tune, flat))
        {
            var place = places[cut.Bar] + (cut.StartsBar ? 0 : SecondHalf);
            spots.Add(
                new HarmonySpot(cut, keys[cut.Bar], place, Sounding(flat, ref first, cut))
                {
                    Boundary =
                        !cut.StartsBar ? 2
                        : cut.Size < tune.Bars[cut.Bar].Metre.BarLength ? 1
                        : 0,
                }
            );
        }
        return spots;
    }

    // The tune's notes follow each other, so that one pass finds them all.
    private static double[] Sounding(FlatTune flat, ref int first, in HarmonyCut cut)
    {
        var weights = new double[12];
        while (first < flat.Notes.Length && flat.Notes[first].Start + flat.Notes[first].Length <= cut.Start)
        {
            first++;
        }
        for (var n = first; n < flat.Notes.Length && flat.Notes[n].Start < cut.End; n++)
        {
            var note = flat.Notes[n];
            var begin = ScoreTime.Max(note.Start, cut.Start);
            var share = (ScoreTime.Min(note.Start + note.Length, cut.End) - begin).Per(cut.Size);
            weights[note.Pitch.Tone.PitchClass] +=
                (double)share.Numerator / share.Denominator * (begin == cut.Start ? 2 : 1);
        }
        return weights;
    }

    // By bar: strains end before the next one, and where a repeat or an ending ends.
    private static int[] Places(Tune tune)
    {
        var places = new int[tune.Bars.Count];
        var start = 0;
        for (var b = 0; b <= tune.Bars.Count; b++)
        {
            if (b < tune.Bars.Count && (b == 0 || !BarSeams.StrainBefore(tune, b)))
            {
                continue;
            }
            Mark(tune, places, start, b);
            start = b;
        }
        return places;
    }

    private static void Mark(Tune tune, int[] places, int start, int end)
    {
        var number = 0;
        for (var b = start; b < end; b++)
        {
            if (tune.Bars[b].Length < tune.Bars[b].Metre.BarLength && b == start)
            {
                continue;
            }
            number++;
            places[b] = number == 1 ? Opening : (number - 1) % 8 + 1;
        }
        for (var b = start; b < end; b++)
        {
            if (b + 1 == end || BarSeams.TurnBefore(tune, b + 1))
            {
                // A short last bar belongs to the close before it.
                var close = b > start && tune.Bars[b].Length < tune.Bars[b].Metre.BarLength / 2 ? b - 1 : b;
                for (var k = close; k <= b; k++)
                {
                    places[k] = Close;
                }
                if (close > start && places[close - 1] != Close)
                {
                    places[close - 1] = BeforeClose;
                }
            }
        }
    }
}
