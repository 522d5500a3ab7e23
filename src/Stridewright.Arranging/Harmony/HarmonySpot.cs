using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>A stretch of the tune that has one harmony: half a bar in duple metres, else a bar.</summary>
/// <param name="Start">On the tune's own time line.</param>
/// <param name="Key">Of its bar, as it is heard.</param>
/// <param name="StartsBar">The first of its bar.</param>
/// <param name="Place">Where in its strain: strains open and close on what their phrases ask for.</param>
/// <param name="Weights">Of the twelve pitch classes: how long each sounds in it, in shares of the spot, doubled for what is struck
/// on its first place.</param>
internal sealed record HarmonySpot(ScoreTime Start, Key Key, bool StartsBar, int Place, double[] Weights)
{
    /// <summary>Places in a strain: its first bar; the bars of its eights, from 1; the last bar but one; the last. In the
    /// second half of a bar, <see cref="SecondHalf"/> more.</summary>
    public const int Opening = 0,
        BeforeClose = 9,
        Close = 10,
        SecondHalf = 11,
        PlaceCount = 22;

    /// <summary>The spot shares its bar with another.</summary>
    public bool HalvesBar { get; init; }

    /// <summary>What lies before it: a bar line between whole-bar spots (0) or half-bar spots (1), or nothing (2).</summary>
    public int Boundary =>
        !StartsBar ? 2
        : HalvesBar ? 1
        : 0;

    public static List<HarmonySpot> Of(Tune tune)
    {
        var flat = FlatTune.Of(tune);
        var places = Places(tune);
        var keys = LocalKeys.Of(tune);
        var spots = new List<HarmonySpot>();
        var first = 0;
        for (var b = 0; b < tune.Bars.Count; b++)
        {
            var bar = tune.Bars[b];
            var start = flat.Starts[b];
            var lead = BarSeams.Lead(tune, b);
            var size = bar.Metre.BarLength / Parts(bar.Metre);
            for (var at = ScoreTime.Zero; at < lead + bar.Length; at += size)
            {
                var from = start + ScoreTime.Max(at - lead, ScoreTime.Zero);
                var to = start + ScoreTime.Min(at + size - lead, bar.Length);
                if (to > from)
                {
                    var weights = Sounding(flat, ref first, from, to, size);
                    spots.Add(
                        new HarmonySpot(from, keys[b], at.IsZero, places[b] + (at.IsZero ? 0 : SecondHalf), weights)
                        {
                            HalvesBar = size < bar.Metre.BarLength,
                        }
                    );
                }
            }
        }
        return spots;
    }

    /// <summary>How many harmonies a bar has room for.</summary>
    public static int Parts(Metre metre) =>
        metre.BarLength.Per(metre.Beat) is { Denominator: 1, Numerator: 2 or 4 } ? 2 : 1;

    // The tune's notes follow each other, so that one pass finds them all.
    private static double[] Sounding(FlatTune flat, ref int first, ScoreTime from, ScoreTime to, ScoreTime size)
    {
        var weights = new double[12];
        while (first < flat.Notes.Length && flat.Notes[first].Start + flat.Notes[first].Length <= from)
        {
            first++;
        }
        for (var n = first; n < flat.Notes.Length && flat.Notes[n].Start < to; n++)
        {
            var note = flat.Notes[n];
            var begin = ScoreTime.Max(note.Start, from);
            var share = (ScoreTime.Min(note.Start + note.Length, to) - begin).Per(size);
            weights[note.Pitch.Tone.PitchClass] +=
                (double)share.Numerator / share.Denominator * (begin == from ? 2 : 1);
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
