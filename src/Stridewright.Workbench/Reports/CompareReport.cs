using Stridewright.Music;

namespace Stridewright.Workbench.Reports;

/// <summary>What came of hearing a take.</summary>
public enum CompareOutcome
{
    Compared,

    /// <summary>Too little of the take is in the score to say more.</summary>
    AnotherPiece,
    Unreadable,
    BadWish,
    Cancelled,
}

/// <summary>A take heard against a score. The object of <c>compare --json</c>.</summary>
public sealed record CompareReport
{
    public string Kind { get; } = "compare";

    public required CompareOutcome Outcome { get; init; }

    public required string Score { get; init; }

    public required string Take { get; init; }

    /// <summary>Null when score or take could not be read.</summary>
    public HeardTake? Heard { get; init; }

    /// <summary>The whole take in a few sentences.</summary>
    public ValueList<string> Summary { get; init; } = [];

    public ValueList<WrittenFile> Outputs { get; init; } = [];

    public ValueList<Problem> Problems { get; init; } = [];
}

/// <summary>What was heard.</summary>
public sealed record HeardTake
{
    public required string Title { get; init; }

    /// <summary>Notes that were to be played: repeats played out, in the range and hand asked for or heard, of the bars that
    /// were played.</summary>
    public required int Asked { get; init; }

    /// <summary>Notes of the take, those outside of what was to be heard left out.</summary>
    public required int Played { get; init; }

    /// <summary>Notes that were played before, after or between the bars that were to be heard.</summary>
    public int Outside { get; init; }

    /// <summary>Asked notes that were played.</summary>
    public required int Right { get; init; }

    /// <summary>Asked notes for which another key was struck.</summary>
    public required int Wrong { get; init; }

    /// <summary>Of the wrong ones, those that were the right key in another octave.</summary>
    public required int WrongOctave { get; init; }

    /// <summary>Asked notes for which nothing was struck.</summary>
    public required int Missing { get; init; }

    /// <summary>Played notes that stand for none.</summary>
    public required int Extra { get; init; }

    /// <summary>Bars, repeats played out, that were not played at all.</summary>
    public required int BarsNotPlayed { get; init; }

    /// <summary>Times that the player went back or elsewhere.</summary>
    public required int Jumps { get; init; }

    /// <summary><c>left</c> or <c>right</c> where a hand played alone; else null.</summary>
    public string? Alone { get; init; }

    /// <summary>Median tempo; null: too little was played.</summary>
    public double? QuartersPerMinute { get; init; }

    /// <summary>Tempo that the score asks for; null: none.</summary>
    public double? AskedQuartersPerMinute { get; init; }

    /// <summary>Unevenness of the left hand's strokes over two bars, as a share of a stroke; null: too little.</summary>
    public double? LeftUnevenness { get; init; }

    /// <summary>Tempo at the end over that at the beginning, less 1; null: too little.</summary>
    public double? Drift { get; init; }

    public required AnticipationsHeard Anticipations { get; init; }

    public required SwingReport Swing { get; init; }

    public required BalanceReport Balance { get; init; }

    /// <summary>Null: no pedal was used, and none asked for.</summary>
    public PedalReport? Pedal { get; init; }

    /// <summary>Bars in playing order.</summary>
    public ValueList<HeardBarReport> Bars { get; init; } = [];

    /// <summary>The one or two things worth doing next.</summary>
    public ValueList<HeardRemark> Next { get; init; } = [];

    /// <summary>At most three a page, in the order of the score; those of <see cref="Next"/> are among them.</summary>
    public ValueList<HeardRemark> Remarks { get; init; } = [];

    /// <summary>What the readers repaired or left out.</summary>
    public ValueList<Remark> Reading { get; init; } = [];
}

/// <summary>Right-hand notes struck before a beat and held through it.</summary>
/// <param name="MeanShare">Mean lead as a share of the written one: 1 as written, 0 on the beat; null: there are none.</param>
public sealed record AnticipationsHeard(int Count, int Flattened, int TooEarly, double? MeanShare);

/// <summary>Swing, long to short.</summary>
/// <param name="Played">Null: no pairs.</param>
public sealed record SwingReport(double Asked, double? Played, int Pairs);

/// <summary>Mean velocities; null where there is nothing to measure.</summary>
public sealed record BalanceReport(double? Bass, double? Chords, double? Tune);

/// <summary>The sustain pedal.</summary>
/// <param name="Share">Share of the take during which it was down.</param>
/// <param name="Asked">Places at which the score asks for it.</param>
/// <param name="Answered">Of these, those at which it was down.</param>
/// <param name="Blurred">Bars whose new bass is struck into the pedal of the bar before.</param>
public sealed record PedalReport(int Presses, double Share, int Asked, int Answered, int Blurred);

/// <summary>One bar as it is played.</summary>
/// <param name="Bar">Printed number.</param>
public sealed record HeardBarReport(
    string Bar,
    int Right,
    int Wrong,
    int Missing,
    int Extra,
    bool IsPlayed,
    double? QuartersPerMinute
);

/// <summary>One remark on a take.</summary>
/// <param name="Kind">Such as <c>leap</c> or <c>hesitation</c>.</param>
/// <param name="FirstBar">Printed number.</param>
/// <param name="LastBar">Likewise.</param>
/// <param name="Hand"><c>right</c>, <c>left</c> or null.</param>
/// <param name="Measured">In the unit of the limit; a number of notes where there is no limit.</param>
/// <param name="Limit">What it was held against.</param>
public sealed record HeardRemark(
    string Kind,
    string FirstBar,
    string LastBar,
    string? Hand,
    double Measured,
    LimitReport? Limit,
    string Message
);

/// <summary>A limit and where it comes from.</summary>
public sealed record LimitReport(string Words, double Value, string Unit, string Source);
