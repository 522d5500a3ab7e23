using Stridewright.Music;

namespace Stridewright.Practice.Listening.Reporting;

/// <summary>What was heard in one bar as it is played; a bar that was come through more than once holds all of it.</summary>
/// <param name="Index">Among the bars in playing order.</param>
/// <param name="Number">Printed number.</param>
/// <param name="Asked">Notes that it asks for; 0 where the hand that did not play has all of them.</param>
/// <param name="Right">Of these, notes that were played.</param>
/// <param name="Wrong">Of these, those for which another key was struck.</param>
/// <param name="WrongOctave">Of the wrong ones, those that were the right key in another octave.</param>
/// <param name="Missing">Of these, those for which nothing was struck.</param>
/// <param name="Extra">Played notes that stand for none.</param>
/// <param name="QuartersPerMinute">Tempo; null: too little was played.</param>
public sealed record HeardBar(
    int Index,
    string Number,
    int Asked,
    int Right,
    int Wrong,
    int WrongOctave,
    int Missing,
    int Extra,
    double? QuartersPerMinute
)
{
    /// <summary>The player came through it.</summary>
    public bool IsPlayed => Right + Wrong > 0;
}

/// <summary>The left hand's beat.</summary>
/// <param name="Unevenness">Standard deviation of its steps about their slow trend, as a share of a step, over two bars:
/// the median of all such stretches; null: too little was played.</param>
/// <param name="Drift">Tempo at the end over that at the beginning by its slow trend, less 1; positive: faster.</param>
public sealed record LeftHandBeat(double? Unevenness, double? Drift);

/// <summary>Where the right hand's anticipations stand against the left hand's beat.</summary>
/// <param name="Count">Anticipations that could be measured.</param>
/// <param name="Flattened">Of these, those nearer the beat than their written place.</param>
/// <param name="TooEarly">Of these, those that come much earlier than written.</param>
/// <param name="MeanShare">Mean lead before the beat as a share of the written lead: 1 as written, 0 on the beat.</param>
public sealed record Ragging(int Count, int Flattened, int TooEarly, double? MeanShare);

/// <summary>Swung pairs.</summary>
/// <param name="Asked">Long to short as asked; 1: straight.</param>
/// <param name="Played">Median of the played pairs; null: there are none.</param>
public sealed record SwingHeard(double Asked, double? Played, int Pairs);

/// <summary>Mean velocities, 1 to 127; null: none was played.</summary>
public sealed record BalanceHeard(double? Bass, double? Chords, double? Tune);

/// <summary>The sustain pedal.</summary>
/// <param name="Presses">How often it was pressed.</param>
/// <param name="Share">Share of the take during which it was down, 0 to 1.</param>
/// <param name="Asked">Places at which the score asks for it, where they were played.</param>
/// <param name="Answered">Of these, those at which it was down.</param>
/// <param name="Blurred">Indexes of bars with a new bass that is struck into the pedal of the bar before.</param>
public sealed record PedalHeard(int Presses, double Share, int Asked, int Answered, ValueList<int> Blurred);

/// <summary>Something to be said about a spot.</summary>
public enum RemarkKind
{
    WrongNotes,
    MissingNotes,
    ExtraNotes,
    Leap,
    Unevenness,
    Drift,
    Flattened,
    TooEarly,
    Swing,
    Spread,
    Hesitation,
    Balance,
    Pedal,
}

/// <summary>One remark.</summary>
/// <param name="FirstBar">Index among the bars in playing order.</param>
/// <param name="LastBar">Likewise; the same for a single bar.</param>
/// <param name="Hand">The hand it is about; null: both or either.</param>
/// <param name="Measured">In the unit of the limit.</param>
/// <param name="Limit">What it was held against; null for notes.</param>
/// <param name="Weight">How much it matters against others.</param>
/// <param name="Message">In a musician's words.</param>
public sealed record TakeRemark(
    RemarkKind Kind,
    int FirstBar,
    int LastBar,
    Hand? Hand,
    double Measured,
    Threshold? Limit,
    double Weight,
    string Message
);

/// <summary>What was heard in a take, by bar and over all.</summary>
public sealed record TakeReport
{
    /// <summary>Too little of the take is in the score; then nothing else is said.</summary>
    public required bool IsAnotherPiece { get; init; }

    /// <summary>The hand that played alone; null: both, or neither.</summary>
    public Hand? Alone { get; init; }

    public required ValueList<HeardBar> Bars { get; init; }

    public required LeftHandBeat LeftHand { get; init; }

    public required Ragging Ragging { get; init; }

    public required SwingHeard Swing { get; init; }

    public required BalanceHeard Balance { get; init; }

    /// <summary>Median tempo; null: too little was played.</summary>
    public double? QuartersPerMinute { get; init; }

    /// <summary>Tempo that the score asks for where the take begins; null: none.</summary>
    public double? AskedQuartersPerMinute { get; init; }

    /// <summary>Times that the player went back or elsewhere.</summary>
    public required int Jumps { get; init; }

    /// <summary>Null: it was neither used nor asked for.</summary>
    public PedalHeard? Pedal { get; init; }

    /// <summary>Every fault at its note, in the order of the score.</summary>
    public ValueList<TakeMark> Marks { get; init; } = [];

    /// <summary>When each stroke came.</summary>
    public ValueList<TimingPoint> Timing { get; init; } = [];

    /// <summary>All that is worth a remark, in the order of the score.</summary>
    public ValueList<TakeRemark> All { get; init; } = [];

    /// <summary>Of these what is told: at most three a page, in the order of the score.</summary>
    public ValueList<TakeRemark> Remarks { get; init; } = [];

    /// <summary>Of these the one or two things worth doing next.</summary>
    public ValueList<TakeRemark> Next { get; init; } = [];
}
