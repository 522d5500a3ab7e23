using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// Where each off-beat chord lies at every level, so that a player who moves up finds the chords where they were: the
/// smoothest line of voicings under the tune as it would lie in octaves, each with a root close below it, so that the
/// first level strikes both without a leap. Worked out from tune, chords and hands alone, whatever the level.
/// </summary>
internal sealed class HomePositions
{
    /// <summary>Price of another shape than the one at home.</summary>
    public const long Away = 4000;

    private const int HighestRoot = 55;
    private const long Crossing = 4000,
        UnderOctave = 500;
    private static readonly LeftShape Nowhere = new(LeftKind.Rest, [], Stretch.Comfortable, 0, false);
    private readonly LeftSlot[] _slots;
    private readonly LeftShape[] _shapes;

    private HomePositions(LeftSlot[] slots, LeftShape[] shapes)
    {
        _slots = slots;
        _shapes = shapes;
    }

    /// <summary>Price of a chord at a tick by its shape.</summary>
    public long Price(int tick, LeftShape shape)
    {
        var at = FirstAfter(tick);
        return at < _slots.Length && _slots[at].Tick == tick && !_shapes[at].Pitches.Equals(shape.Pitches) ? Away : 0;
    }

    /// <summary>The highest key of the chords that sound between two ticks; 0 where none does.</summary>
    public int HighestKey(int from, int to)
    {
        var highest = 0;
        for (var i = FirstAfter(from); i < _slots.Length && _slots[i].Tick < to; i++)
        {
            highest = Math.Max(highest, _shapes[i].High);
        }
        return highest;
    }

    public static HomePositions Find(Lattice lattice, Reach reach, CancellationToken cancellation)
    {
        var slots = LeftSlot.Of(lattice).Where(s => !s.IsBass).ToArray();
        var path = new LayeredPath();
        var layers = new LeftShape[slots.Length][];
        var voicings = new Dictionary<(ChordSymbol, bool), LeftShape[]>();
        var first = 0;
        for (var i = 0; i < slots.Length; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            var slot = slots[i];
            var chord = lattice.ChordAt(slot.Tick).Chord;
            if (!voicings.TryGetValue((chord, slot.Changes), out var shapes))
            {
                var lowest = ChordShapes.LowestKey(slot);
                shapes =
                [
                    .. ChordShapes
                        .Of(chord, lattice.Feel, reach, lowest, ChordShapes.HighestKey, slot.Changes)
                        .Select(s => s with { Price = s.Price + FromRoot(reach, chord, s) }),
                ];
                voicings.Add((chord, slot.Changes), shapes);
            }
            while (first < lattice.Notes.Length && lattice.Notes[first].End <= slot.Tick)
            {
                first++;
            }
            // A chord that these hands cannot strike at all has no place of its own.
            layers[i] =
                shapes.Length == 0
                    ? [Nowhere]
                    : [.. shapes.Select(s => s with { Price = s.Price + UnderTune(lattice, slot, first, s) })];
            path.OpenLayer(layers[i].Length);
            for (var to = 0; to < layers[i].Length; to++)
            {
                for (var from = 0; i > 0 && from < layers[i - 1].Length; from++)
                {
                    var line = LeftMoves.ChordLine(layers[i - 1][from], layers[i][to]);
                    path.Offer(from, to, path.EarlierCosts[from] + layers[i][to].Price + line, to);
                }
                if (i == 0)
                {
                    path.Start(to, layers[i][to].Price, to);
                }
            }
        }
        return slots.Length > 0 && path.Best() is { } best
            ? new HomePositions(slots, [.. layers.Select((layer, i) => layer[best.Steps[i].Node])])
            : new HomePositions([], []);
    }

    // Index of the first chord that ends after a tick.
    private int FirstAfter(int tick)
    {
        int low = 0,
            high = _slots.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = _slots[middle].End <= tick ? (middle + 1, high) : (low, middle);
        }
        return low;
    }

    // What the hand must travel from the nearest root that lies below the chord.
    private static long FromRoot(Reach reach, ChordSymbol chord, LeftShape shape)
    {
        var least = double.MaxValue;
        for (var key = BassShapes.LowestAtLevelOne; key <= HighestRoot && key < shape.Low; key++)
        {
            if (key % 12 == chord.Lowest.PitchClass)
            {
                least = Math.Min(least, Leap.Shift(reach, key, key, shape.Low, shape.High));
            }
        }
        return least == double.MaxValue ? Crossing : (long)(12 * least);
    }

    private static long UnderTune(Lattice lattice, LeftSlot slot, int first, LeftShape shape)
    {
        var price = 0L;
        for (var i = first; i < lattice.Notes.Length && lattice.Notes[i].Start < slot.End; i++)
        {
            var key = lattice.Notes[i].Key;
            price +=
                shape.High >= key ? Crossing
                : shape.High >= key - 12 ? UnderOctave
                : 0;
        }
        return price;
    }
}
