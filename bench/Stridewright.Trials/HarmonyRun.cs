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
        var chorded = tunes
            .Select(t => t.Tune)
            .Where(t => t.Bars.Count(b => b.Chords.Count > 0) > t.Bars.Count / 4)
            .ToList();
        if (args.Contains("--fit"))
        {
            return Fit([.. chorded.Where((_, i) => i % 2 == 0)], [.. chorded.Where((_, i) => i % 2 == 1)]);
        }
        foreach (
            var group in chorded
                .GroupBy(t => Feels.MainMetre(t).ToString())
                .OrderBy(g => g.Key, StringComparer.Ordinal)
                .Append(chorded.GroupBy(_ => "all").Single())
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
        Of(part, t => Harmonising.Apply(t, major, minor));

    // No way looks at the chords that are there.
    private static HarmonyAgreement Of(List<Tune> part, Func<Tune, Tune> way) =>
        part.Select(t => HarmonyAgreement.Of(t, way(t))).Aggregate(HarmonyAgreement.None, (a, b) => a.Plus(b));

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
            var sum = Of(tunes, way);
            line.Add(string.Create(CultureInfo.InvariantCulture, $"{label} {sum.RootShare:F3} {sum.SharedShare:F3}"));
        }
        Console.WriteLine(string.Join("  ", line));
    }
}
