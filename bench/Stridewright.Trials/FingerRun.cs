using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using Stridewright.Arranging;
using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Trials;

/// <summary>Sets corpus tunes at levels and spans and fingers every setting for the hands it was made for.</summary>
internal static class FingerRun
{
    public static int Run(IReadOnlyList<CorpusTune> tunes, string[] args)
    {
        string Option(string name, string otherwise) =>
            Array.IndexOf(args, name) is >= 0 and var i ? args[i + 1] : otherwise;
        int[] Numbers(string list) => [.. list.Split(',').Select(n => int.Parse(n, CultureInfo.InvariantCulture))];
        var every = int.Parse(Option("--every", "1"), CultureInfo.InvariantCulture);
        var jobs = (
            from t in tunes.Where((_, i) => i % every == 0)
            from level in Numbers(Option("--levels", "1,2,3,4,5,6"))
            from span in Numbers(Option("--spans", "185,205,230"))
            select (Tune: t, Level: level, Span: span)
        ).ToList();
        var told = new ConcurrentBag<string>();
        var (settings, refused, notes, crushed, without, beyond, crossed) = (0, 0, 0, 0, 0, 0, 0);
        var milliseconds = 0L;
        Parallel.ForEach(
            jobs,
            new ParallelOptions { MaxDegreeOfParallelism = 2 },
            job =>
            {
                var hands = new PlayerHands { SpanMm = job.Span };
                var brief = new Brief
                {
                    LeftLevel = job.Level,
                    RightLevel = job.Level,
                    Hands = hands,
                };
                if (Arranger.Arrange(job.Tune.Tune, brief).Arrangement is not { } arrangement)
                {
                    Interlocked.Increment(ref refused);
                    return;
                }
                var clock = Stopwatch.StartNew();
                var made = Fingerer.Finger(arrangement.Score, hands);
                Interlocked.Add(ref milliseconds, clock.ElapsedMilliseconds);
                Interlocked.Increment(ref settings);
                var struck = made.Onsets.SelectMany(o => o.Keys).Where(k => !k.IsHeld).ToList();
                Interlocked.Add(ref notes, struck.Count);
                Interlocked.Add(ref without, struck.Count(k => k.Finger is null));
                var leaning = Crushed(made.Score).ToList();
                Interlocked.Add(ref crushed, leaning.Count);
                Interlocked.Add(ref without, leaning.Count(n => n.Finger is null));
                Interlocked.Add(ref beyond, made.Onsets.Count(o => o.IsBeyondReach));
                Interlocked.Add(ref crossed, made.Onsets.Count(IsCrossed));
                foreach (var remark in made.Remarks)
                {
                    told.Add($"{job.Tune.Name} level {job.Level} span {job.Span}: {remark}");
                }
            }
        );
        Console.WriteLine(
            $"{settings} settings fingered, {refused} not set; {notes} notes and {crushed} crushed ones, {without} without a finger"
        );
        Console.WriteLine($"{beyond} chords beyond the hand, {crossed} crossed; {told.Count} remarks");
        Console.WriteLine($"{milliseconds} ms in all for the fingering");
        foreach (var line in told.Order(StringComparer.Ordinal).Take(20))
        {
            Console.WriteLine("  " + line);
        }
        return without + beyond + crossed == 0 ? 0 : 1;
    }

    private static IEnumerable<ScoreNote> Crushed(Score score) =>
        score.Bars.SelectMany(b => b.Voices.SelectMany(v => v.Events.SelectMany(e => e.Graces)));

    private static bool IsCrossed(FingeredOnset onset)
    {
        var fingers = onset.Keys.Where(k => !k.IsHeld).Select(k => k.Finger ?? 0).ToList();
        var rising = onset.Hand == Hand.Right ? fingers : Enumerable.Reverse(fingers).ToList();
        return rising.Zip(rising.Skip(1)).Any(f => f.First > f.Second);
    }
}
