using Stridewright.Music;

namespace Stridewright.Practice.Listening;

/// <summary>A played note and the note of the score that it is; either may be missing.</summary>
/// <param name="Expected">Index among the expected notes; null: an insertion.</param>
/// <param name="Played">Index among the notes of the take; null: a deletion.</param>
public readonly record struct NotePair(int? Expected, int? Played)
{
    public bool IsMatch => Expected is not null && Played is not null;
}

/// <summary>A stretch of the take that follows the score without a jump.</summary>
/// <param name="FirstPlayed">Index of its first played note.</param>
/// <param name="PlayedEnd">Index after its last.</param>
/// <param name="FirstBeats">Onset of the first and last note of the score it reaches, in quarters.</param>
public sealed record Run(int FirstPlayed, int PlayedEnd, double FirstBeats, double LastBeats);

/// <summary>
/// A take laid along a score note by note. Each played note stands in one pair. A note of the score stands in one, or in as
/// many as it was played: once for each time the player came through.
/// </summary>
public sealed record Alignment(ExpectedScore Score, Take Take, ValueList<NotePair> Pairs, ValueList<Run> Runs)
{
    /// <summary>Played notes that are no part of what was to be heard, by their index; they stand in no pair.</summary>
    public ValueList<OutsideNote> Outside { get; init; } = [];
}

/// <summary>A note that was played before, after or between the bars that were to be heard.</summary>
/// <param name="Expected">What it is of the whole score; null: none of its notes.</param>
public sealed record OutsideNote(int Played, ExpectedNote? Expected);
