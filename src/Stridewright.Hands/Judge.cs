using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>The only judge of playability.</summary>
public static class Judge
{
    /// <param name="quartersPerMinute">Tempo to judge at; null: as printed, else a usual one for the metre.</param>
    public static Verdict Check(Score score, PlayerHands hands, double? quartersPerMinute = null) =>
        throw new NotSupportedException(score.Title + hands + quartersPerMinute);
}
