using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>The only judge of playability.</summary>
public static class Judge
{
    /// <summary>
    /// Judges what each hand must reach, how fast it must leap and repeat, and both hands together. Repeats are not
    /// followed. Time is linear in the number of notes but for sorting.
    /// </summary>
    /// <param name="quartersPerMinute">Tempo to judge at, above 0; null: as printed, else a usual one for the metre.</param>
    public static Verdict Check(Score score, PlayerHands hands, double? quartersPerMinute = null)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(hands);
        if (quartersPerMinute is { } tempo)
        {
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(tempo, nameof(quartersPerMinute));
        }
        return Judgement.Of(score, hands, quartersPerMinute).Verdict;
    }
}
