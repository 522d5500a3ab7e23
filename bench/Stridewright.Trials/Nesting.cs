using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Stridewright.Arranging;
using Stridewright.Formats.MusicXml;
using Stridewright.Hands;

namespace Stridewright.Trials;

/// <summary>
/// How far the levels of each tune nest, by the outside audit: what share of a level's right-hand onsets and off-beat
/// chords stands again in the next, and whether effort rises from level to level.
/// </summary>
internal static class Nesting
{
    private const double Wanted = 0.9;

    public static int Run(IReadOnlyList<CorpusTune> tunes, string[] args)
    {
        var (shared, folder) = (args[1], args[2]);
        int Whole(string name, int otherwise) =>
            Array.IndexOf(args, name) is >= 0 and var i
                ? int.Parse(args[i + 1], CultureInfo.InvariantCulture)
                : otherwise;
        var span = Whole("--span", 205);
        var every = Whole("--every", 1);
        Directory.CreateDirectory(folder);
        var found = new ConcurrentBag<Nest>();
        Parallel.ForEach(
            tunes.Where((_, i) => i % every == 0),
            new ParallelOptions { MaxDegreeOfParallelism = 2 },
            tune =>
            {
                if (Of(tune, shared, folder, span) is { } nest)
                {
                    found.Add(nest);
                }
                else
                {
                    Console.WriteLine($"REFUSED {tune.Name}");
                }
            }
        );
        var nests = found.OrderBy(n => n.Tune, StringComparer.Ordinal).ToList();
        for (var step = 0; step < 5; step++)
        {
            var right = nests.Select(n => n.Right[step]).Order().ToList();
            var left = nests.Select(n => n.Left[step]).Order().ToList();
            Console.WriteLine(
                FormattableString.Invariant(
                    $"{step + 1} in {step + 2}: right {Text(right)}; left {Text(left)}; both {nests.Count(n => n.Nests(step))} of {nests.Count}; effort rises in {nests.Count(n => n.Efforts[step + 1].Overall > n.Efforts[step].Overall)}, left {nests.Count(n => n.Efforts[step + 1].Left.Value > n.Efforts[step].Left.Value)}, right {nests.Count(n => n.Efforts[step + 1].Right.Value > n.Efforts[step].Right.Value)}"
                )
            );
        }
        foreach (var nest in nests.Where(n => !n.All))
        {
            Console.WriteLine(
                FormattableString.Invariant(
                    $"  {nest.Tune}: right {string.Join(" ", nest.Right.Select(x => x.ToString("0.00", CultureInfo.InvariantCulture)))}; left {string.Join(" ", nest.Left.Select(x => x.ToString("0.00", CultureInfo.InvariantCulture)))}"
                )
            );
        }
        foreach (var nest in nests.Where(n => !n.Rises))
        {
            Console.WriteLine(
                $"  effort {nest.Tune}: {string.Join(" ", nest.Efforts.Select(e => e.Overall.ToString("0.0", CultureInfo.InvariantCulture)))}"
            );
        }
        for (var level = 0; level < 6; level++)
        {
            string Mean(Func<Effort, HandEffort> hand, Func<HandEffort, double> part) =>
                nests.Average(n => part(hand(n.Efforts[level]))).ToString("0.00", CultureInfo.InvariantCulture);
            string Parts(Func<Effort, HandEffort> hand) =>
                $"leap {Mean(hand, h => h.LeapBitsPerSecond)} reach {Mean(hand, h => h.MeanStretch * h.StretchedShare)} strokes {Mean(hand, h => h.StrokesPerSecond)} keys {Mean(hand, h => h.KeysPerStroke)}";
            Console.WriteLine($"level {level + 1}: left {Parts(e => e.Left)}; right {Parts(e => e.Right)}");
        }
        Console.WriteLine(
            FormattableString.Invariant(
                $"{nests.Count(n => n.All)} of {nests.Count} tunes nest at every step ({(double)nests.Count(n => n.All) / nests.Count:0.000}); effort rises throughout in {nests.Count(n => n.Rises)}"
            )
        );
        return 0;
    }

    private static string Text(List<double> sorted) =>
        FormattableString.Invariant($"median {sorted[sorted.Count / 2]:0.00}, tenth {sorted[sorted.Count / 10]:0.00}");

    private static Nest? Of(CorpusTune tune, string shared, string folder, int span)
    {
        var efforts = new List<Effort>();
        var paths = new List<string>();
        for (var level = 1; level <= 6; level++)
        {
            var brief = new Brief
            {
                LeftLevel = level,
                RightLevel = level,
                Hands = new PlayerHands { SpanMm = span },
            };
            if (Arranger.Arrange(tune.Tune, brief).Arrangement is not { } arrangement)
            {
                return null;
            }
            var path = Path.Combine(folder, $"{tune.Name}.l{level}.s{span}.musicxml");
            using var stream = File.Create(path);
            MusicXmlWriter.Write(arrangement.Score, stream);
            paths.Add(path);
            efforts.Add(arrangement.Verdict.Effort);
        }
        var start = new ProcessStartInfo("python3") { RedirectStandardOutput = true };
        string[] words =
        [
            Path.Combine(shared, "tools", "audit.py"),
            "--json",
            "--span",
            span.ToString(CultureInfo.InvariantCulture),
            .. paths.Skip(1),
            .. paths.SkipLast(1).SelectMany(p => new[] { "--nested", p }),
        ];
        foreach (var word in words)
        {
            start.ArgumentList.Add(word);
        }
        using var process = Process.Start(start)!;
        using var report = JsonDocument.Parse(process.StandardOutput.ReadToEnd());
        process.WaitForExit();
        var shares = report
            .RootElement.GetProperty("scores")
            .EnumerateArray()
            .Select(s => s.GetProperty("checks").GetProperty("nested").GetProperty("figures"))
            .ToList();
        double Share(JsonElement figures, string name) =>
            figures.GetProperty(name) is { ValueKind: JsonValueKind.Number } share ? share.GetDouble() : 1;
        return new Nest(
            tune.Name,
            [.. shares.Select(s => Share(s, "right_recur_share"))],
            [.. shares.Select(s => Share(s, "left_recur_share"))],
            [.. efforts]
        );
    }

    private sealed record Nest(string Tune, double[] Right, double[] Left, Effort[] Efforts)
    {
        public bool All => Enumerable.Range(0, 5).All(Nests);

        public bool Rises => Enumerable.Range(1, 5).All(i => Efforts[i].Overall > Efforts[i - 1].Overall);

        public bool Nests(int step) => Right[step] >= Wanted && Left[step] >= Wanted;
    }
}
