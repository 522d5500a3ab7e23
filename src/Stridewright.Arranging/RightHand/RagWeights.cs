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
            First = [4070, 4934, 3607, 3259, 4569, 3298, 2541, 324, 2566, 2961, 3070, 2391, 4882, 1768, 3455, 698],
            Second = [3923, 4004, 2954, 3553, 5282, 2642, 1544, 549, 2548, 4607, 2831, 3267, 4389, 2047, 2973, 1544],
            TiedMid = -313,
            TiedBar = 779,
        };

    /// <summary>Extra price of a syncopation by raggedness in quarters (0, 0.25, 0.5, 0.75, 1), calibrated so that the
    /// figures' rates grow in proportion.</summary>
    public long[] SyncopationByRaggedness { get; init; } = [6000, 781, 150, -900, -1900];

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
