using Stridewright.Arranging;
using Stridewright.Music;

namespace Stridewright.Trials;

/// <summary>
/// Prices made sharper by the averaged structured perceptron: where the search finds another chord than the printed
/// one, what it used grows dearer and what it should have used cheaper.
/// </summary>
internal sealed class HarmonySharpening
{
    private const double ToneScale = 1.7,
        PlaceScale = 0.5;
    private readonly Sum _major;
    private readonly Sum _minor;
    private int _steps;

    private HarmonySharpening(HarmonyPrices major, HarmonyPrices minor) => (_major, _minor) = (new(major), new(minor));

    public static (HarmonyPrices Major, HarmonyPrices Minor) Run(
        HarmonyPrices major,
        HarmonyPrices minor,
        IReadOnlyList<Tune> tunes,
        int rounds,
        double rate
    )
    {
        var sharpening = new HarmonySharpening(Scaled(major), Scaled(minor));
        for (var round = 0; round < rounds; round++)
        {
            foreach (var tune in tunes)
            {
                sharpening.Learn(tune, rate);
            }
        }
        return (sharpening._major.Mean(sharpening._steps), sharpening._minor.Mean(sharpening._steps));
    }

    // The tune's tones are not independent, nor is the place in the strain of the way there.
    private static HarmonyPrices Scaled(HarmonyPrices p)
    {
        long[][] By(long[][] rows, double scale) => [.. rows.Select(r => r.Select(x => (long)(x * scale)).ToArray())];
        return p with { Tones = By(p.Tones, ToneScale), Places = By(p.Places, PlaceScale) };
    }

    private void Learn(Tune tune, double rate)
    {
        var spots = HarmonySpot.Of(tune);
        var printed = FlatTune.Of(tune);
        var found = FlatTune.Of(Harmonising.Apply(tune, _major.Now, _minor.Now));
        var gold = spots.Select(s => At(printed, s)).ToArray();
        var guess = spots.Select(s => At(found, s)).ToArray();
        for (var i = 0; i < spots.Count; i++)
        {
            var sum = spots[i].Key.IsMinor ? _minor : _major;
            var wrong = gold[i] >= 0 && gold[i] != guess[i];
            if (wrong)
            {
                sum.Own(spots[i], gold[i], -rate);
                sum.Own(spots[i], guess[i], rate);
            }
            if (
                i > 0
                && gold[i] >= 0
                && gold[i - 1] >= 0
                && spots[i].Key == spots[i - 1].Key
                && (wrong || gold[i - 1] != guess[i - 1])
            )
            {
                sum.Way(spots[i], gold[i - 1], gold[i], -rate);
                sum.Way(spots[i], guess[i - 1], guess[i], rate);
            }
        }
        _steps++;
        _major.Add();
        _minor.Add();
    }

    private int At(FlatTune tune, HarmonySpot spot)
    {
        var palette = (spot.Key.IsMinor ? _minor : _major).Now.Palette;
        var chord = tune.ChordAt(spot.Cut.Start);
        return chord is null or { IsNoChord: true } ? -1 : Array.IndexOf(palette, Degree.Of(chord, spot.Key));
    }

    private sealed class Sum
    {
        private readonly HarmonyPrices _start;
        private readonly double[][][] _now;
        private readonly double[][][] _all;

        public Sum(HarmonyPrices start)
        {
            (_start, Now) = (start, start);
            (_now, _all) = (Zeros(), Zeros());
        }

        public HarmonyPrices Now { get; private set; }

        public void Own(HarmonySpot spot, int chord, double by)
        {
            var degree = _start.Palette[chord];
            var root = (spot.Key.Tonic.PitchClass + degree.Above) % 12;
            for (var pc = 0; pc < 12; pc++)
            {
                _now[0][chord][(pc - root + 12) % 12] += by * spot.Weights[pc];
            }
            _now[1][spot.Place][chord] += by;
        }

        public void Way(HarmonySpot spot, int from, int to, double by)
        {
            _now[3][spot.Boundary][from == to ? 0 : 1] += by;
            if (from != to)
            {
                _now[2][from][to] += by;
            }
        }

        public void Add()
        {
            Now = Made(_now, 1);
            for (var k = 0; k < _now.Length; k++)
            {
                for (var r = 0; r < _now[k].Length; r++)
                {
                    for (var c = 0; c < _now[k][r].Length; c++)
                    {
                        _all[k][r][c] += _now[k][r][c];
                    }
                }
            }
        }

        public HarmonyPrices Mean(int steps) => Made(_all, 1.0 / steps);

        private HarmonyPrices Made(double[][][] more, double scale)
        {
            long[][] Plus(long[][] rows, double[][] by) =>
                [.. rows.Select((r, i) => r.Select((x, k) => x + (long)Math.Round(by[i][k] * scale)).ToArray())];
            return _start with
            {
                Tones = Plus(_start.Tones, more[0]),
                Places = Plus(_start.Places, more[1]),
                Changes = Plus(_start.Changes, more[2]),
                Rhythm = [.. Plus(Rhythm(), more[3]).Select(r => (r[0], r[1]))],
            };
        }

        private long[][] Rhythm() => [.. _start.Rhythm.Select(r => new[] { r.Stay, r.Change })];

        private double[][][] Zeros() =>
            [
                .. new[] { _start.Tones, _start.Places, _start.Changes, Rhythm() }.Select(t =>
                    t.Select(r => new double[r.Length]).ToArray()
                ),
            ];
    }
}
