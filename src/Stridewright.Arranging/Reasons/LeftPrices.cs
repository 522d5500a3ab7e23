namespace Stridewright.Arranging;

/// <summary>A part of what a shape of the left hand costs at its place.</summary>
internal enum PricePart
{
    /// <summary>From the bass or chord before, as a line.</summary>
    Line,

    /// <summary>On to the next.</summary>
    NextLine,

    /// <summary>Away from where the chord lies at every level.</summary>
    Home,

    /// <summary>The shape by itself.</summary>
    Own,

    /// <summary>Beside the right hand.</summary>
    RightHand,
    Strain,

    /// <summary>The hand's way from the stroke before and to the next.</summary>
    Way,
    Variety,
}

/// <summary>
/// A finished left hand with the search's own prices, part by part: what another shape would cost in place of the one
/// that stands there, everything else staying. Since the line found is the cheapest, no such exchange is cheaper.
/// </summary>
internal sealed class LeftPrices
{
    private static readonly LeftShape Rest = new(LeftKind.Rest, [], Hands.Stretch.Comfortable, 0, false);
    private readonly Solution _solution;
    private readonly Striding _striding;
    private readonly LeftMoves _moves;
    private readonly LeftShape[] _shapes;

    public LeftPrices(Solution solution)
    {
        _solution = solution;
        var stage = solution.Stage;
        _striding = new Striding(stage, solution.Right, solution.Homes, solution.Settled.LeftStrain);
        Slots = _striding.Slots(LeftSlot.Of(stage.Lattice));
        _moves = new LeftMoves(stage);
        var struck = solution.Left.Notes.ToDictionary(n => n.Slot.Tick, n => n.Shape);
        _shapes = [.. Slots.Select(s => struck.GetValueOrDefault(s.Tick, Rest))];
    }

    /// <summary>All places, those at which nothing is struck too.</summary>
    public LeftSlot[] Slots { get; }

    /// <summary>What is struck at a place; a rest where nothing is.</summary>
    public LeftShape At(int index) => _shapes[index];

    /// <summary>The place of the bass, or of the chord, before; −1: none.</summary>
    public int Before(int index) => Array.FindLastIndex(Slots, Math.Max(index - 1, 0), index, s => Like(s, index));

    /// <summary>The place of the bass, or of the chord, after; −1: none.</summary>
    public int After(int index) => Array.FindIndex(Slots, index + 1, s => Like(s, index));

    /// <summary>The stroke before a place, rests passed over; −1: none.</summary>
    public int StruckBefore(int index)
    {
        do
        {
            index--;
        } while (index >= 0 && _shapes[index].IsRest);
        return index;
    }

    /// <summary>The stroke after a place, rests passed over; −1: none.</summary>
    public int StruckAfter(int index)
    {
        do
        {
            index++;
        } while (index < Slots.Length && _shapes[index].IsRest);
        return index < Slots.Length ? index : -1;
    }

    /// <summary>What one shape costs more than another at some places together, by part.</summary>
    /// <param name="places">Neighbouring places of basses, or of chords.</param>
    /// <param name="shape">With the price it has by itself.</param>
    /// <param name="than">Likewise.</param>
    public long[] More(IReadOnlyList<int> places, LeftShape shape, LeftShape than)
    {
        var (one, other) = (Of(places, shape), Of(places, than));
        return [.. one.Zip(other, (a, b) => a - b)];
    }

    private bool Like(LeftSlot slot, int index) => slot.IsBass == Slots[index].IsBass;

    private long[] Of(IReadOnlyList<int> places, LeftShape shape)
    {
        var parts = new long[Enum.GetValues<PricePart>().Length];
        ref long Part(PricePart part) => ref parts[(int)part];
        LeftShape Placed(int index) => places.Contains(index) ? shape : _shapes[index];
        foreach (var i in places)
        {
            var slot = Slots[i];
            Part(PricePart.Own) += shape.Price;
            Part(PricePart.Home) += slot.IsBass ? 0 : _solution.Homes.Price(slot.Tick, shape);
            Part(PricePart.RightHand) += _striding.Against(slot, shape);
            Part(PricePart.Strain) += shape.IsStrained ? _solution.Settled.LeftStrain : 0;
            Part(PricePart.Variety) += _striding.Liking(slot, shape);
            if (i > 0)
            {
                Part(PricePart.Way) += Way(i - 1, Placed(i - 1), i, shape);
            }
            if (i + 1 < Slots.Length && !places.Contains(i + 1))
            {
                Part(PricePart.Way) += Way(i, shape, i + 1, _shapes[i + 1]);
            }
        }
        Part(PricePart.Line) = Line(Before(places[0]), places[0], shape, isNext: false);
        Part(PricePart.NextLine) = Line(places[^1], After(places[^1]), shape, isNext: true);
        return parts;
    }

    private long Way(int from, LeftShape first, int to, LeftShape second) =>
        _moves.Between(Slots[from], Slots[to], [first], [second])[0];

    private long Line(int from, int to, LeftShape shape, bool isNext) =>
        from < 0 || to < 0
            ? 0
            : LeftMoves.Lines(Slots[to], [isNext ? shape : _shapes[from]], [isNext ? _shapes[to] : shape], to)[0];
}
