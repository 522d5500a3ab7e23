using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Stridewright.Arranging;
using Stridewright.Formats.MusicXml;
using Stridewright.Hands;

namespace Stridewright.Trials;

/// <summary>Sets every corpus tune at levels and spans, audits every score, and sums up.</summary>
internal static class CorpusRun
{
    private const int Batch = 40;
    private static readonly ConcurrentDictionary<string, (int Times, string Example)> Failed = new();
    private static readonly ConcurrentBag<double> ChorusesKept = [];
    private static readonly ConcurrentBag<(int Level, double Share)> ChorusesDiffer = [];
    private static readonly ConcurrentBag<(int Level, double Share, string What)> EitherDiffers = [];

    public static int Run(IReadOnlyList<CorpusTune> tunes, string[] args)
    {
        var shared = args[1];
        var folder = args[2];
        string Option(string name, string otherwise) =>
            Array.IndexOf(args, name) is >= 0 and var i ? args[i + 1] : otherwise;
        int[] levels = Numbers(Option("--levels", "1,2,3,4,5,6"));
        int[] spans = Numbers(Option("--spans", "185,205,230"));
        var every = int.Parse(Option("--every", "1"), CultureInfo.InvariantCulture);
        var feel = Option("--feel", "") is { Length: > 0 } word ? Enum.Parse<Feel>(word, true) : (Feel?)null;
        var form = Option("--form", "") is { Length: > 0 } line ? FormLine.Read(line, out _) : null;
        double? seconds = Option("--seconds", "") is { Length: > 0 } text
            ? double.Parse(text, CultureInfo.InvariantCulture)
            : null;
        var wanted = new Brief
        {
            Feel = feel,
            Form = form,
            Seconds = seconds,
            Harmony = new HarmonyWish { Richness = Enum.Parse<Richness>(Option("--harmony", "plain"), true) },
        };
        string[] play = [.. Option("--play", "").Split(',', StringSplitOptions.RemoveEmptyEntries)];
        // The melodies are the tunes as they stand: a form plays them otherwise.
        string? Key(CorpusTune tune) => form is null && seconds is null ? tune.Melody : null;
        Directory.CreateDirectory(folder);
        var jobs = (
            from t in tunes.Where((_, i) => i % every == 0)
            from level in levels
            from span in spans
            select (Tune: t, Level: level, Span: span)
        ).ToList();
        var set = new (string? Path, string? Refusal, int Notes, int Kept)[jobs.Count];
        var clock = Stopwatch.StartNew();
        Parallel.For(
            0,
            jobs.Count,
            new ParallelOptions { MaxDegreeOfParallelism = 2 },
            i => set[i] = Set(jobs[i], folder, play.Length == 0 ? wanted : Playing(wanted, play[i % play.Length]))
        );
        Console.WriteLine($"{jobs.Count} settings in {clock.Elapsed.TotalSeconds:0.0} s");
        foreach (var i in Enumerable.Range(0, jobs.Count).Where(i => set[i].Refusal is not null))
        {
            Console.WriteLine(
                $"REFUSED {jobs[i].Tune.Name} level {jobs[i].Level} span {jobs[i].Span}: {set[i].Refusal}"
            );
        }
        var notes = set.Where(s => s.Path is not null).Sum(s => s.Notes);
        Console.WriteLine(
            FormattableString.Invariant(
                $"refused {set.Count(s => s.Refusal is not null)} of {jobs.Count}; tune notes kept {(double)set.Sum(s => s.Kept) / Math.Max(1, notes):0.0000}"
            )
        );
        if (!ChorusesKept.IsEmpty)
        {
            Console.WriteLine(
                FormattableString.Invariant(
                    $"choruses: {ChorusesKept.Count}, of the tune kept at least {ChorusesKept.Min():0.000}, under 0.98 in {ChorusesKept.Count(k => k < 0.98)}"
                )
            );
            var differing = ChorusesDiffer.Select(d => (d.Level, Hand: "right hand", d.Share));
            differing = differing.Concat(EitherDiffers.Select(d => (d.Level, Hand: "either hand", d.Share)));
            foreach (var least in EitherDiffers.OrderBy(d => d.Share).Take(5))
            {
                Console.WriteLine(
                    FormattableString.Invariant(
                        $"  least in either hand: {least.Share:0.00}, level {least.Level}, {least.What}"
                    )
                );
            }
            foreach (var level in differing.GroupBy(d => (d.Hand, d.Level), d => d.Share).OrderBy(g => g.Key))
            {
                var shares = level.Order().ToList();
                var cut = new[] { 0, 0.05, 0.25, 0.5 }.Select(q => shares[(int)(q * shares.Count)]);
                Console.WriteLine(
                    FormattableString.Invariant(
                        $"  {level.Key.Hand}, level {level.Key.Level}: {shares.Count} come again, differing by {string.Join(" / ", cut.Select(c => c.ToString("0.00", CultureInfo.InvariantCulture)))} (least, 5, 25, 50 %)"
                    )
                );
            }
        }
        var groups = Enumerable
            .Range(0, jobs.Count)
            .Where(i => set[i].Path is not null)
            .GroupBy(i => (jobs[i].Span, HasKey: Key(jobs[i].Tune) is not null))
            .SelectMany(g => g.Chunk(Batch).Select(c => (g.Key.Span, Items: c.ToArray())))
            .ToList();
        var failures = 0;
        var advisories = new Dictionary<string, (int Pass, int All)>();
        var gate = new Lock();
        Parallel.ForEach(
            groups,
            new ParallelOptions { MaxDegreeOfParallelism = 2 },
            group =>
            {
                using var report = Audit(
                    shared,
                    group.Span,
                    [.. group.Items.Select(i => (set[i].Path!, Key(jobs[i].Tune)))]
                );
                lock (gate)
                {
                    foreach (var score in report.RootElement.GetProperty("scores").EnumerateArray())
                    {
                        failures += Report(score, advisories) ? 0 : 1;
                    }
                }
            }
        );
        foreach (var (what, (times, example)) in Failed.OrderBy(f => f.Key, StringComparer.Ordinal))
        {
            Console.WriteLine($"FAIL {what} in {times} settings, such as {example}");
        }
        Console.WriteLine($"audit: {failures} of {set.Count(s => s.Path is not null)} scores fail");
        foreach (var (name, (pass, all)) in advisories.OrderBy(a => a.Key, StringComparer.Ordinal))
        {
            Console.WriteLine(FormattableString.Invariant($"  {name}: {pass}/{all} = {(double)pass / all:0.000}"));
        }
        return failures == 0 ? 0 : 1;
    }

