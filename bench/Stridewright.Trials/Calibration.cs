using Stridewright.Arranging;
using Stridewright.Music;

namespace Stridewright.Trials;

/// <summary>
/// Fits the pattern prices of the ragging: price += rate × log(observed ÷ wanted) per pattern and half, likewise for the
/// tied figures, with fresh seeds each round, on the calibration tunes only; the others are held back to measure.
/// </summary>
internal static class Calibration
{
    public static void Run(IReadOnlyList<Tune> fit, IReadOnlyList<Tune> held, int rounds)
    {
        var weights = RagWeights.Standard;
        var seed = 1000;
        for (var round = 0; round < rounds; round++)
        {
            var count = new RhythmCount();
            foreach (var tune in fit)
            {
                for (var k = 0; k < 3; k++)
                {
                    Count(count, tune, weights, ++seed, 0.5, 5);
                }
            }
            Console.WriteLine($"{round} {count}");
            var rate = round < rounds / 2 ? 600.0 : 250.0;
            weights = weights with
            {
                First = Step(weights.First, count.First, Reference.First, rate),
                Second = Step(weights.Second, count.Second, Reference.Second, rate),
                TiedMid = Step(weights.TiedMid, (double)count.TiedMid / count.Bars, Reference.TiedMidPerBar, rate),
                TiedBar = Step(weights.TiedBar, (double)count.TiedBar / count.Bars, Reference.TiedBarPerBar, rate),
            };
        }
        Console.WriteLine($"First = [{string.Join(", ", weights.First)}]");
        Console.WriteLine($"Second = [{string.Join(", ", weights.Second)}]");
        Console.WriteLine($"TiedMid = {weights.TiedMid}, TiedBar = {weights.TiedBar}");
        Measure(held, weights);
    }

    public static void Measure(IReadOnlyList<Tune> held, RagWeights weights)
    {
        foreach (var raggedness in (double[])[0.25, 0.5, 0.75, 1])
        {
            var count = new RhythmCount();
            foreach (var tune in held)
            {
                Count(count, tune, weights, 1, raggedness, 5);
            }
            Console.WriteLine(FormattableString.Invariant($"held back, raggedness {raggedness}: {count}"));
        }
        foreach (var level in (int[])[1, 2, 3, 4])
        {
            var count = new RhythmCount();
            foreach (var tune in held)
            {
                Count(count, tune, weights, 1, 0.5, level);
            }
            Console.WriteLine($"held back, level {level}: {count}");
        }
    }

    private static void Count(RhythmCount count, Tune tune, RagWeights weights, int seed, double raggedness, int level)
    {
        var brief = new Brief
        {
            Seed = seed,
            RightLevel = level,
            LeftLevel = level,
            Raggedness = raggedness,
        };
        var (_, lattice) = new Setting(tune, brief, Feel.Classic, Metre.TwoFour, weights).Plan();
        count.Add(lattice, Ragging.Solve(lattice, brief, weights, CancellationToken.None));
    }

    private static long[] Step(long[] prices, double[] seen, double[] wanted, double rate)
    {
        var (sum, total) = (seen.Sum(), wanted.Sum());
        return prices
            .Select(
                (p, i) =>
                    Math.Clamp(
                        Step(p, (seen[i] + 0.5) / (sum + 8), (wanted[i] + 0.05) / (total + 0.8), rate),
                        -2000L,
                        9000L
                    )
            )
            .ToArray();
    }

    private static long Step(long price, double seen, double wanted, double rate) =>
        Math.Clamp(price + (long)(rate * Math.Log((seen + 1e-4) / (wanted + 1e-4))), -6000, 9000);
}
