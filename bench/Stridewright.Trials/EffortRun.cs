using System.Globalization;
using Stridewright.Arranging;
using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Trials;

/// <summary>Whether effort rises from level to level of each tune, at the usual hands, and what each part does.</summary>
internal static class EffortRun
{
    // What is shorter tries a reader and is no tune.
    private const int LeastBars = 8;

    public static int Run(IReadOnlyList<CorpusTune> tunes)
    {
        var found = tunes
            .AsParallel()
            .AsOrdered()
            .WithDegreeOfParallelism(2)
            .Select(t => (t.Name, Efforts: Enumerable.Range(1, 6).Select(level => Of(t.Tune, level)).ToList()))
            .Where(t => t.Efforts.TrueForAll(e => e is not null))
            .Select(t => (t.Name, Efforts: t.Efforts.ConvertAll(e => e!)))
            .ToList();
        foreach (var (name, efforts) in found.Where(f => !Rises(f.Efforts)))
        {
            Console.WriteLine($"  {name}: {string.Join(" ", efforts.Select(e => Text(e.Overall)))}");
            for (var i = 1; i < 6; i++)
            {
                if (efforts[i].Overall <= efforts[i - 1].Overall)
                {
                    Console.WriteLine($"    {i} {Parts(efforts[i - 1])}\n    {i + 1} {Parts(efforts[i])}");
                }
            }
        }
        for (var level = 0; level < 6; level++)
        {
            var at = level;
            string Mean(Func<Effort, double> value) => Text(found.Average(f => value(f.Efforts[at])));
            string Parts(Func<Effort, HandEffort> hand) =>
                string.Join(
                    " ",
                    Enum.GetValues<EffortKind>()
                        .Select(k => $"{k} {Mean(e => hand(e).Parts.Sum(p => p.Kind == k ? p.Points : 0))}")
                );
            Console.WriteLine(
                $"level {level + 1}: {Mean(e => e.Overall)}; right {Parts(e => e.Right)}; left {Parts(e => e.Left)}"
            );
        }
        Sum($"{found.Count} tunes", found);
        var whole = found.FindAll(f => f.Efforts[0].Bars.Count >= LeastBars);
        Sum($"{whole.Count} of {LeastBars} bars or more", whole);
        return 0;
    }

    private static void Sum(string which, List<(string Name, List<Effort> Efforts)> found) =>
        Console.WriteLine(
            $"{which}; effort rises at every step in {found.Count(f => Rises(f.Efforts))}; steps that rise: {found.Sum(f => Enumerable.Range(1, 5).Count(i => f.Efforts[i].Overall > f.Efforts[i - 1].Overall))} of {5 * found.Count}"
        );

    private static string Parts(Effort effort) =>
        string.Join(
            "; ",
            new[] { effort.Right, effort.Left }.Select(h =>
                $"{Text(h.Value)}: {string.Join(" ", h.Parts.Select(p => $"{p.Kind} {Text(p.Points)}"))}"
            )
        );

    private static bool Rises(List<Effort> efforts) =>
        Enumerable.Range(1, 5).All(i => efforts[i].Overall > efforts[i - 1].Overall);

    private static Effort? Of(Tune tune, int level) =>
        Arranger.Arrange(tune, new Brief { LeftLevel = level, RightLevel = level }).Arrangement?.Verdict.Effort;

    private static string Text(double value) => value.ToString("0.0", CultureInfo.InvariantCulture);
}
