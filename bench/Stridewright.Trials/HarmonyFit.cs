using System.Globalization;
using System.Text;
using Stridewright.Arranging;
using Stridewright.Music;

namespace Stridewright.Trials;

/// <summary>Counts how printed harmonies go, and makes prices of the counts.</summary>
internal static class HarmonyFit
{
    private const double LeastShare = 0.004;
    private const double Back = 6;

    /// <summary>Weight of all chords of a quality behind the tones of each.</summary>
    private const double ToneBack = 3000;
    private const int Rounds = 3;
    private const double Rate = 15;

    /// <summary>Prices counted on the tunes and then sharpened on them.</summary>
    public static (HarmonyPrices Major, HarmonyPrices Minor) Prices(IReadOnlyList<Tune> tunes) =>
        HarmonySharpening.Run(Of(tunes, false), Of(tunes, true), tunes, Rounds, Rate);

    private static HarmonyPrices Of(IReadOnlyList<Tune> tunes, bool minor)
    {
        var seen = new List<(HarmonySpot Spot, Degree? Chord, Degree? Before)>();
        foreach (var tune in tunes)
        {
            var flat = FlatTune.Of(tune);
            Degree? before = null;
            foreach (var spot in HarmonySpot.Of(tune))
            {
                var now = flat.ChordAt(spot.Cut.Start);
                Degree? chord = now is null or { IsNoChord: true } ? null : Degree.Of(now, spot.Key);
                if (spot.Key.IsMinor == minor)
                {
                    seen.Add((spot, chord, before));
                }
                before = chord;
            }
        }
        var all = seen.Where(s => s.Chord is not null).ToList();
        var palette = all.GroupBy(s => s.Chord!.Value)
            .Where(g => g.Count() >= LeastShare * all.Count)
            .OrderByDescending(g => g.Count())
            .Select(g => g.Key)
            .ToArray();
        all = all.Where(s => palette.Contains(s.Chord!.Value)).ToList();
        var share = palette.Select(p => (double)all.Count(s => s.Chord == p) / all.Count).ToArray();
        var tones = Enum.GetValues<Quality>()
            .Select(q =>
                Tones(
                    Enumerable.Repeat(0.5, 12),
                    all.Where(s => s.Chord!.Value.Quality == q).Select(s => (s.Spot, s.Chord!.Value))
                )
            )
            .ToArray();
        // Each chord's own tones, backed by those of all chords of its quality.
        var own = palette
            .Select(p =>
                Tones(
                    tones[(int)p.Quality].Select(c => ToneBack * Math.Exp(-c / 1000.0)),
                    all.Where(s => s.Chord == p).Select(s => (s.Spot, p))
                )
            )
            .ToArray();
        var pairs = all.Where(s => s.Before is { } b && palette.Contains(b)).ToList();
        var changes = palette
            .Select(
                (from, f) =>
                {
                    var after = pairs.Where(s => s.Before == from && s.Chord != from).ToList();
                    return palette
                        .Select(
                            (to, t) => Cost((after.Count(s => s.Chord == to) + Back * share[t]) / (after.Count + Back))
                        )
                        .ToArray();
                }
            )
            .ToArray();
        var places = Enumerable
            .Range(0, HarmonySpot.PlaceCount)
            .Select(place =>
            {
                var here = all.Where(s => s.Spot.Place == place).ToList();
                return palette
                    .Select(
                        (p, i) =>
                            Cost((here.Count(s => s.Chord == p) + Back * share[i]) / (here.Count + Back) / share[i])
                    )
                    .ToArray();
            })
            .ToArray();
        double Stay(int boundary) =>
            (pairs.Count(s => s.Spot.Boundary == boundary && s.Before == s.Chord) + 0.5)
            / (pairs.Count(s => s.Spot.Boundary == boundary) + 1);
        return new HarmonyPrices
        {
            Palette = palette,
            Tones = own,
            Changes = changes,
            Places = places,
            Rhythm = [.. Enumerable.Range(0, 3).Select(b => (Cost(Stay(b)), Cost(1 - Stay(b))))],
        };
    }

    // How often each tone above the root sounds, as prices.
    private static long[] Tones(IEnumerable<double> backing, IEnumerable<(HarmonySpot Spot, Degree Chord)> seen)
    {
        var counts = backing.ToArray();
        foreach (var (spot, chord) in seen)
        {
            var root = (spot.Key.Tonic.PitchClass + chord.Above) % 12;
            for (var pc = 0; pc < 12; pc++)
            {
                counts[(pc - root + 12) % 12] += spot.Weights[pc];
            }
        }
        return counts.Select(c => Cost(c / counts.Sum())).ToArray();
    }

    public static string Source(string name, HarmonyPrices prices)
    {
        var text = new StringBuilder();
        string Row(long[] row) =>
            "[" + string.Join(", ", row.Select(x => x.ToString(CultureInfo.InvariantCulture))) + "]";
        string Rows(long[][] rows) => "[" + string.Join(", ", rows.Select(Row)) + "]";
        text.AppendLine(CultureInfo.InvariantCulture, $"public static HarmonyPrices {name} {{ get; }} = new() {{");
        text.AppendLine(
            $"Palette = [{string.Join(", ", prices.Palette.Select(p => $"new({p.Above}, Quality.{p.Quality})"))}],"
        );
        text.AppendLine($"Tones = {Rows(prices.Tones)},");
        text.AppendLine($"Changes = {Rows(prices.Changes)},");
        text.AppendLine($"Places = {Rows(prices.Places)},");
        text.AppendLine(CultureInfo.InvariantCulture, $"Rhythm = [{string.Join(", ", prices.Rhythm)}], }};");
        return text.ToString();
    }

    private static long Cost(double share) => (long)Math.Round(-1000 * Math.Log(Math.Max(share, 1e-4)));
}
