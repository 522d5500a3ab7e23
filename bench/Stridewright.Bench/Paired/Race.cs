using System.Diagnostics;
using System.Globalization;

namespace Stridewright.Bench.Paired;

/// <summary>
/// Times several pieces of work in turn, round after round, and compares them inside each round: on a machine that others
/// use as well, what disturbs one disturbs its neighbours, and the ratio stands. What <see cref="Run"/> times is processor
/// time, all threads and the collector included, which others take least of. Told are the median ratio to the first
/// with its quartiles over the rounds, and the median time.
/// </summary>
internal static class Race
{
    private static readonly TimeSpan Shortest = TimeSpan.FromMilliseconds(30);

    /// <summary>One piece of work, done on so many units (bars, say): times are taken per unit.</summary>
    public sealed record Runner(string Name, int Units, Func<object> Work);

    /// <summary>Times all runners by the processor.</summary>
    public static void Run(string title, string unit, int rounds, params Runner[] runners)
    {
        var repeats = runners.Select(Repeats).ToList();
        Tell(
            title,
            unit,
            rounds,
            runners.Select(r => r.Name),
            round => runners.Select((r, i) => Time(r, repeats[i])).ToList()
        );
    }

    /// <summary>As <see cref="Run"/>, with times (seconds) that <paramref name="race"/> takes itself.</summary>
    public static void Tell(
        string title,
        string unit,
        int rounds,
        IEnumerable<string> names,
        Func<int, IReadOnlyList<double>> race
    )
    {
        var times = Enumerable.Range(0, rounds).Select(race).ToList();
        Console.WriteLine();
        Console.WriteLine(Text($"{title} ({rounds} rounds)"));
        Console.WriteLine();
        Console.WriteLine(Text($"| | ratio | quartiles | time {unit} |"));
        Console.WriteLine("|---|---:|---:|---:|");
        foreach (var (i, name) in names.Index())
        {
            var ratios = times.Select(t => t[i] / t[0]).Order().ToList();
            var (low, middle, high) = (At(ratios, 0.25), At(ratios, 0.5), At(ratios, 0.75));
            var time = At(times.Select(t => t[i]).Order().ToList(), 0.5);
            Console.WriteLine(Text($"| {name} | {middle:0.00} | {low:0.00} to {high:0.00} | {Seconds(time)} |"));
        }
    }

    // Warms the work up and finds how often it must be done for its time to be measured well.
    private static int Repeats(Runner runner)
    {
        var clock = Stopwatch.StartNew();
        var count = 0;
        do
        {
            runner.Work();
            count++;
        } while (count < 8 && clock.Elapsed < TimeSpan.FromSeconds(2) || clock.Elapsed < Shortest);
        return Math.Max(1, (int)(Shortest / (clock.Elapsed / count)));
    }

    private static double Time(Runner runner, int repeats)
    {
        GC.Collect();
        GC.WaitForPendingFinalizers();
        var before = Environment.CpuUsage.TotalTime;
        for (var i = 0; i < repeats; i++)
        {
            GC.KeepAlive(runner.Work());
        }
        return (Environment.CpuUsage.TotalTime - before).TotalSeconds / repeats / runner.Units;
    }

    private static double At(List<double> sorted, double share) => sorted[(int)Math.Round(share * (sorted.Count - 1))];

    private static string Seconds(double seconds) =>
        seconds >= 1 ? Text($"{seconds:0.00} s")
        : seconds >= 1e-3 ? Text($"{seconds * 1e3:0.00} ms")
        : Text($"{seconds * 1e6:0.00} µs");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
