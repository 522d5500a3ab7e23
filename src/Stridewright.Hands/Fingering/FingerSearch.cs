namespace Stridewright.Hands;

/// <summary>
/// The cheapest fingering of one hand's grasps: exact layered dynamic programming. A state is the fingering of a grasp and,
/// where the grasp before struck one key, the finger of that key: rules over three keys look no further back. Time is
/// linear in the number of grasps.
/// </summary>
internal sealed class FingerSearch(LineCosts line)
{
    /// <summary>No finger, and the five: what is remembered of the grasp before.</summary>
    private const int Memories = 6;

    private readonly GraspCosts _costs = new(line);

    // Room that every layer uses again.
    private readonly int[] _strands = new int[2 * Memories * Memories];
    private readonly int[] _triples = new int[Memories * Memories * Memories];
    private int[] _best = [];
    private int[] _memory = [];

    /// <summary>A fingering of every grasp, and its cost in hundredths of a point.</summary>
    public (byte[][] Fingers, int Cost) Solve(List<Grasp> grasps, CancellationToken cancellation)
    {
        if (grasps.Count == 0)
        {
            return ([], 0);
        }
        // values[m * count + c]: least cost up to fingering c with memory m of the grasp before; origins say which
        // fingering and memory of the layer before it came from.
        var origins = new int[grasps.Count][];
        var values = new int[grasps[0].Fingerings.Length];
        for (var c = 0; c < grasps[0].Fingerings.Length; c++)
        {
            values[c] = ShapeCost(grasps, 0, c);
        }
        for (var i = 1; i < grasps.Count; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            (values, origins[i]) = Next(grasps, i, values);
        }
        return Trace(grasps, values, origins);
    }

    /// <summary>Adds what one grasp costs in a solved row: its shape, the way to it, and rules over three keys.</summary>
    public void Explain(List<Grasp> grasps, byte[][] fingers, int at, ref CostSum sum)
    {
        var grasp = grasps[at];
        _costs.AddShape(ref sum, Before(grasps, at), grasp, fingers[at], After(grasps, at));
        if (at == 0)
        {
            return;
        }
        var before = grasps[at - 1];
        _costs.AddKept(ref sum, before, fingers[at - 1], grasp, fingers[at]);
        if (!grasp.IsFree)
        {
            foreach (var inner in (bool[])[true, false])
            {
                var (from, to) = (FingerOf(before, fingers[at - 1], inner), FingerOf(grasp, fingers[at], inner));
                _costs.AddStrand(ref sum, before, from, grasp, to, inner);
            }
        }
        if (HasTriple(grasps, at))
        {
            AddTriple(
                ref sum,
                grasps,
                at,
                FingerOf(grasps[at - 2], fingers[at - 2], true),
                FingerOf(before, fingers[at - 1], true),
                FingerOf(grasp, fingers[at], true)
            );
        }
    }

    private (int[] Values, int[] Origins) Next(List<Grasp> grasps, int at, int[] values)
    {
        var (from, to) = (grasps[at - 1], grasps[at]);
        var (fromCount, toCount) = (from.Fingerings.Length, to.Fingerings.Length);
        var hasTriple = HasTriple(grasps, at);
        FindMemories(grasps, at, values, hasTriple);
        if (!to.IsFree)
        {
            FindStrands(from, to);
        }
        var hasKept = GraspCosts.HasKept(from, to);
        var size = (from.IsSingle ? Memories : 1) * toCount;
        var (next, origins) = (new int[size], new int[size]);
        Array.Fill(next, int.MaxValue);
        for (var b = 0; b < toCount; b++)
        {
            var fingers = to.Fingerings[b];
            var shape = ShapeCost(grasps, at, b);
            var (inner, outer) = (FingerOf(to, fingers, true), FingerOf(to, fingers, false));
            for (var a = 0; a < fromCount; a++)
            {
                var before = from.Fingerings[a];
                var fromInner = FingerOf(from, before, true);
                var path = a * Memories + (hasTriple ? inner : 0);
                var cost = _best[path] + shape;
                if (!to.IsFree)
                {
                    cost += _strands[fromInner * Memories + inner];
                    cost += _strands[(Memories + FingerOf(from, before, false)) * Memories + outer];
                }
                if (hasKept)
                {
                    var kept = new CostSum();
                    _costs.AddKept(ref kept, from, before, to, fingers);
                    cost += kept.Total;
                }
                var state = (from.IsSingle ? fromInner : 0) * toCount + b;
                if (cost < next[state])
                {
                    next[state] = cost;
                    origins[state] = _memory[path] * fromCount + a;
                }
            }
        }
        return (next, origins);
    }

