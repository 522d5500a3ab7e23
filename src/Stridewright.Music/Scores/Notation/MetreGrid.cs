using System.Numerics;

namespace Stridewright.Music.Notation;

/// <summary>
/// The beats of a bar as a tree: the bar, its halves or beats, their parts, down to the 256th. Places are counted in
/// 256ths of a whole note from the start of the full bar. It knows which note may stand undivided where, after the
/// usual rule that the beat must be seen (common practice).
/// </summary>
internal sealed class MetreGrid
{
    public const int UnitsPerWhole = 256;

    private readonly int[] _parts; // into how many parts a node of each depth divides; 2 below the last
    private readonly int _length;
    private readonly int _beatDepth;
    private readonly bool _compound;

    public MetreGrid(Metre metre, int atLeast)
    {
        Beat = UnitsOf(metre.Beat);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(Beat, nameof(metre));
        _compound = metre.IsCompound;
        var beats = (Math.Max(UnitsOf(metre.BarLength), atLeast) + Beat - 1) / Beat;
        _length = beats * Beat;
        List<int> parts =
            beats == 1 ? []
            : BitOperations.IsPow2(beats) ? [.. Enumerable.Repeat(2, BitOperations.Log2((uint)beats))]
            : [beats];
        _beatDepth = parts.Count;
        if (_compound)
        {
            parts.Add(3);
        }
        _parts = [.. parts];
    }

    /// <summary>Length of a beat.</summary>
    public int Beat { get; }

    /// <summary>A time in 256ths, or a negative number when it is not on their grid.</summary>
    public static int UnitsOf(ScoreTime time)
    {
        var units = time * UnitsPerWhole;
        return units.Denominator == 1 && units.Numerator is >= 0 and <= int.MaxValue ? (int)units.Numerator : -1;
    }

    public static ScoreTime TimeOf(int units) => new(units, UnitsPerWhole);

    /// <summary>The value with this length: plain or once dotted, breve to 256th; null when none has it.</summary>
    public static NoteValue? ValueOf(int units)
    {
        var dots = units % 3 == 0 ? 1 : 0;
        var plain = dots == 1 ? units / 3 * 2 : units;
        return plain is > 0 and <= 2 * UnitsPerWhole && BitOperations.IsPow2(plain)
            ? new NoteValue(UnitsPerWhole / plain, dots)
            : null;
    }

    /// <summary>Divides a span into the fewest values that let the beat be read, cutting at the strongest places.</summary>
    public List<(int Start, int End)> Divide(int start, int end, bool rest)
    {
        var cuts = new List<int> { start };
        Tile(0, _length, 0, start, end, cuts);
        var best = new (int Cost, int From)[cuts.Count];
        for (var to = 1; to < cuts.Count; to++)
        {
            best[to] = (int.MaxValue, 0);
            for (var from = 0; from < to; from++)
            {
                var tile = from == to - 1;
                if (best[from].Cost < int.MaxValue && (tile || IsReadable(cuts[from], cuts[to], rest)))
                {
                    var cost = best[from].Cost + 1000 + (from > 0 ? DepthOf(cuts[from]) : 0);
                    // Of equal divisions the one with the longer values first.
                    if (cost <= best[to].Cost)
                    {
                        best[to] = (cost, from);
                    }
                }
            }
        }
        var pieces = new List<(int, int)>();
        for (var to = cuts.Count - 1; to > 0; to = best[to].From)
        {
            pieces.Add((cuts[best[to].From], cuts[to]));
        }
        pieces.Reverse();
        return pieces;
    }

    /// <summary>Ends of the largest nodes with a value of their own that fill the span.</summary>
    private void Tile(int node, int length, int depth, int start, int end, List<int> cuts)
    {
        if (end <= node || start >= node + length)
        {
            return;
        }
        if (start <= node && end >= node + length && ValueOf(length) is not null)
        {
            cuts.Add(node + length);
            return;
        }
        var parts = PartsAt(depth);
        for (var i = 0; i < parts; i++)
        {
            Tile(node + i * (length / parts), length / parts, depth + 1, start, end, cuts);
        }
    }

    /// <summary>True when one note (or rest) may fill this span, which is not a node of the tree.</summary>
    private bool IsReadable(int start, int end, bool rest)
    {
        if (ValueOf(end - start) is null)
        {
            return false;
        }
        var (node, length, depth) = (0, _length, 0);
        while (true)
        {
            var part = length / PartsAt(depth);
            if ((start - node) / part != (end - 1 - node) / part)
            {
                break;
            }
            (node, length, depth) = (node + (start - node) / part * part, part, depth + 1);
        }
        var (from, until) = (start - node, end - node);
        if (rest)
        {
            // The first two parts of a compound beat; all other rests are nodes.
            return _compound && depth == _beatDepth && from == 0 && until == length / 3 * 2;
        }
        return PartsAt(depth) == 2
            ? CrossesMiddle(from, until, length, depth)
            : CrossesParts(from, until, length, depth);
    }

    private bool CrossesMiddle(int from, int until, int length, int depth)
    {
        if (_compound && depth < _beatDepth)
        {
            return from == 0 && until == length;
        }
        var quarter = length / 4;
        var aligned = quarter > 0 && from % quarter == 0 && until % quarter == 0;
        // From the start for three quarters, or the middle two quarters; within a half bar also the last three.
        return aligned && (from == 0 || until < length || depth > 0);
    }

    private bool CrossesParts(int from, int until, int length, int depth)
    {
        var part = length / PartsAt(depth);
        return from % part == 0 && until - from <= 3 * part && (until % part == 0 || 2 * (until - from) == 3 * part);
    }

    /// <summary>How deep in the tree a place first divides a node: 0 for the strongest inside the bar.</summary>
    private int DepthOf(int place)
    {
        var (node, length) = (0, _length);
        for (var depth = 0; ; depth++)
        {
            var part = length / PartsAt(depth);
            if ((place - node) % part == 0)
            {
                return depth;
            }
            (node, length) = (node + (place - node) / part * part, part);
        }
    }

    private int PartsAt(int depth) => depth < _parts.Length ? _parts[depth] : 2;
}
