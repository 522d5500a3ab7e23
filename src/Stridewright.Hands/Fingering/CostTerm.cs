namespace Stridewright.Hands;

/// <summary>What makes a fingering dear; the sources stand in <see cref="CostTerms"/>.</summary>
public enum CostTerm
{
    Stretch,
    SmallSpan,
    LargeSpan,
    PositionChange,
    PositionSize,
    WeakFinger,
    ThreeFourFive,
    ThreeToFour,
    FourOnBlack,
    ThumbOnBlack,
    FiveOnBlack,
    ThumbPass,
    Grasp,
    Hop,
    ChangeOnRepeat,
    FastRepeat,
    Substitution,
    BassFinger,
    OctaveOnBlack,
    ThumbOnTwo,
    RunUnlike,
    BeyondReach,
}

/// <summary>The terms in words, with their sources.</summary>
public static class CostTerms
{
    private const string Published = "Parncutt et al. 1997, rule ";
    private const string Practice = "common practice";

    /// <summary>Number of terms.</summary>
    public static int Count { get; } = Enum.GetValues<CostTerm>().Length;

    /// <summary>What a term charges for.</summary>
    public static string WordsOf(CostTerm term) =>
        term switch
        {
            CostTerm.Stretch => "two keys further apart or closer than two fingers like",
            CostTerm.SmallSpan => "two keys closer than two fingers lie at ease",
            CostTerm.LargeSpan => "two keys further apart than two fingers lie at ease",
            CostTerm.PositionChange => "the hand changes its position",
            CostTerm.PositionSize => "how far the hand changes its position",
            CostTerm.WeakFinger => "a weak finger",
            CostTerm.ThreeFourFive => "the third, fourth and fifth finger running",
            CostTerm.ThreeToFour => "the fourth finger after the third",
            CostTerm.FourOnBlack => "the fourth finger on a black key beside the third on a white one",
            CostTerm.ThumbOnBlack => "the thumb on a black key",
            CostTerm.FiveOnBlack => "the fifth finger on a black key beside white ones",
            CostTerm.ThumbPass => "the thumb passes under, or a finger over it",
            CostTerm.Grasp => "the shape of what is down at once",
            CostTerm.Hop => "a finger or the hand hops instead of connecting",
            CostTerm.ChangeOnRepeat => "other fingers on the same keys",
            CostTerm.FastRepeat => "one finger repeats a key fast",
            CostTerm.Substitution => "another finger takes over a held key",
            CostTerm.BassFinger => "a leapt bass without the fifth finger",
            CostTerm.OctaveOnBlack => "the fifth finger on the black key of an octave",
            CostTerm.ThumbOnTwo => "the thumb on two keys",
            CostTerm.RunUnlike => "another finger than an octave before, in a long run",
            CostTerm.BeyondReach => "keys beyond the hand's reach",
            _ => throw new ArgumentOutOfRangeException(nameof(term)),
        };

    /// <summary>Where a term comes from.</summary>
    public static string SourceOf(CostTerm term) =>
        term switch
        {
            <= CostTerm.ThumbPass => Published + ((int)term + 1),
            CostTerm.Grasp => "Al Kasimi, Nichols and Raphael 2007: stretch within a chord, by rules 1 to 3",
            CostTerm.ChangeOnRepeat => "a later rule set after Al Kasimi et al.: a chord repeated with other fingers",
            CostTerm.FastRepeat => "a finger's six strokes a second (" + Practice + ")",
            CostTerm.RunUnlike => "standard handbooks: a scale repeats its fingers every octave",
            CostTerm.BeyondReach => "a later rule set after Al Kasimi et al.: dear beyond the practical span",
            _ => Practice,
        };
}
