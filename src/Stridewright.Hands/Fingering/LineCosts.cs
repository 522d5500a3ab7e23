using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>
/// The published rules along a line of single keys. All is seen as by a right hand: sizes are positive towards the little
/// finger's side, so the left hand is mirrored. A weight of less than 1 is a strand's share in a chord.
/// </summary>
internal sealed class LineCosts
{
    private readonly int _sign;
    private readonly Keyboard _keyboard;

    public LineCosts(CostTable table, FingerHand hand)
    {
        Table = table;
        Spans = table.InMillimetres ? FingerSpans.For(hand) : FingerSpans.Printed;
        _sign = hand.Side == Hand.Right ? 1 : -1;
        _keyboard = new Keyboard(hand.OctaveMm);
    }

    public CostTable Table { get; }

    public FingerSpans Spans { get; }

    /// <summary>Semitones from one key to another; by millimetres, the whole number of mean semitones that is nearest.</summary>
    public int Size(int from, int to)
    {
        if (!Table.InMillimetres)
        {
            return _sign * (to - from);
        }
        var semitones = (int)Math.Round(12 * _keyboard.Distance(from, to) / _keyboard.OctaveMm);
        return Math.Sign(to - from) * _sign * semitones;
    }

    /// <summary>The same, not rounded where it is measured in millimetres.</summary>
    public double ExactSize(int from, int to) =>
        Table.InMillimetres ? _sign * 12 * (_keyboard.X(to) - _keyboard.X(from)) / _keyboard.OctaveMm : Size(from, to);

    /// <summary>True when two fingers can be on two keys at once.</summary>
    public bool CanSpan(int from, int fromFinger, int to, int toFinger)
    {
        const double Tolerance = 1e-6;
        var (low, high) = fromFinger < toFinger ? (from, to) : (to, from);
        var limits = Spans.Of(Math.Min(fromFinger, toFinger), Math.Max(fromFinger, toFinger));
        return Size(low, high) >= limits.MinPractical && ExactSize(low, high) <= limits.MaxPractical + Tolerance;
    }

    /// <summary>Rule 6.</summary>
    public void AddWeak(ref CostSum sum, int finger, bool isSingle)
    {
        var fourth = isSingle ? Table.Fourth : Table.FourthInChord;
        sum.Add(
            CostTerm.WeakFinger,
            finger == 4 ? fourth
                : finger == 5 ? Table.Fifth
                : 0
        );
    }

    /// <summary>Rules 10 and 11; the neighbours are -1 where there is none.</summary>
    public void AddColour(ref CostSum sum, int before, int key, int finger, int after, double weight)
    {
        if (finger is not (1 or 5) || !Keyboard.IsBlack(key))
        {
            return;
        }
        var whites = (IsWhite(before) ? 1 : 0) + (IsWhite(after) ? 1 : 0);
        if (finger == 1)
        {
            sum.Add(CostTerm.ThumbOnBlack, weight * (Table.ThumbOnBlack + whites * Table.ThumbBesideWhite));
        }
        else
        {
            sum.Add(CostTerm.FiveOnBlack, weight * whites * Table.FiveBesideWhite);
        }
    }

    /// <summary>From one key to the next: connected (rules 1, 2, 3, 8, 9, 12) or hopped, whichever is cheaper.</summary>
    public void AddPair(ref CostSum sum, int from, int fromFinger, int to, int toFinger, int hop, double weight)
    {
        if (from == to)
        {
            return;
        }
        // A finger lies about two semitones from the next.
        hop += Math.Abs(Size(from, to) - 2 * (toFinger - fromFinger)) * Table.HopSize;
        if (fromFinger != toFinger && CanSpan(from, fromFinger, to, toFinger))
        {
            var connected = new CostSum();
            AddConnected(ref connected, from, fromFinger, to, toFinger, 1);
            if (connected.Total <= hop)
            {
                AddConnected(ref sum, from, fromFinger, to, toFinger, weight);
                return;
            }
        }
        sum.Add(CostTerm.Hop, weight * hop);
    }

