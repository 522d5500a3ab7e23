namespace Stridewright.Hands;

/// <summary>
/// A run by step through an octave that begins or ends on a black key is fingered as if it came from the octave before and
/// went on to the next, as handbooks finger scales: two imagined keys stand at that end, with the fingers of the cheapest
/// fingering that returns every octave. On a white key the run begins or ends with the hand's outer finger, and needs none.
/// </summary>
internal static class RunContext
{
    /// <summary>Steps in an octave of a scale.</summary>
    public const int Steps = 7;

    /// <summary>Semitones in an octave.</summary>
    public const int Octave = 12;

    private const int WidestStep = 3;

    /// <summary>The grasps with the imagined ones among them.</summary>
    public static List<Grasp> Extended(List<Grasp> grasps, LineCosts line)
    {
        var extended = new List<Grasp>(grasps.Count);
        for (var i = 0; i < grasps.Count; i++)
        {
            if (grasps[i].IsFree && RunFrom(grasps, i) is { } up)
            {
                var cycle = Cycle(up, line);
                var rise = up[Steps] - up[0];
                extended.Add(Imagined(grasps[i], up[5] - rise, cycle[5], isFree: true));
                extended.Add(Imagined(grasps[i], up[6] - rise, cycle[6], isFree: false));
                extended.Add(grasps[i] with { IsFree = false });
            }
            else
            {
                extended.Add(grasps[i]);
            }
            var isLast = i + 1 == grasps.Count || grasps[i + 1].IsFree;
            if (isLast && i >= Steps && RunFrom(grasps, i - Steps, atEnd: true) is { } run)
            {
                var cycle = Cycle(run, line);
                var rise = run[Steps] - run[0];
                extended.Add(Imagined(grasps[i], run[1] + rise, cycle[1], isFree: false));
                extended.Add(Imagined(grasps[i], run[2] + rise, cycle[2], isFree: false));
            }
        }
        return extended;
    }

    /// <summary>True when a single key goes by step from the single key before it.</summary>
    /// <param name="direction">Upwards 1, downwards -1.</param>
    public static bool IsStep(List<Grasp> grasps, int at, int direction)
    {
        var (before, grasp) = (grasps[at - 1], grasps[at]);
        return before.Keys.Length == 1
            && grasp.Keys.Length == 1
            && !grasp.IsFree
            && (grasp.InnerKey - before.InnerKey) * direction is >= 1 and <= WidestStep;
    }

    /// <summary>Eight keys by step through an octave, the first (or last) of them black, or null.</summary>
    private static int[]? RunFrom(List<Grasp> grasps, int at, bool atEnd = false)
    {
        if (at + Steps >= grasps.Count || !Keyboard.IsBlack(grasps[at + (atEnd ? Steps : 0)].InnerKey))
        {
            return null;
        }
        int[] keys = [.. grasps.GetRange(at, Steps + 1).Select(g => g.InnerKey)];
        var direction = Math.Sign(keys[1] - keys[0]);
        var goesByStep = Enumerable.Range(at + 1, Steps).All(i => IsStep(grasps, i, direction));
        return goesByStep && Math.Abs(keys[Steps] - keys[0]) == Octave ? keys : null;
    }

    private static Grasp Imagined(Grasp near, int key, int finger, bool isFree) =>
        new Grasp
        {
            Onset = near.Onset,
            Keys = [key],
            IsStruck = [true],
            Fingerings =
            [
                [(byte)finger],
            ],
            IsFree = isFree,
            IsImagined = true,
        }.Settled();

    /// <summary>Fingers of the seven keys of one octave, in the cheapest fingering that returns every octave.</summary>
    private static int[] Cycle(int[] keys, LineCosts line)
    {
        var rise = keys[Steps] - keys[0];
        int KeyAt(int i) =>
            keys[(i + Steps) % Steps]
            + (
                i < 0 ? -rise
                : i >= Steps ? rise
                : 0
            );
        var best = (Cost: int.MaxValue, Fingers: new int[Steps]);
        for (var first = 1; first <= 5; first++)
        {
            for (var second = 1; second <= 5; second++)
            {
                var found = From(first, second);
                best = found.Cost < best.Cost ? found : best;
            }
        }
        return best.Fingers;

        (int Cost, int[] Fingers) From(int first, int second)
        {
            var start = new CostSum();
            line.AddPair(ref start, keys[0], first, keys[1], second, line.Table.Hop, 1);
            var ways = new Dictionary<(int, int), (int Cost, int[] Fingers)>
            {
                [(first, second)] = (start.Total, [first, second]),
            };
            for (var i = 2; i <= Steps + 1; i++)
            {
                var next = new Dictionary<(int, int), (int Cost, int[] Fingers)>();
                foreach (var ((a, b), way) in ways)
                {
                    for (var c = 1; c <= 5; c++)
                    {
                        if ((i == Steps && c != first) || (i == Steps + 1 && c != second))
                        {
                            continue;
                        }
                        var sum = new CostSum();
                        line.AddWeak(ref sum, c, isSingle: true);
                        line.AddColour(ref sum, KeyAt(i - 1), KeyAt(i), c, KeyAt(i + 1), 1);
                        if (i <= Steps)
                        {
                            line.AddPair(ref sum, KeyAt(i - 1), b, KeyAt(i), c, line.Table.Hop, 1);
                        }
                        line.AddTriple(ref sum, KeyAt(i - 2), a, KeyAt(i - 1), b, KeyAt(i), c);
                        var cost = way.Cost + sum.Total;
                        if (!next.TryGetValue((b, c), out var known) || cost < known.Cost)
                        {
                            next[(b, c)] = (cost, [.. way.Fingers, c]);
                        }
                    }
                }
                ways = next;
            }
            var closed = ways.Values.MinBy(w => w.Cost);
            return (closed.Cost, closed.Fingers[..Steps]);
        }
    }
}
