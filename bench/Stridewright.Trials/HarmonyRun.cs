using System.Globalization;
using Stridewright.Arranging;
using Stridewright.Music;

namespace Stridewright.Trials;

/// <summary>
/// The harmony found for tunes whose chords were taken away, held against the printed chords: share of beats with the
/// same root and with two common tones, per metre, beside the tonic throughout and the best triad a bar.
/// </summary>
internal static class HarmonyRun
{
    public static int Run(IReadOnlyList<CorpusTune> tunes, string[] args)
    {
        var chorded = tunes.Where(t => t.Tune.Bars.Count(b => b.Chords.Count > 0) > t.Tune.Bars.Count / 4).ToList();
        var tunesOnly = chorded.Select(t => t.Tune).ToList();
        if (args.Contains("--fit"))
        {
            return Fit([.. tunesOnly.Where((_, i) => i % 2 == 0)], [.. tunesOnly.Where((_, i) => i % 2 == 1)]);
        }
        foreach (
            var group in tunesOnly
                .GroupBy(t => Feels.MainMetre(t).ToString())
                .OrderBy(g => g.Key, StringComparer.Ordinal)
                .Append(tunesOnly.GroupBy(_ => "all").Single())
        )
        {
            Print(group.Key, [.. group]);
        }
        return 0;
    }

    // Prices of each half are tried on the other; those of the source are of all tunes.
    private static int Fit(List<Tune> one, List<Tune> two)
    {
        var (a, b) = HarmonyFit.Prices(one);
        var (c, d) = HarmonyFit.Prices(two);
        var crossed = Of(two, a, b).Plus(Of(one, c, d));
        var all = one.Concat(two).ToList();
        var (major, minor) = HarmonyFit.Prices(all);
        var own = Of(all, major, minor);
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"each half on the other {crossed.RootShare:F3} {crossed.SharedShare:F3}, all on all {own.RootShare:F3} {own.SharedShare:F3}"
            )
        );
        Console.WriteLine(HarmonyFit.Source("Major", major));
        Console.WriteLine(HarmonyFit.Source("Minor", minor));
        return 0;
    }

    private static HarmonyAgreement Of(List<Tune> part, HarmonyPrices major, HarmonyPrices minor) =>
        part.Select(t => HarmonyAgreement.Of(t, Harmonising.Apply(Bare(t), major, minor)))
            .Aggregate(HarmonyAgreement.None, (a, b) => a.Plus(b));

    private static void Print(string name, List<Tune> tunes)
    {
        var line = new List<string> { name.PadRight(5), $"{tunes.Count, 3} tunes" };
        foreach (
            var (label, way) in new (string, Func<Tune, Tune>)[]
            {
                ("found", Harmonising.Apply),
                ("tonic", Baselines.Tonic),
                ("triad", Baselines.BestTriad),
            }
        )
        {
            var sum = tunes
                .Select(t => HarmonyAgreement.Of(t, way(Bare(t))))
                .Aggregate(HarmonyAgreement.None, (a, b) => a.Plus(b));
            line.Add(string.Create(CultureInfo.InvariantCulture, $"{label} {sum.RootShare:F3} {sum.SharedShare:F3}"));
        }
        Console.WriteLine(string.Join("  ", line));
    }

    private static Tune Bare(Tune tune) =>
        tune with
        {
            Bars = tune.Bars.Select(b => b with { Chords = [] }).ToValueList(),
        };
}
