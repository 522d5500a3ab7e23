using Stridewright.Music;

namespace Stridewright.Workbench.Practising;

/// <summary>A take as it is kept: who played what and when, the keys themselves, and what was heard in them.</summary>
public sealed record KeptTake
{
    /// <summary>Id of the player on the shelf (<see cref="PlayerShelf"/>); null: nobody was named.</summary>
    public string? PlayerId { get; init; }

    /// <summary>As the player was called when it was played; empty where nobody was named.</summary>
    public string PlayerName { get; init; } = "";

    /// <summary>Id of the arrangement on the shelf; null: a score that does not stand there.</summary>
    public string? PieceId { get; init; }

    /// <summary>Title of the score.</summary>
    public required string Title { get; init; }

    /// <summary>The step of a lesson by its name; null: the piece itself.</summary>
    public string? Step { get; init; }

    /// <summary>Bars that were to be played, such as <c>5-12</c>, by their printed numbers; null: all.</summary>
    public string? Range { get; init; }

    /// <summary><c>left</c> or <c>right</c>: the hand that was to be played alone; null: both.</summary>
    public string? Hand { get; init; }

    /// <summary>Not a keyboard, but the rhythm of the hands tapped on two keys against a click.</summary>
    public bool Taps { get; init; }

    /// <summary>When it began, in UTC.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Quarters a minute that were to be played; null: nothing was asked.</summary>
    public double? Tempo { get; init; }

    /// <summary>A Standard MIDI File.</summary>
    public required ValueList<byte> Midi { get; init; }

    /// <summary>Null while it is still being played, or where nothing could be said.</summary>
    public KeptHearing? Heard { get; init; }
}

/// <summary>What was heard in a take, as far as progress is read from it. Numbers are those of a take's report.</summary>
public sealed record KeptHearing
{
    /// <summary>Notes that were to be played, of the bars that were played.</summary>
    public required int Asked { get; init; }

    public required int Right { get; init; }

    public required int Wrong { get; init; }

    public required int Missing { get; init; }

    public required int Extra { get; init; }

    /// <summary>Bars, repeats played out, that were to be played.</summary>
    public required int Bars { get; init; }

    /// <summary>Of these, those that were not played at all.</summary>
    public required int BarsNotPlayed { get; init; }

    /// <summary>Median tempo; null: too little was played.</summary>
    public double? QuartersPerMinute { get; init; }

    /// <summary>Tempo that the score asks for; null: none.</summary>
    public double? AskedQuartersPerMinute { get; init; }

    /// <summary>Unevenness of the left hand's strokes, as a share of a stroke; null: too little.</summary>
    public double? LeftUnevenness { get; init; }

    /// <summary>Tempo at the end over that at the beginning, less 1; null: too little.</summary>
    public double? Drift { get; init; }

    /// <summary>The one or two things worth doing next.</summary>
    public ValueList<KeptNext> Next { get; init; } = [];
}

/// <summary>A thing worth doing next.</summary>
/// <param name="Kind">A remark's, such as <c>leap</c>.</param>
/// <param name="FirstBar">Printed number.</param>
/// <param name="LastBar">Likewise.</param>
public sealed record KeptNext(string Kind, string FirstBar, string LastBar, string Message);

/// <summary>A take on the shelf.</summary>
/// <param name="Id">Its document's.</param>
public sealed record ShelvedTake(string Id, KeptTake Take);

/// <summary>A player on the shelf.</summary>
/// <param name="Id">Its document's.</param>
public sealed record ShelvedPlayer(string Id, string Name);
