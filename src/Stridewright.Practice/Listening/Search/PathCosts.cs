namespace Stridewright.Practice.Listening.Search;

/// <summary>
/// What the search for the player's path charges, in natural logarithms of how unlikely it is. Not measured but set so that
/// each of these is what a teacher would sooner believe; the tests hold what comes of them (common practice).
/// </summary>
internal static class PathCosts
{
    /// <summary>A played note that is none of the score's.</summary>
    public const double Extra = 3;

    /// <summary>A key an octave or two from one of the chord.</summary>
    public const double OtherOctave = 2;

    /// <summary>A chord of which nothing was played.</summary>
    public const double Skip = 1;

    /// <summary>A note of a played chord that is missing.</summary>
    public const double Missing = 0.3;

    /// <summary>At most this for the missing notes of one chord.</summary>
    public const double MostMissing = 1.2;

    /// <summary>To go back a little and play again: about half of the reactions to an error (eye movements before wide
    /// leaps, J. Music Perception and Cognition Japan 48/2).</summary>
    public const double Restart = 7;

    /// <summary>To go on anywhere else.</summary>
    public const double Jump = 11;

    /// <summary>How far back a restart reaches, in quarters.</summary>
    public const double RestartBeats = 16;

    private const double Together = 0.03; // seconds within which the notes of a chord cost nothing
    private const double SpreadScale = 0.15;
    private const double MostSpread = 3;
    private const double FirstShake = 0.9;
    private const double NextShake = 0.25;
    private const double WrittenShake = 0.15;
    private const double LeastApart = 0.8;
    private const double ApartScale = 0.2;
    private const double HandsApart = 0.3;
    private const double LateScale = 0.15;
    private const double MostLate = 3;
    private const double TempoScale = 1.6;
    private const double FreeTempo = 0.15; // log ratio that costs nothing
    private const double MostTooSlow = 2.5;
    private const double MostTooFast = 4;
    private const double Blur = 0.05; // seconds by which any onset may be off

    /// <summary>A further note of a chord so many seconds after its first.</summary>
    public static double Spread(double seconds) =>
        seconds <= Together ? 0 : Math.Min(MostSpread, (seconds - Together) / SpreadScale);

    /// <summary>A note of a trill, turn or tremolo on what sounds.</summary>
    /// <param name="repeats">Its key was struck just before.</param>
    /// <param name="isWritten">The score has a sign for it.</param>
    public static double Shake(bool repeats, bool isWritten) =>
        isWritten ? WrittenShake
        : repeats ? NextShake
        : FirstShake;

    /// <summary>A note of a chord close by, so many seconds from where the tempo has that chord: the hands are not
    /// together.</summary>
    public static double Apart(double seconds) => LeastApart + seconds / ApartScale;

    /// <summary>A note so many seconds from where its chord is due by both hands together.</summary>
    public static double Late(double seconds) => Math.Clamp((seconds - HandsApart) / LateScale, 0, MostLate);

    /// <summary>Logarithm of how much longer a step took than the tempo asks.</summary>
    public static double TempoRatio(double seconds, double asked) => Math.Log((seconds + Blur) / (asked + Blur));

    public static double Tempo(double ratio) =>
        ratio > 0
            ? Math.Clamp((ratio - FreeTempo) * TempoScale, 0, MostTooSlow)
            : Math.Clamp((-ratio - FreeTempo) * TempoScale, 0, MostTooFast);
}
