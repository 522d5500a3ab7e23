using System.Numerics;
using System.Runtime.InteropServices;

namespace Stridewright.Arranging;

/// <summary>
/// The arcs into one layer of the left hand's search. A node is a bass with a chord; a new shape replaces one of the two
/// and keeps the other, so that the cheapest shape replaced is found for each pair of a kept and a new one, a row of
/// pairs at a time.
/// </summary>
internal sealed class StrideLayer
{
    /// <summary>Costs of one layer lie nearer together than this: each node is reached from every one two layers before.</summary>
    private const long Widest = int.MaxValue / 4;

    // Rows of costs above the layer's least, in half the room: twice as many to an instruction.
    private int[] _before = [];
    private int[] _best = [];
    private int[] _from = [];

    /// <summary>Offers the best arc into every node of the path's open layer.</summary>
    /// <param name="isBass">The new shape is a bass and replaces the bass; else a chord.</param>
    /// <param name="before">Costs of the nodes before, all reached: in rows of one bass, a column a chord.</param>
    /// <param name="lines">Prices by replaced and by new shape, in rows of one replaced.</param>
    /// <param name="moves">Prices by kept and by new shape, in rows of one kept; empty: none.</param>
    /// <param name="own">Prices of the new shapes by themselves.</param>
    /// <param name="kept">How many shapes are kept.</param>
    public void Offer(
        LayeredPath path,
        bool isBass,
        ReadOnlySpan<long> before,
        ReadOnlySpan<int> lines,
        ReadOnlySpan<int> moves,
        ReadOnlySpan<long> own,
        int kept
    )
    {
        var replaced = before.Length / kept;
        var least = Above(before);
        var (rows, row) = isBass ? (own.Length, kept) : (kept, own.Length);
        (_best, _from) = (Room(_best, row), Room(_from, row));
        var bestRow = _best.AsSpan(0, row);
        var fromRow = _from.AsSpan(0, row);
        for (var o = 0; o < rows; o++)
        {
            if (isBass)
            {
                Least(bestRow, fromRow, _before, lines[o..], rows, replaced);
            }
            else
            {
                Least(bestRow, fromRow, lines, _before.AsSpan(o * replaced), 1, replaced);
            }
            var reached = path.Reach(o * row, row);
            for (var i = 0; i < row; i++)
            {
                var (s, k) = isBass ? (o, i) : (i, o);
                reached.From[i] = isBass ? fromRow[i] * kept + k : k * replaced + fromRow[i];
                reached.Choice[i] = s;
                reached.Costs[i] = least + bestRow[i] + own[s] + (moves.IsEmpty ? 0 : moves[k * own.Length + s]);
            }
        }
        if (path.Witness is { } witness)
        {
            Tell(witness, isBass, before.Length, lines, moves, own, kept);
        }
    }

    // Fills _before; returns the least of them.
    private long Above(ReadOnlySpan<long> before)
    {
        _before = Room(_before, before.Length);
        var (least, most) = (long.MaxValue, long.MinValue);
        foreach (var cost in before)
        {
            (least, most) = (Math.Min(least, cost), Math.Max(most, cost));
        }
        if (most - least > Widest)
        {
            throw new InvalidOperationException($"costs of one layer lie {most - least} apart");
        }
        for (var i = 0; i < before.Length; i++)
        {
            _before[i] = (int)(before[i] - least);
        }
        return least;
    }

    private static int[] Room(int[] room, int size) => room.Length >= size ? room : new int[size];

    // Every arc by itself, as it is defined.
    private static void Tell(
        IPathWitness witness,
        bool isBass,
        int before,
        ReadOnlySpan<int> lines,
        ReadOnlySpan<int> moves,
        ReadOnlySpan<long> own,
        int kept
    )
    {
        for (var from = 0; from < before; from++)
        {
            var (k, r) = isBass ? (from % kept, from / kept) : (from / (before / kept), from % (before / kept));
            for (var s = 0; s < own.Length; s++)
            {
                var to = isBass ? s * kept + k : k * own.Length + s;
                var move = moves.IsEmpty ? 0 : moves[k * own.Length + s];
                witness.Arc(from, to, lines[r * own.Length + s] + move + own[s], s);
            }
        }
    }

    // For each column the least over all rows of costs, each row raised by its own amount, and the row it came from:
    // several columns to an instruction. Among equals the earlier row stands, as in LayeredPath.
    private static void Least(
        Span<int> best,
        Span<int> from,
        ReadOnlySpan<int> costs,
        ReadOnlySpan<int> raise,
        int raiseStep,
        int rows
    )
    {
        var (lanes, row) = (Vector<int>.Count, best.Length);
        ref var first = ref MemoryMarshal.GetReference(costs);
        for (var i = 0; i < row && row >= lanes; i += lanes)
        {
            // The last columns are looked at again with some before them.
            var at = Math.Min(i, row - lanes);
            var least = new Vector<int>(int.MaxValue);
            var source = Vector<int>.Zero;
            for (var r = 0; r < rows; r++)
            {
                var total = Vector.LoadUnsafe(ref first, (nuint)(r * row + at)) + new Vector<int>(raise[r * raiseStep]);
                var less = Vector.LessThan(total, least);
                least = Vector.ConditionalSelect(less, total, least);
                source = Vector.ConditionalSelect(less, new Vector<int>(r), source);
            }
            least.CopyTo(best[at..]);
            source.CopyTo(from[at..]);
        }
        for (var i = 0; i < row && row < lanes; i++)
        {
            best[i] = int.MaxValue;
            for (var r = 0; r < rows; r++)
            {
                var total = costs[r * row + i] + raise[r * raiseStep];
                if (total < best[i])
                {
                    (best[i], from[i]) = (total, r);
                }
            }
        }
    }
}
