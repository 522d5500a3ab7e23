namespace Stridewright.Arranging;

/// <summary>
/// Prices of the ragging, in thousandths of a natural logarithm. The pattern weights are calibrated so that settings of
/// the calibration tunes at level 5 and raggedness 0.5 show the half-bar patterns, tied and untied short-long-short
/// figures measured on 34 published piano rags in 2/4 of 1899–1917 (3001 bars). See docs/decisions.
/// </summary>
internal sealed record RagWeights
{
    /// <summary>Per pattern of the first half bar; the highest bit is the first sixteenth.</summary>
    public required long[] First { get; init; }

    /// <summary>Per pattern of the second half bar.</summary>
    public required long[] Second { get; init; }

    /// <summary>A short-long-short figure tied over mid-bar.</summary>
    public required long TiedMid { get; init; }

    /// <summary>A short-long-short figure tied over the bar line.</summary>
    public required long TiedBar { get; init; }

    public long Early { get; init; } = 100;

    /// <summary>A dotted figure's short note moved up to the beat.</summary>
    public long EarlyOntoBeat { get; init; } = -300;

    public long Late { get; init; } = 6000;

    /// <summary>What a syllable's stress weighs: a strong one draws an anticipation to it and is not cut short by a late
    /// start or by filling, a weak one stays where it is. Common practice; no part of the calibration, since the
    /// measured rags have no words.</summary>
    public long Syllable { get; init; } = 1500;

    public long Filler { get; init; } = 900;

    /// <summary>A filler that strikes into a long tune note before half its length: it takes the note's breath.</summary>
    public long FillerSoon { get; init; } = 500;

    /// <summary>A stroke that does not stand again in the next level: dear, so that a player grows into a piece.</summary>
    public const long Apart = 3000;

    /// <summary>What no setting should do, but a strange tune may force.</summary>
    public const long Forced = 40_000;

    public static RagWeights Standard { get; } =
        new()
        {
            First = [3088, 3939, 1899, 1548, 2993, 1183, 480, -1810, 2519, 2601, 2674, 1967, 4054, 756, 2892, 66],
            Second = [3140, 3124, 1905, 2210, 4030, 1270, 23, -1035, 2103, 4574, 2705, 3296, 3410, 1358, 2771, 1496],
            TiedMid = -439,
            TiedBar = 1092,
        };

    /// <summary>Extra price of a syncopation by raggedness in quarters (0, 0.25, 0.5, 0.75, 1), calibrated so that the
    /// figures' rates grow in proportion.</summary>
    public long[] SyncopationByRaggedness { get; init; } = [6000, 781, 0, -1031, -2781];

    /// <summary>Extra price of a filler by raggedness in quarters.</summary>
    public long[] FillerByRaggedness { get; init; } = [6000, 600, 0, 0, 0];

    /// <summary>Both extra prices, interpolated.</summary>
    public (long Syncopation, long Filler) Bias(double raggedness)
    {
        var at = Math.Clamp(raggedness, 0, 1) * 4;
        var low = Math.Min(3, (int)at);
        long Between(long[] points) => (long)(points[low] + (at - low) * (points[low + 1] - points[low]));
        return (Between(SyncopationByRaggedness), Between(FillerByRaggedness));
    }
}
