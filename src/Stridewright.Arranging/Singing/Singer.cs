using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Somebody sings the tune, as it stands: the piano plays under and around the voice.</summary>
/// <param name="Range">What the voice reaches; null: the tune is sung where it is written.</param>
public sealed record Singer(VocalRange? Range = null);

/// <summary>What a voice reaches, as it sounds; the lowest lies below the highest.</summary>
public sealed record VocalRange(Pitch Lowest, Pitch Highest)
{
    /// <summary>From the lowest note of basses to the highest of sopranos, with an octave to spare at either end (common
    /// practice).</summary>
    private const int LowestKey = 24,
        HighestKey = 98;

    /// <summary>Reads two notes with a hyphen between, such as <c>A3-D5</c> (C4 is middle C); when it cannot,
    /// <paramref name="problem"/> says why.</summary>
    public static bool TryRead(string text, out VocalRange? range, out string problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        range = null;
        var ends = text.Split('-', StringSplitOptions.TrimEntries);
        if (ends.Length != 2 || !Pitch.TryParse(ends[0], out var low) || !Pitch.TryParse(ends[1], out var high))
        {
            problem = SingingMessages.NoRange(text);
            return false;
        }
        problem =
            low.Midi >= high.Midi ? SingingMessages.UpsideDown(text)
            : low.Midi < LowestKey || high.Midi > HighestKey ? SingingMessages.NoVoice(text)
            : "";
        range = problem.Length == 0 ? new VocalRange(low, high) : null;
        return range is not null;
    }

    public override string ToString() => $"{Lowest}-{Highest}";
}
