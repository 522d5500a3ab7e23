namespace Stridewright.Hands;

/// <summary>One key or one octave struck three times running or more: how much of the part that is, by its speed.</summary>
internal static class RepetitionPart
{
    /// <summary>Share of the moves that is demanding at the hand's limit: a bar in four.</summary>
    private const double DemandingShare = 0.25;

    public static double Amount(EffortScope scope)
    {
        var moves = scope.Part.Moves;
        if (moves.Count == 0)
        {
            return 0;
        }
        var load = Running(moves).Sum(m => Rate(m, scope.Part.Measures));
        return EffortNumbers.Bend(load / moves.Count / DemandingShare);
    }

    /// <summary>Strokes a second in the hand's limit for a key or an octave.</summary>
    public static double Rate(Move move, HandMeasures hand) =>
        1 / move.Seconds / (LeapRules.IsSameKey(move) ? hand.StrokesPerSecond : hand.OctaveStrokesPerSecond);

    /// <summary>The moves of runs of three strokes or more.</summary>
    public static IEnumerable<Move> Running(List<Move> moves)
    {
        for (var i = 0; i < moves.Count; i++)
        {
            if (Again(moves, i) && (i > 0 && Again(moves, i - 1) || i + 1 < moves.Count && Again(moves, i + 1)))
            {
                yield return moves[i];
            }
        }
    }

    private static bool Again(List<Move> moves, int index) =>
        LeapRules.IsSameKey(moves[index]) || LeapRules.IsSameOctave(moves[index]);
}