    /// <summary>Rules 4, 5 and 7, for three keys running.</summary>
    public void AddTriple(ref CostSum sum, int a, int aFinger, int b, int bFinger, int c, int cFinger)
    {
        if (
            (aFinger, bFinger, cFinger) is (>= 3, >= 3, >= 3)
            && aFinger != bFinger
            && bFinger != cFinger
            && aFinger != cFinger
        )
        {
            sum.Add(CostTerm.ThreeFourFive, Table.ThreeFourFive);
        }
        if (a == c)
        {
            // A changed finger on the same key counts and has no size: so the printed totals are.
            sum.Add(CostTerm.PositionChange, aFinger == cFinger ? 0 : Table.PositionChange);
            return;
        }
        var size = Size(a, c);
        var limits = aFinger == cFinger ? default : Spans.Of(aFinger, cFinger);
        var beyond = Math.Max(size - limits.MaxComfortable, limits.MinComfortable - size);
        if (beyond <= 0)
        {
            return;
        }
        var between = Math.Sign(Size(a, b)) * Math.Sign(Size(b, c)) > 0;
        var isFull = bFinger == 1 && between && (size > limits.MaxPractical || size < limits.MinPractical);
        sum.Add(CostTerm.PositionChange, (isFull ? 2 : 1) * Table.PositionChange);
        sum.Add(CostTerm.PositionSize, beyond * Table.PositionSize);
    }

    /// <summary>Rules 1 to 3 for two different fingers.</summary>
    public (double Stretch, double Small, double Large) SpanCosts(int from, int fromFinger, int to, int toFinger)
    {
        var (low, high) = fromFinger < toFinger ? (from, to) : (to, from);
        var hasThumb = fromFinger == 1 || toFinger == 1;
        var limits = Spans.Of(Math.Min(fromFinger, toFinger), Math.Max(fromFinger, toFinger));
        var size = Size(low, high);
        return (
            Table.Stretch * Math.Max(0, Math.Max(size - limits.MaxComfortable, limits.MinComfortable - size)),
            (hasThumb ? Table.SmallWithThumb : Table.Small) * Math.Max(0, limits.MinRelaxed - size),
            (hasThumb ? Table.LargeWithThumb : Table.Large) * Math.Max(0, size - limits.MaxRelaxed)
        );
    }

    private void AddConnected(ref CostSum sum, int from, int fromFinger, int to, int toFinger, double weight)
    {
        var (stretch, small, large) = SpanCosts(from, fromFinger, to, toFinger);
        sum.Add(CostTerm.Stretch, weight * stretch);
        sum.Add(CostTerm.SmallSpan, weight * small);
        sum.Add(CostTerm.LargeSpan, weight * large);
        if ((fromFinger, toFinger) == (3, 4))
        {
            sum.Add(CostTerm.ThreeToFour, weight * Table.ThreeToFour);
        }
        if ((fromFinger, toFinger) is (3, 4) or (4, 3))
        {
            var (third, fourth) = fromFinger == 3 ? (from, to) : (to, from);
            var isHigh = Keyboard.IsBlack(fourth) && !Keyboard.IsBlack(third);
            sum.Add(CostTerm.FourOnBlack, isHigh ? weight * Table.FourOnBlack : 0);
        }
        var (lower, upper, upperFinger) = Size(from, to) > 0 ? (from, to, toFinger) : (to, from, fromFinger);
        if (upperFinger == 1)
        {
            var (isBlack, toBlack) = (Keyboard.IsBlack(lower), Keyboard.IsBlack(upper));
            var price =
                isBlack == toBlack ? Table.PassOnLevel
                : toBlack ? Table.PassToBlack
                : 0;
            sum.Add(CostTerm.ThumbPass, weight * price);
        }
    }

    private static bool IsWhite(int key) => key >= 0 && !Keyboard.IsBlack(key);
}
