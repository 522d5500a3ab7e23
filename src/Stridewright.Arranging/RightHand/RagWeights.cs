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

    public long Filler { get; init; } = 900;

    /// <summary>A filler that strikes into a long tune note before half its length: it takes the note's breath.</summary>
    public long FillerSoon { get; init; } = 500;

    /// <summary>What no setting should do, but a strange tune may force.</summary>
    public const long Forced = 40_000;

    public static RagWeights Standard { get; } =
        new()
        {
            First = [3627, 4663, 3069, 2805, 4233, 2949, 2055, -188, 2261, 2529, 2712, 1982, 4358, 1628, 3404, 361],
            Second = [3462, 3911, 2468, 3102, 5007, 2103, 1094, 29, 2188, 4320, 2514, 2911, 4110, 1889, 2736, 1276],
            TiedMid = -265,
            TiedBar = 770,
        };

    /// <summary>Extra price of a syncopation by raggedness in quarters (0, 0.25, 0.5, 0.75, 1), calibrated so that the
    /// figures' rates grow in proportion.</summary>
    public long[] SyncopationByRaggedness { get; init; } = [6000, 656, 0, -968, -2200];

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
