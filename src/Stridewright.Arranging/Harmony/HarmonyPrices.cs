namespace Stridewright.Arranging;

/// <summary>What harmonies cost in one family of modes: minus the logarithm of how often each thing occurs, in thousandths.</summary>
internal sealed record HarmonyPrices
{
    /// <summary>The chords to choose from.</summary>
    public required Degree[] Palette { get; init; }

    /// <summary>By chord and by semitones above its root: a tone of the tune that fills its spot.</summary>
    public required long[][] Tones { get; init; }

    /// <summary>By chord before and chord after: the way of a change.</summary>
    public required long[][] Changes { get; init; }

    /// <summary>By place in the strain and chord.</summary>
    public required long[][] Places { get; init; }

    /// <summary>Staying and changing: at a bar line of whole-bar spots, at one of half-bar spots, within a bar.</summary>
    public required (long Stay, long Change)[] Rhythm { get; init; }
}
