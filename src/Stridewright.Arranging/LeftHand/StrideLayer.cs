using System.Numerics;

namespace Stridewright.Arranging;

/// <summary>
/// The arcs into one layer of the left hand's search. A node is a bass with a chord; a new shape replaces one of the two
/// and keeps the other, so that the cheapest shape replaced is found for each pair of a kept and a new one, a row of
/// pairs at a time.
/// </summary>
internal static class StrideLayer
{
    /// <summary>Offers the best arc into every node of the path's open layer.</summary>
    /// <param name="isBass">The new shape is a bass and replaces the bass; else a chord.</param>
    /// <param name="before">Costs of the nodes before, all reached: in rows of one bass, a column a chord.</param>
    /// <param name="lines">Prices by replaced and by new shape, in rows of one replaced.</param>
    /// <param name="moves">Prices by kept and by new shape, in rows of one kept; null: none.</param>
    /// <param name="kept">How many shapes are kept.</param>
    public static void Offer(
        LayeredPath path,
        bool isBass,
        ReadOnlySpan<long> before,
        ReadOnlySpan<long> lines,
        long[]? moves,
        LeftShape[] shapes,
        int kept
    )
    {
        var replaced = before.Length / kept;
        var best = new long[shapes.Length * kept];
        var from = new long[best.Length];
        Array.Fill(best, LayeredPath.Never);
        var (rows, row) = isBass ? (shapes.Length, kept) : (kept, shapes.Length);
        for (var o = 0; o < rows; o++)
        {
            var bestRow = best.AsSpan(o * row, row);
            var fromRow = from.AsSpan(o * row, row);
            for (var r = 0; r < replaced; r++)
            {
                var costs = (isBass ? before : lines).Slice(r * row, row);
                var plus = isBass ? lines[r * rows + o] : before[o * replaced + r];
                Lower(bestRow, fromRow, costs, plus, r);
            }
        }
        for (var to = 0; to < best.Length; to++)
        {
            var (s, k) = isBass ? (to / row, to % row) : (to % row, to / row);
            var node = isBass ? from[to] * kept + k : k * replaced + from[to];
            var price = shapes[s].Price + (moves is null ? 0 : moves[k * shapes.Length + s]);
            path.Take((int)node, to, best[to] + price, s);
        }
        if (path.Witness is { } witness)
        {
            Tell(witness, isBass, before.Length, lines, moves, shapes, kept);
        }
    }

    // Every arc by itself, as it is defined.
    private static void Tell(
        IPathWitness witness,
        bool isBass,
        int before,
        ReadOnlySpan<long> lines,
        long[]? moves,
        LeftShape[] shapes,
        int kept
    )
    {
        for (var from = 0; from < before; from++)
        {
            var (k, r) = isBass ? (from % kept, from / kept) : (from / (before / kept), from % (before / kept));
            for (var s = 0; s < shapes.Length; s++)
            {
                var to = isBass ? s * kept + k : k * shapes.Length + s;
                var move = moves is null ? 0 : moves[k * shapes.Length + s];
                witness.Arc(from, to, lines[r * shapes.Length + s] + move + shapes[s].Price, s);
            }
        }
    }

    // Lowers each of best to the cost beside it and plus where that is less, and
    // notes the index there: one row of arcs at once, several to an instruction. Among equals the earlier
    // stands, as in LayeredPath.
    private static void Lower(Span<long> best, Span<long> from, ReadOnlySpan<long> costs, long plus, int index)
    {
        var (lanes, i) = (Vector<long>.Count, 0);
        var (add, here) = (new Vector<long>(plus), new Vector<long>(index));
        for (; i <= costs.Length - lanes; i += lanes)
        {
            var total = new Vector<long>(costs[i..]) + add;
            var held = new Vector<long>(best[i..]);
            var less = Vector.LessThan(total, held);
            Vector.ConditionalSelect(less, total, held).CopyTo(best[i..]);
            Vector.ConditionalSelect(less, here, new Vector<long>(from[i..])).CopyTo(from[i..]);
        }
        for (; i < costs.Length; i++)
        {
            if (costs[i] + plus < best[i])
            {
                (best[i], from[i]) = (costs[i] + plus, index);
            }
        }
    }
}
