using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>Tempo taken where a score prints none.</summary>
public static class UsualTempo
{
    /// <summary>Quarter notes per minute: a classic rag's 88 in 2/4, a stride's 160 in 4/4 and 2/2, a rag waltz's 132
    /// in 3/4, a march's 150 in 6/8, 120 in any other metre (common practice).</summary>
    public static double QuartersPerMinute(Metre metre) =>
        (metre.Count, metre.Unit) switch
        {
            (2, 4) => 88,
            (4, 4) or (2, 2) => 160,
            (3, 4) => 132,
            (6, 8) => 150,
            _ => 120,
        };
}
