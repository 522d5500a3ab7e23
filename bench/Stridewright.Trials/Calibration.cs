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
                First = Step(weights.First, Doubles(count.Tally.First), Wanted.First, rate),
                Second = Step(weights.Second, Doubles(count.Tally.Second), Wanted.Second, rate),
                TiedMid = Step(
                    weights.TiedMid,
                    (double)count.Tally.TiedMid / count.Tally.Bars,
                    Wanted.TiedMidPerBar,
                    rate
                ),
                TiedBar = Step(
                    weights.TiedBar,
                    (double)count.Tally.TiedBar / count.Tally.Bars,
                    Wanted.TiedBarPerBar,
                    rate
                ),
            };
        }
        weights = Points(fit, weights, ref seed);
        Console.WriteLine($"SyncopationByRaggedness = [{string.Join(", ", weights.SyncopationByRaggedness)}]");
        Console.WriteLine($"First = [{string.Join(", ", weights.First)}]");
        Console.WriteLine($"Second = [{string.Join(", ", weights.Second)}]");
        Console.WriteLine($"TiedMid = {weights.TiedMid}, TiedBar = {weights.TiedBar}");
        Measure(held, weights);
    }

    // At each raggedness the price at which the figures come at their measured rate times raggedness over one half.
    private static RagWeights Points(IReadOnlyList<Tune> fit, RagWeights weights, ref int seed)
    {
        var prices = weights.SyncopationByRaggedness.ToArray();
        prices[2] = 0;
        foreach (var quarter in (int[])[1, 3, 4])
        {
            var wanted = (Wanted.UntiedPerBar + Wanted.TiedMidPerBar + Wanted.TiedBarPerBar) * quarter / 2;
            var (low, high) = (-4000L, 4000L);
            while (high - low > 40)
            {
                prices[quarter] = (low + high) / 2;
                weights = weights with { SyncopationByRaggedness = prices.ToArray() };
                var count = new RhythmCount();
                foreach (var tune in fit)
                {
                    Count(count, tune, weights, ++seed, quarter / 4.0, 5);
                }
                var seen = (double)(count.Tally.Untied + count.Tally.TiedMid + count.Tally.TiedBar) / count.Tally.Bars;
                (low, high) = seen > wanted ? (prices[quarter], high) : (low, prices[quarter]);
            }
        }
        return weights;
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

    /// <summary>Fits the texture prices at level 6, with the rhythm prices of the source.</summary>
    public static void Textures(IReadOnlyList<Tune> fit, IReadOnlyList<Tune> held, int rounds)
    {
        var weights = TextureWeights.Standard;
        var seed = 5000;
        for (var round = 0; round < rounds; round++)
        {
            var count = new TextureTally();
            foreach (var tune in fit)
            {
                Count(count, tune, weights, ++seed, 6);
            }
            Console.WriteLine($"{round} {Told(count)}");
            var rate = round < rounds / 2 ? 500.0 : 250.0;
            weights = new TextureWeights
            {
                Offset = weights
                    .Offset.Select(
                        (p, i) =>
                            i == 0
                                ? 0
                                : Step(
                                    p,
                                    Share(count, i) / Share(count, 0),
                                    Wanted.Textures[i] / Wanted.Textures[0],
                                    rate
                                )
                    )
                    .ToArray(),
                Leave = weights
                    .Leave.Select((p, i) => Step(p, 1 - Persistence(count, i), 1 - Wanted.Persistence[i], rate))
                    .ToArray(),
            };
        }
        Console.WriteLine(
            $"Offset = [{string.Join(", ", weights.Offset)}], Leave = [{string.Join(", ", weights.Leave)}]"
        );
        foreach (var level in (int[])[4, 5, 6])
        {
            var count = new TextureTally();
            foreach (var tune in held)
            {
                Count(count, tune, weights, 1, level);
            }
            Console.WriteLine($"held back, level {level}: {Told(count)}");
        }
    }

    private static void Count(TextureTally count, Tune tune, TextureWeights weights, int seed, int level)
    {
        var brief = new Brief
        {
            Seed = seed,
            RightLevel = level,
            LeftLevel = level,
        };
        var prices = Prices.Standard with { Texture = weights };
        var lattice = new Setting(tune, brief, Feel.Classic, Metre.TwoFour, prices).Plan().Lattice;
        var ragged = Ragging.Solve(lattice, brief, prices.Ragging, CancellationToken.None);
        var stage = new Stage(lattice, brief, prices, 60.0 / 88 / 8);
        var homes = HomePositions.Find(lattice, stage.LeftReach, CancellationToken.None);
        var line = Filling.Solve(stage, ragged, homes, CancellationToken.None);
        var notes = Texturing.Solve(stage, line, homes, 1200, new HashSet<int>(), CancellationToken.None).Notes;
        count.Add([.. notes.Select(n => TextureTally.Kind(n.Below.Count + 1, n.Top.Midi - n.Lowest))]);
    }

    private static double Share(TextureTally count, int kind) => (count.Seen[kind] + 0.5) / (count.Seen.Sum() + 2.5);

    private static double Persistence(TextureTally count, int kind) =>
        (count.Kept[kind] + 0.5) / (count.Followed[kind] + 1.0);

    private static string Told(TextureTally count) =>
        string.Join(
            ", ",
            Wanted.Textures.Select(
                (_, k) =>
                    FormattableString.Invariant(
                        $"{TextureTally.Kinds[k]} {Share(count, k):0.000} stays {Persistence(count, k):0.00}"
                    )
            )
        );

    private static double[] Doubles(int[] counts) => [.. counts.Select(c => (double)c)];

    private static void Count(RhythmCount count, Tune tune, RagWeights weights, int seed, double raggedness, int level)
    {
        var brief = new Brief
        {
            Seed = seed,
            RightLevel = level,
            LeftLevel = level,
            Raggedness = raggedness,
        };
        var lattice = new Setting(tune, brief, Feel.Classic, Metre.TwoFour, Prices.Standard).Plan().Lattice;
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
