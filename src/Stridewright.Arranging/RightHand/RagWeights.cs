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

    public long Early { get; init; } = 1500;

    /// <summary>A dotted figure's short note moved up to the beat.</summary>
    public long EarlyOntoBeat { get; init; } = -300;

    public long Late { get; init; } = 6000;

    public long Filler { get; init; } = 600;

    /// <summary>A filler that strikes into a long tune note before half its length: it takes the note's breath.</summary>
    public long FillerSoon { get; init; } = 500;

    /// <summary>What no setting should do, but a strange tune may force.</summary>
    public const long Forced = 40_000;

    public static RagWeights Standard { get; } =
        new()
        {
            First = [3770, 6500, 4000, 4270, 4420, 5500, 4490, 2430, 1930, 2850, 2440, 2150, 5500, 2160, 4200, 1200],
            Second = [3120, 4960, 2940, 4200, 6200, 3570, 2180, 1760, 2370, 4960, 2050, 3220, 4700, 2290, 3170, 1900],
            TiedMid = 0,
            TiedBar = 0,
        };

    /// <summary>Extra price of a syncopation and of a filler by raggedness, calibrated at the points of the table; between
    /// them interpolated.</summary>
    public static (long Syncopation, long Filler) Bias(double raggedness)
    {
        ReadOnlySpan<(double At, long Syncopation, long Filler)> points =
        [
            (0.0, 6000, 6000),
            (0.25, 1500, 900),
            (0.5, 0, 0),
            (0.75, -900, -300),
            (1.0, -1800, -500),
        ];
        for (var i = 1; i < points.Length; i++)
        {
            if (raggedness <= points[i].At)
            {
                var share = (raggedness - points[i - 1].At) / (points[i].At - points[i - 1].At);
                return (
                    (long)(points[i - 1].Syncopation + share * (points[i].Syncopation - points[i - 1].Syncopation)),
                    (long)(points[i - 1].Filler + share * (points[i].Filler - points[i - 1].Filler))
                );
            }
        }
        return (points[^1].Syncopation, points[^1].Filler);
    }
}
