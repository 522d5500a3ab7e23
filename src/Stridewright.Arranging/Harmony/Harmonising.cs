using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// Chords for a tune that has none: the cheapest sequence over its spots, where a chord is paid for the tune's tones
/// that sound against it, for its place in the strain and for the way into it.
/// </summary>
public static class Harmonising
{
    private const long NoClose = 2500,
        Unusual = 2500;

    /// <summary>The tune with a harmony found for it; chords that it has are left out of account.</summary>
    public static Tune Apply(Tune tune)
    {
        ArgumentNullException.ThrowIfNull(tune);
        return Apply(tune, HarmonyTables.Major, HarmonyTables.Minor);
    }

    internal static Tune Apply(Tune tune, HarmonyPrices major, HarmonyPrices minor)
    {
        var spots = HarmonySpot.Of(tune);
        var path = new LayeredPath();
        for (var i = 0; i < spots.Count; i++)
        {
            var prices = Prices(spots[i]);
            var own = prices.Palette.Select((_, c) => Own(prices, spots[i], c)).ToArray();
            if (i == spots.Count - 1)
            {
                Close(prices, own);
            }
            path.OpenLayer(own.Length);
            var before =
                i == 0 ? [-1] : Seen(Prices(spots[i - 1]).Palette, spots[i - 1].Key, prices.Palette, spots[i].Key);
            for (var to = 0; to < own.Length; to++)
            {
                for (var from = 0; from < before.Length; from++)
                {
                    if (i == 0)
                    {
                        path.Start(to, own[to], to);
                        continue;
                    }
                    var way = Way(prices, before[from], to, spots[i]);
                    path.Offer(from, to, path.EarlierCosts[from] + own[to] + way, to);
                }
            }
        }
        if (path.Best() is not { } best)
        {
            return tune;
        }
        return Placed(tune, spots, [.. best.Steps.Select((s, i) => Prices(spots[i]).Palette[s.Node].In(spots[i].Key))]);

        HarmonyPrices Prices(HarmonySpot spot) => spot.Key.IsMinor ? minor : major;
    }

    // A tune closes on its tonic, unless its last notes will not have it (common practice).
    private static void Close(HarmonyPrices prices, long[] own)
    {
        for (var c = 0; c < own.Length; c++)
        {
            own[c] += prices.Palette[c].Above == 0 ? 0 : NoClose;
        }
    }

    // Where the chords of one key stand among those of the next; −1: it has no such chord.
    private static int[] Seen(Degree[] palette, Key key, Degree[] next, Key nextKey) =>
        key == nextKey
            ? [.. Enumerable.Range(0, palette.Length)]
            : [.. palette.Select(d => Array.IndexOf(next, Degree.Of(d.In(key), nextKey)))];

    // What the chord costs by itself: tones of the tune by how often they sound over such a chord, and its place.
    private static long Own(HarmonyPrices prices, HarmonySpot spot, int chord)
    {
        var degree = prices.Palette[chord];
        var tones = prices.Tones[chord];
        var root = (spot.Key.Tonic.PitchClass + degree.Above) % 12;
        var sum = 0.0;
        for (var pc = 0; pc < 12; pc++)
        {
            sum += spot.Weights[pc] * tones[(pc - root + 12) % 12];
        }
        return (long)sum + prices.Places[spot.Place][chord];
    }

    private static long Way(HarmonyPrices prices, int from, int to, HarmonySpot spot)
    {
        var (stay, change) = prices.Rhythm[spot.Boundary];
        return from == to ? stay
            : from < 0 ? change + Unusual
            : change + prices.Changes[from][to];
    }

    // A chord is written where it begins.
    private static Tune Placed(Tune tune, List<HarmonySpot> spots, ChordSymbol[] chords)
    {
        var bars = new List<TuneBar>();
        var next = 0;
        ChordSymbol? last = null;
        for (var b = 0; b < tune.Bars.Count; b++)
        {
            var here = new List<PlacedChord>();
            for (; next < spots.Count && spots[next].Cut.Bar == b; next++)
            {
                if (!chords[next].Equals(last))
                {
                    here.Add(new PlacedChord(spots[next].Cut.At, chords[next]));
                    last = chords[next];
                }
            }
            bars.Add(tune.Bars[b] with { Chords = here.ToValueList() });
        }
        return tune with { Bars = bars.ToValueList() };
    }
}
