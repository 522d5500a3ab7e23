using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>A verdict and what would change it: how a piece lies under one pair of hands.</summary>
/// <param name="Verdict">What cannot be played, and how hard the rest is.</param>
/// <param name="Words">How hard it is, in words, such as <c>asks for practice</c>.</param>
public sealed record Assessment(Verdict Verdict, string Words)
{
    /// <summary>The bars that ask most, hardest first, with what makes them hard.</summary>
    public required ValueList<HardSpot> Hardest { get; init; }

    /// <summary>The fastest tempo at which it is comfortable; null: nothing in it depends on the tempo.</summary>
    public required ComfortableTempo? Comfortable { get; init; }

    /// <summary>Spans that it needs of the right hand.</summary>
    public required SpanNeed Right { get; init; }

    /// <summary>Spans that it needs of the left hand.</summary>
    public required SpanNeed Left { get; init; }

    /// <summary>The smallest change that removes the worst spot; null: none of those tried does.</summary>
    public required SmallestChange? Change { get; init; }

    /// <summary>What health asks for, where strain, speed or repetition is high; else empty.</summary>
    public required ValueList<Caution> Cautions { get; init; }
}

/// <summary>A bar with what makes it hard.</summary>
/// <param name="Why">Such as <c>left hand: fast leaps, a wide hand</c>.</param>
public sealed record HardSpot(BarEffort Bar, string Why);

/// <summary>Assesses scores.</summary>
public static class Assess
{
    private const int HardBars = 5;

    /// <summary>The fastest tempo at which a score is comfortable for a pair of hands, judged from its printed one; null: nothing
    /// in it depends on the tempo.</summary>
    public static ComfortableTempo? Comfortable(Score score, PlayerHands hands)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(hands);
        return Comfort.Fastest(score, hands, null, Judgement.Of(score, hands, null));
    }

    /// <summary>Judges a score and asks what would change the verdict. It is judged some dozens of times over.</summary>
    /// <param name="quartersPerMinute">Tempo to judge at, above 0; null: as printed, else a usual one for the metre.</param>
    public static Assessment Of(Score score, PlayerHands hands, double? quartersPerMinute = null)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(hands);
        if (quartersPerMinute is { } tempo)
        {
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(tempo, nameof(quartersPerMinute));
        }
        var judged = Judgement.Of(score, hands, quartersPerMinute);
        var (verdict, effort) = (judged.Verdict, judged.Verdict.Effort);
        return new(verdict, EffortMessages.WordsOf(effort.Overall))
        {
            Hardest = verdict
                .HardestBars(HardBars)
                .Select(bar => new HardSpot(bar, EffortMessages.Why(bar, effort)))
                .ToValueList(),
            Comfortable = Comfort.Fastest(score, hands, quartersPerMinute, judged),
            Right = SpanNeed.Of(judged.Passage, hands, Hand.Right),
            Left = SpanNeed.Of(judged.Passage, hands, Hand.Left),
            Change = ChangeSearch.Find(score, hands, quartersPerMinute, judged),
            Cautions = Cautioning.Of(judged),
        };
    }
}
