using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>How much a harmony is enriched.</summary>
public enum Richness
{
    /// <summary>The chords as they stand.</summary>
    Plain,

    /// <summary>A change in four bars or so, of the plainer kinds.</summary>
    Seasoned,

    /// <summary>All kinds, wherever the tune allows.</summary>
    Rich,
}

/// <summary>Kinds of change; each can be left out.</summary>
public enum HarmonyChangeKind
{
    /// <summary>The next chord's own dominant seventh before it.</summary>
    SecondaryDominant,

    /// <summary>VI7 and II7 before V7.</summary>
    CircleOfFifths,

    /// <summary>A diminished seventh a semitone under the next bass.</summary>
    PassingDiminished,

    /// <summary>The diminished seventh on the chord's own root, and back.</summary>
    CommonToneDiminished,

    /// <summary>IV, iv, I.</summary>
    MinorSubdominant,

    /// <summary>The last four bars of a strain: IV, raised-iv diminished, I over its fifth, VI7, II7, V7, I.</summary>
    StrainEnding,

    /// <summary>The second degree before a dominant.</summary>
    TwoFive,

    /// <summary>The dominant seventh a tritone away; in stride only.</summary>
    Tritone,

    /// <summary>The way back to the beginning of a strain that is played again.</summary>
    Turnaround,

    /// <summary>The tonic stays in the bass under the dominant.</summary>
    Pedal,

    /// <summary>The bass goes down by step from I to IV.</summary>
    ChromaticBass,
}

/// <summary>What a brief asks of the harmony.</summary>
public sealed record HarmonyWish
{
    public Richness Richness { get; init; }

    /// <summary>Kinds that are not wanted.</summary>
    public ValueList<HarmonyChangeKind> Without { get; init; } = [];

    /// <summary>Single changes that are not wanted.</summary>
    public ValueList<UnwantedChange> WithoutAt { get; init; } = [];
}

/// <summary>A change that is not wanted in one place.</summary>
/// <param name="Bar">Number of the tune's bar where it would begin, as in <see cref="HarmonyChange"/>.</param>
public sealed record UnwantedChange(HarmonyChangeKind Kind, string Bar)
{
    /// <summary>Reads a word such as <c>pedal:7</c>; null where it is none.</summary>
    public static UnwantedChange? Read(string word)
    {
        ArgumentNullException.ThrowIfNull(word);
        return
            word.Split(':', 2) is [var kind, { Length: > 0 and < 20 } bar]
            && bar.All(c => char.IsLetterOrDigit(c) || c is '-' or '.')
            && BriefWords.HarmonyChanges.Find(kind) is { } found
            ? new(found, bar)
            : null;
    }

    /// <summary>As <see cref="Read"/> has it.</summary>
    public override string ToString() => $"{BriefWords.HarmonyChanges.WordOf(Kind)}:{Bar}";
}

/// <summary>One change of a tune's harmony.</summary>
/// <param name="Bar">Number of the tune's bar where it begins.</param>
/// <param name="Before">The chords that stood there, such as <c>F</c>.</param>
/// <param name="After">The chords that stand there now, such as <c>F D7</c>.</param>
public sealed record HarmonyChange(string Bar, HarmonyChangeKind Kind, string Before, string After);