    /// <summary>For each earlier fingering and each finger that may follow (0 where that does not matter) the best memory
    /// of what came before it.</summary>
    private void FindMemories(List<Grasp> grasps, int at, int[] values, bool hasTriple)
    {
        var from = grasps[at - 1];
        var count = from.Fingerings.Length;
        if (_best.Length < count * Memories)
        {
            (_best, _memory) = (new int[count * Memories], new int[count * Memories]);
        }
        if (hasTriple)
        {
            FindTriples(grasps, at);
        }
        for (var a = 0; a < count; a++)
        {
            var finger = FingerOf(from, from.Fingerings[a], true);
            for (var follows = 0; follows < (hasTriple ? Memories : 1); follows++)
            {
                var (least, which) = (int.MaxValue, 0);
                for (var m = 0; m * count < values.Length; m++)
                {
                    var value = values[m * count + a];
                    if (value < int.MaxValue && hasTriple)
                    {
                        value += _triples[(m * Memories + finger) * Memories + follows];
                    }
                    (least, which) = value < least ? (value, m) : (least, which);
                }
                (_best[a * Memories + follows], _memory[a * Memories + follows]) = (least, which);
            }
        }
    }

    private static (byte[][], int) Trace(List<Grasp> grasps, int[] values, int[][] origins)
    {
        var fingers = new byte[grasps.Count][];
        var state = 0;
        for (var s = 1; s < values.Length; s++)
        {
            state = values[s] < values[state] ? s : state;
        }
        var cost = values[state];
        for (var i = grasps.Count - 1; i >= 0; i--)
        {
            fingers[i] = grasps[i].Fingerings[state % grasps[i].Fingerings.Length];
            state = i > 0 ? origins[i][state] : 0;
        }
        return (fingers, cost);
    }

    private int ShapeCost(List<Grasp> grasps, int at, int fingering)
    {
        var sum = new CostSum();
        _costs.AddShape(ref sum, Before(grasps, at), grasps[at], grasps[at].Fingerings[fingering], After(grasps, at));
        return sum.Total;
    }

    /// <summary>By finger before and finger now, first the thumb's strand.</summary>
    private void FindStrands(Grasp from, Grasp to)
    {
        for (var i = 0; i < _strands.Length; i++)
        {
            var sum = new CostSum();
            _costs.AddStrand(ref sum, from, i / Memories % Memories, to, i % Memories, inner: i < Memories * Memories);
            _strands[i] = sum.Total;
        }
    }

    /// <summary>By the fingers of three single keys running.</summary>
    private void FindTriples(List<Grasp> grasps, int at)
    {
        for (var i = 0; i < _triples.Length; i++)
        {
            var sum = new CostSum();
            AddTriple(ref sum, grasps, at, i / (Memories * Memories), i / Memories % Memories, i % Memories);
            _triples[i] = sum.Total;
        }
    }

    private void AddTriple(ref CostSum sum, List<Grasp> grasps, int at, int first, int second, int third)
    {
        if (first > 0 && second > 0 && third > 0)
        {
            var (a, b, c) = (grasps[at - 2].InnerKey, grasps[at - 1].InnerKey, grasps[at].InnerKey);
            line.AddTriple(ref sum, a, first, b, second, c, third);
        }
    }

    /// <summary>Three single keys running, without a leap or rest between them.</summary>
    private static bool HasTriple(List<Grasp> grasps, int at) =>
        at >= 2
        && !grasps[at].IsFree
        && !grasps[at - 1].IsFree
        && grasps[at].IsSingle
        && grasps[at - 1].IsSingle
        && grasps[at - 2].IsSingle;

    private static Grasp? Before(List<Grasp> grasps, int at) => at > 0 ? grasps[at - 1] : null;

    private static Grasp? After(List<Grasp> grasps, int at) => at + 1 < grasps.Count ? grasps[at + 1] : null;

    private static int FingerOf(Grasp grasp, byte[] fingers, bool inner) => fingers[inner ? grasp.Inner : grasp.Outer];
}
