namespace Stridewright.Hands;

/// <summary>How fast a hand must leap, and how fast it strikes one key or one octave again.</summary>
internal static class LeapRules
{
    /// <summary>Strokes per second of one key by one finger, and of an octave from the wrist, that an amateur keeps up
    /// (common practice).</summary>
    public const double KeyStrokesPerSecond = 6,
        OctaveStrokesPerSecond = 5;

    /// <summary>Strokes running that are too many when faster: printed rags strike an octave three times, never four.</summary>
    public const int KeyStrokes = 3,
        OctaveStrokes = 4;

    private const double Tolerance = 1e-9;

    public static void Check(List<Move> moves, HandMeasures hand, FaultList faults)
    {
        foreach (var group in moves.GroupBy(m => m.Group))
        {
            CheckGroup([.. group], faults);
        }
        CheckRepeats(moves, FaultKind.RepeatedKey, hand.StrokesPerSecond, KeyStrokes, IsSameKey, faults);
        CheckRepeats(moves, FaultKind.RepeatedOctave, hand.OctaveStrokesPerSecond, OctaveStrokes, IsSameOctave, faults);
    }

    private static void CheckGroup(List<Move> moves, FaultList faults)
    {
        var fast = moves.Where(m => m.Rate > m.Limit + Tolerance).ToList();
        var tooOften = fast.Count > Leap.ShareOverLimit * moves.Count;
        foreach (var move in fast)
        {
            var peak = move.Limit * Leap.PeakFactor;
            if (move.Rate > peak + Tolerance)
            {
                faults.Add(FaultKind.Leap, move.To, move.Rate, peak, HandsMessages.LeapTooFast(move, peak));
            }
            else if (tooOften)
            {
                var message = HandsMessages.LeapsOftenTooFast(move, fast.Count, moves.Count);
                faults.Add(FaultKind.Leap, move.To, move.Rate, move.Limit, message);
            }
        }
    }

    public static bool IsSameKey(Move move) =>
        move.From.Struck.Length == 1 && move.To.Struck.Length == 1 && move.From.Low == move.To.Low;

    /// <summary>Inner keys do not matter: it is the outer two that the wrist strikes.</summary>
    public static bool IsSameOctave(Move move) =>
        move.From.High - move.From.Low == 12 && move.From.Low == move.To.Low && move.From.High == move.To.High;

    private static void CheckRepeats(
        List<Move> moves,
        FaultKind kind,
        double limit,
        int strokes,
        Predicate<Move> isSame,
        FaultList faults
    )
    {
        var running = 1;
        foreach (var move in moves)
        {
            running = isSame(move) && move.Seconds * limit * (1 + Tolerance) < 1 ? running + 1 : 1;
            if (running == strokes)
            {
                var rate = 1 / move.Seconds;
                faults.Add(kind, move.To, rate, limit, HandsMessages.Repeated(move.To, rate, limit, strokes));
            }
        }
    }
}
