using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>
/// A piece split into what one pair of hands needs to be able to play it: steps that lead into each other and end in the
/// piece, drills made of its own hard places, and a plan by days. Tempi are in beats of <see cref="Beat"/> a minute.
/// </summary>
public sealed record Lesson
{
    public required string Title { get; init; }

    /// <summary>Whose hands; null: nobody's by name.</summary>
    public string? Player { get; init; }

    /// <summary>What it leads to.</summary>
    public required Score Goal { get; init; }

    /// <summary>The beat that tempi count.</summary>
    public required NoteValue Beat { get; init; }

    /// <summary>Tempo of the piece: as printed, or slower where these hands need it.</summary>
    public required double BeatsPerMinute { get; init; }

    /// <summary>The fastest tempo at which the whole is comfortable for these hands, as far as speed goes; null: nothing in it
    /// depends on the tempo.</summary>
    public double? ComfortableBeats { get; init; }

    /// <summary>Effort of the whole, 1 to 100, at its tempo.</summary>
    public required double Effort { get; init; }

    /// <summary>In the order in which they are learned; the last one is the whole piece, hands together.</summary>
    public required ValueList<PathStep> Steps { get; init; }

    public ValueList<SkippedStep> Skipped { get; init; } = [];

    /// <summary>Most urgent first.</summary>
    public required ValueList<Drill> Drills { get; init; }

    public required Plan Plan { get; init; }

    /// <summary>What health asks for, always with the general ones.</summary>
    public required ValueList<Caution> Cautions { get; init; }

    /// <summary>What was heard in the takes, one sentence each.</summary>
    public ValueList<string> Heard { get; init; } = [];

    /// <summary>What else is to be said: a tempo that was taken back, a step that could not be made.</summary>
    public ValueList<string> Remarks { get; init; } = [];
}

/// <summary>What is known of the one who learns, and the time there is.</summary>
public sealed record LessonWish
{
    public const int FewestDays = 1,
        MostDays = 60,
        FewestMinutes = 10,
        MostMinutes = 120;

    public PlayerHands Hands { get; init; } = new();

    public string? Player { get; init; }

    public int Days { get; init; } = 7;

    /// <summary>Minutes a day, breaks counted in.</summary>
    public int Minutes { get; init; } = 30;

    /// <summary>What was played already, earliest first.</summary>
    public ValueList<NamedTake> Takes { get; init; } = [];

    /// <summary>Indexes of the bars after which a page of the score must be turned.</summary>
    public ValueList<int> PageEnds { get; init; } = [];
}

/// <summary>A take with the name that it is called by.</summary>
public sealed record NamedTake(string Name, Listening.Take Take);

/// <summary>What came of it: a lesson, or the reason why there is none.</summary>
public sealed record LessonResult(Lesson? Lesson, Diagnostic? Refusal);
