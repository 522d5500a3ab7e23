using Stridewright.Music;

namespace Stridewright.Workbench.Practising;

/// <summary>How players have come on. The object of <c>progress --json</c>.</summary>
public sealed record ProgressReport
{
    public string Kind { get; } = "progress";

    /// <summary>The day for which it is told what is due.</summary>
    public required DateOnly Today { get; init; }

    /// <summary>By name; takes without a player come last, under an empty name.</summary>
    public ValueList<PlayerProgress> Players { get; init; } = [];
}

/// <summary>One player.</summary>
/// <param name="Id">Null: takes of nobody in particular.</param>
/// <param name="Takes">In the last seven days, today counted.</param>
/// <param name="Due">What is due today, over all pieces.</param>
/// <param name="Pieces">The one that was played last first.</param>
public sealed record PlayerProgress(
    string? Id,
    string Name,
    int Takes,
    ValueList<string> Due,
    ValueList<PieceReport> Pieces
);

/// <summary>One piece. Tempi are quarters a minute.</summary>
/// <param name="TempoReached">Of the fastest clean take of the whole; null: there is none.</param>
/// <param name="AskedTempo">Of the score; null: none.</param>
public sealed record PieceReport(
    string Title,
    DateOnly First,
    DateOnly Last,
    int Takes,
    double? TempoReached,
    double? AskedTempo,
    ValueList<WeekReport> Weeks,
    ValueList<ItemReport> Items
);

/// <summary>One week of a piece.</summary>
/// <param name="Week">Its Monday.</param>
/// <param name="Days">Days with takes.</param>
/// <param name="Cleanness">Median share of right notes.</param>
/// <param name="TempoReached">Of its fastest clean take of the whole; null: there is none.</param>
/// <param name="Unevenness">Median of the left hand's strokes, as a share of a stroke; null: nothing was measured.</param>
public sealed record WeekReport(
    DateOnly Week,
    int Takes,
    int Days,
    double Cleanness,
    double? TempoReached,
    double? Unevenness
);

/// <summary>Something that was practised.</summary>
/// <param name="What">Such as <c>the whole piece</c> or <c>bars 5-12, the left hand alone</c>.</param>
/// <param name="CleanDays">Days in a row, to the last one, with a clean take.</param>
/// <param name="Due">The day on which it comes again.</param>
/// <param name="IsDue">That day has come.</param>
public sealed record ItemReport(
    string What,
    int Takes,
    DateOnly Last,
    int CleanDays,
    double? TempoReached,
    double Cleanness,
    DateOnly Due,
    bool IsDue
);

/// <summary>A player was forgotten.</summary>
/// <param name="Takes">That went too.</param>
/// <param name="Message">What is gone, and what is not.</param>
public sealed record PlayerForgotten(string Name, int Takes, string Message);