    private static Brief Playing(Brief brief, string word) =>
        Manners.Left.TryGetValue(word, out var left)
            ? brief with
            {
                LeftManners = [left],
            }
            : brief with
            {
                RightManners = [Manners.Right[word]],
            };

    private static (string?, string?, int, int) Set(
        (CorpusTune Tune, int Level, int Span) job,
        string folder,
        Brief wanted
    )
    {
        var brief = wanted with
        {
            LeftLevel = job.Level,
            RightLevel = job.Level,
            Hands = new PlayerHands { SpanMm = job.Span },
        };
        try
        {
            var result = Arranger.Arrange(job.Tune.Tune, brief);
            if (result.Arrangement is not { } arrangement)
            {
                return (null, result.Refusal!.ToString(), 0, 0);
            }
            var path = Path.Combine(folder, $"{job.Tune.Name}.l{job.Level}.s{job.Span}.musicxml");
            using var stream = File.Create(path);
            MusicXmlWriter.Write(arrangement.Score, stream);
            foreach (var chorus in arrangement.Choruses)
            {
                ChorusesKept.Add((double)chorus.Kept / Math.Max(1, chorus.Notes));
                if (chorus is { RightDiffers: { } inRight, LeftDiffers: { } inLeft })
                {
                    ChorusesDiffer.Add((job.Level, inRight));
                    EitherDiffers.Add(
                        (
                            job.Level,
                            Math.Max(inRight, inLeft),
                            $"{job.Tune.Name}, strain {chorus.Part} from bar {chorus.Bar}"
                        )
                    );
                }
            }
            return (path, null, arrangement.Tune.Notes, arrangement.Tune.Kept);
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            return (null, "EXCEPTION " + string.Join(" ", e.ToString().Split((char)10).Take(3)), 0, 0);
        }
    }

    private static JsonDocument Audit(string shared, int span, (string Score, string? Melody)[] items)
    {
        var start = new ProcessStartInfo("python3") { RedirectStandardOutput = true };
        start.ArgumentList.Add(Path.Combine(shared, "tools", "audit.py"));
        start.ArgumentList.Add("--json");
        start.ArgumentList.Add("--span");
        start.ArgumentList.Add(span.ToString(CultureInfo.InvariantCulture));
        foreach (var (score, _) in items)
        {
            start.ArgumentList.Add(score);
        }
        foreach (var melody in items.Select(i => i.Melody).OfType<string>())
        {
            start.ArgumentList.Add("--melody");
            start.ArgumentList.Add(melody);
        }
        using var process = Process.Start(start)!;
        var text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return JsonDocument.Parse(text);
    }

    private static bool Report(JsonElement score, Dictionary<string, (int Pass, int All)> advisories)
    {
        var name = Path.GetFileName(score.GetProperty("score").GetString());
        foreach (var check in score.GetProperty("checks").EnumerateObject())
        {
            var pass = check.Value.GetProperty("pass");
            if (pass.ValueKind == JsonValueKind.Null)
            {
                continue;
            }
            var required = check.Value.GetProperty("required").GetBoolean();
            if (!required)
            {
                var (passed, all) = advisories.GetValueOrDefault(check.Name);
                advisories[check.Name] = (passed + (pass.GetBoolean() ? 1 : 0), all + 1);
                if (check.Value.GetProperty("figures").TryGetProperty("failed", out var failed))
                {
                    foreach (var test in failed.EnumerateArray().Select(f => check.Name + " fails " + f.GetString()))
                    {
                        var (count, _) = advisories.GetValueOrDefault(test);
                        advisories[test] = (count + 1, 0);
                    }
                }
            }
            else if (!pass.GetBoolean())
            {
                var places = check.Value.GetProperty("places").EnumerateArray().Take(3).Select(p => p.GetString());
                var tune = name!.Split('.')[0];
                Failed.AddOrUpdate(
                    $"{tune} {check.Name}",
                    _ => (1, $"{name}: {string.Join(" | ", places)}"),
                    (_, f) => (f.Times + 1, f.Example)
                );
            }
        }
        foreach (var test in advisories.Keys.Where(k => k.Contains(" fails ", StringComparison.Ordinal)).ToList())
        {
            advisories[test] = (advisories[test].Pass, advisories[test].All + 1);
        }
        return score.GetProperty("pass").GetBoolean();
    }

    private static int[] Numbers(string list) =>
        [.. list.Split(',').Select(n => int.Parse(n, CultureInfo.InvariantCulture))];
}
