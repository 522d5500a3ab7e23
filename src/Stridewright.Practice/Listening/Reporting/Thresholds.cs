namespace Stridewright.Practice.Listening.Reporting;

/// <summary>One limit from which something is worth a remark.</summary>
/// <param name="Source">Where it comes from.</param>
public sealed record Threshold(string Words, double Value, string Unit, string Source);

/// <summary>
/// All limits of what a teacher would remark on. What can just be perceived is far less, and professionals exceed that in
/// every bar: onsets moved by 6 ms or 2.5 % are noticed (Friberg and Sundberg 1995), a melody leads by about 30 ms (Goebl
/// 2001).
/// </summary>
public static class Thresholds
{
    private const string Common = "common practice";

    public static readonly Threshold Unevenness = new(
        "unevenness of the left hand across two bars",
        0.08,
        "share of a stroke",
        Common
    );

    public static readonly Threshold Drift = new(
        "tempo at the end against that at the beginning, by its slow trend",
        0.06,
        "share",
        "common practice; a single interval 6 % longer is just noticed (Drake and Botte 1993)"
    );

    public static readonly Threshold Hesitation = new(
        "a step that lasts longer than its neighbours",
        0.3,
        "beats",
        Common
    );

    public static readonly Threshold Spread = new("a chord that is not together", 0.06, "seconds", Common);

    public static readonly Threshold Flattened = new(
        "an anticipation nearer its beat than its written place",
        0.5,
        "share of its written lead",
        Common
    );

    public static readonly Threshold TooEarly = new(
        "an anticipation too early",
        1.6,
        "share of its written lead",
        Common
    );

    public static readonly Threshold SwingOff = new(
        "swing ratio against what is asked, longer to shorter",
        1.35,
        "times",
        "common practice; the ratio changes gradually with the tempo (Friberg and Sundstrom 2002)"
    );

    public static readonly Threshold SwingKept = new(
        "ratios outside 1:4 to 4:1, which are no swung pair",
        4,
        "times",
        "the usual limit for outliers among beat-upbeat ratios"
    );

    public static readonly Threshold Leap = new("a leap", 12, "semitones", Common);

    public static readonly Threshold Balance = new(
        "off-beat chords louder than the tune above them",
        4,
        "steps of MIDI velocity",
        Common
    );

    public static readonly Threshold Blurred = new(
        "pedal held before and after a new bass",
        0.5,
        "quarters on either side",
        Common
    );

    public static readonly Threshold AnotherPiece = new(
        "notes of the take that are the score's, less those that jumps cost, below which it is another piece",
        0.55,
        "share",
        "measured: takes of other tunes in the same style reach 0.50 at most"
    );

    public static readonly Threshold NotesAJump = new("what a jump costs of those", 6, "notes", "as above");

    public static readonly Threshold WholePiece = new(
        "notes of the score that were played, from which it is never another piece",
        0.8,
        "share",
        Common
    );

    public static readonly Threshold HandAlone = new(
        "notes of a hand that were played, below which it did not play",
        0.1,
        "share",
        Common
    );

    /// <summary>Bars that make a page of music, on which at most <see cref="RemarksAPage"/> remarks stand.</summary>
    public static readonly Threshold BarsAPage = new("bars of a page", 24, "bars", Common);

    public static readonly Threshold RemarksAPage = new("remarks of a page", 3, "remarks", Common);

    public static readonly Threshold Next = new("things to do next", 2, "remarks", Common);

    public static IReadOnlyList<Threshold> All { get; } =
    [
        Unevenness,
        Drift,
        Hesitation,
        Spread,
        Flattened,
        TooEarly,
        SwingOff,
        SwingKept,
        Leap,
        Balance,
        Blurred,
        AnotherPiece,
        NotesAJump,
        WholePiece,
        HandAlone,
        BarsAPage,
        RemarksAPage,
        Next,
    ];
}
