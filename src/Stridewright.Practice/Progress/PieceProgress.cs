using Stridewright.Music;

namespace Stridewright.Practice.Progress;

/// <summary>One piece as one player has come on with it.</summary>
/// <param name="Piece">The same for all takes of a piece.</param>
/// <param name="Title">As the last take called it.</param>
/// <param name="First">Day of the first take.</param>
/// <param name="Last">Day of the last take.</param>
/// <param name="Takes">How many.</param>
/// <param name="TempoReached">Quarters a minute of the fastest clean take of the whole piece; null: there is none.</param>
/// <param name="AskedTempo">Of the score, as the last take had it; null: none.</param>
/// <param name="Weeks">Weeks with takes, the earliest first.</param>
/// <param name="Items">What was practised of it, the piece itself first, then the one that is due first.</param>
public sealed record PieceProgress(
    string Piece,
    string Title,
    DateOnly First,
    DateOnly Last,
    int Takes,
    double? TempoReached,
    double? AskedTempo,
    ValueList<WeekProgress> Weeks,
    ValueList<ItemProgress> Items
);

/// <summary>One week of a piece, from Monday (ISO 8601).</summary>
/// <param name="Days">Days with takes.</param>
/// <param name="Cleanness">Median of its takes, 0 to 1.</param>
/// <param name="TempoReached">Quarters a minute of its fastest clean take of the whole piece; null: there is none.</param>
/// <param name="Unevenness">Median of the left hand's, as a share of a stroke; null: nothing was measured.</param>
public sealed record WeekProgress(
    DateOnly Monday,
    int Takes,
    int Days,
    double Cleanness,
    double? TempoReached,
    double? Unevenness
);

/// <summary>Something that was practised, and when it is due again.</summary>
/// <param name="CleanDays">Days in a row, to the last one, that had a clean take of it.</param>
/// <param name="TempoReached">Quarters a minute of its fastest clean take; null: there is none.</param>
/// <param name="Cleanness">Of its last take, 0 to 1.</param>
/// <param name="Due">The day on which it comes again.</param>
/// <param name="IsDue">That day has come, and it was not left aside for long.</param>
public sealed record ItemProgress(
    PracticeItem Item,
    int Takes,
    DateOnly Last,
    int CleanDays,
    double? TempoReached,
    double Cleanness,
    DateOnly Due,
    bool IsDue
);
