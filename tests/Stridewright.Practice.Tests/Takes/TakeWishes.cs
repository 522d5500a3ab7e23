using Stridewright.Music;

namespace Stridewright.Practice.Tests.Takes;

/// <summary>What a made take is to be like. Rates are shares of notes; times are seconds.</summary>
internal sealed record TakeWishes
{
    /// <summary>Seconds a quarter.</summary>
    public double Quarter { get; init; } = 0.6;

    /// <summary>How far the tempo swells and slackens, as a logarithm.</summary>
    public double Curve { get; init; }

    /// <summary>Standard deviation of each onset.</summary>
    public double Jitter { get; init; }

    public double Wrong { get; init; }

    /// <summary>Of the wrong notes, those that are the right one an octave away.</summary>
    public double WrongOctave { get; init; }

    public double Missing { get; init; }

    public double Extra { get; init; }

    /// <summary>From one note of a chord to the next, at most; each chord has its own.</summary>
    public double Spread { get; init; }

    /// <summary>How far the left hand may be behind or before the right; it drifts slowly between.</summary>
    public double HandsApart { get; init; }

    /// <summary>Share of the notes of a quarter and more that are shaken upon.</summary>
    public double Trills { get; init; }

    /// <summary>Times that the player stops for a beat or two.</summary>
    public int Hesitations { get; init; }

    /// <summary>Times that the player goes back one to eight quarters and plays on from there.</summary>
    public int Restarts { get; init; }

    /// <summary>Times that the player leaves out four to forty quarters.</summary>
    public int Skips { get; init; }

    /// <summary>Times that the player goes back to anywhere before.</summary>
    public int JumpsBack { get; init; }

    /// <summary>The hand that plays alone; null: both.</summary>
    public Hand? Alone { get; init; }

    /// <summary>Share of the piece that is played, from anywhere; 1: all of it.</summary>
    public double Part { get; init; } = 1;

    public bool HasJumps => Restarts + Skips + JumpsBack > 0;
}
