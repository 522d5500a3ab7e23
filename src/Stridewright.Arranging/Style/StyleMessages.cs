namespace Stridewright.Arranging;

/// <summary>The figures of style in a musician's words.</summary>
internal static class StyleMessages
{
    public const string SyncopationSection = "Syncopation";
    public const string PatternSection = "Rhythms of the right hand (x a stroke)";
    public const string ReturnSection = "Rhythms that return";
    public const string RegisterSection = "Where the right hand lies";
    public const string TextureSection = "How thick the right hand is";
    public const string StrideSection = "What the left hand does";
    public const string LeftRegisterSection = "Where the left hand lies";
    public const string Untied = "bars with short-long-short inside a half bar";
    public const string TiedMid = "bars with short-long-short tied over mid-bar";
    public const string TiedBar = "bars with short-long-short tied over the bar line";
    public const string AnyFigure = "bars with short-long-short of any kind";
    public const string Augmented = "bars with it in doubled values";
    public const string Held = "bars with a weak note held through the next stroke";
    public const string Syncopation = "strength of syncopation a bar (Longuet-Higgins and Lee)";
    public const string Chance = "bars alike by chance";
    public const string Top = "right hand, top note";
    public const string Lowest = "right hand, lowest note";
    public const string Bass = "bass notes";
    public const string ChordLow = "off-beat chords, lowest note";
    public const string ChordHigh = "off-beat chords, highest note";
    public const string LeapUp = "leap from bass to chord, lowest to lowest";
    public const string Strict = "bars of strict stride";
    public const string Loose = "bars of stride, loosely";

    public const string Distinct = "different rhythms in sixteen bars";
    public const string TopStep = "from top note to top note";
    public const string ChordSpan = "off-beat chords, lowest to highest";
    public const string ChordsAlike = "bars whose two off-beat chords are the same";
    public const string LeftOverOctave = "left hand wider than an octave";

    public static string Again(int bars) => bars == 1 ? "rhythm again in the next bar" : $"rhythm again {bars} bars on";

    public static string HalfBar(string pattern) => $"half bars {Strokes(pattern)}";

    public static string FirstHalf(string pattern) => $"first halves {Strokes(pattern)}";

    public static string SecondHalf(string pattern) => $"second halves {Strokes(pattern)}";

    public static string WholeBar(string pattern) => $"bars {Strokes(pattern[..4])} {Strokes(pattern[4..])}";

    public static string LeftBar(string pattern) =>
        pattern switch
        {
            "10101010" => "left hand strikes all four strokes",
            "10101000" => "left hand strikes three and rests",
            "10001000" => "left hand strikes the two beats only",
            _ => $"left hand strikes {Strokes(pattern[..4])} {Strokes(pattern[4..])}",
        };

    public static string AtPlace(int place) => $"place {place} of 8: single, two, octave, full octave, more";

    public static string OnBeat(string kind) => $"on the beats: {LeftKindOf(kind)}";

    public static string OffBeat(string kind) => $"off the beats: {LeftKindOf(kind)}";

    public static string SecondBass(int semitones) =>
        semitones switch
        {
            0 => "second bass of the bar: the same again",
            > 0 => FormattableString.Invariant($"second bass of the bar: {Interval(semitones)} higher"),
            _ => FormattableString.Invariant($"second bass of the bar: {Interval(-semitones)} lower"),
        };

    public static string NextBass(string kind) =>
        "to the next bar's bass: "
        + kind switch
        {
            "fourth_fifth" => "a fourth or fifth",
            "step" => "a step",
            "same" => "the same",
            "octave" => "an octave",
            _ => "another interval",
        };

    // x struck, . not: read like a line of a drum part.
    private static string Strokes(string pattern) => pattern.Replace('1', 'x').Replace('0', '.');

    private static string LeftKindOf(string kind) =>
        kind switch
        {
            "octave" => "an octave",
            "single" => "a single note",
            "tenth" => "a tenth",
            "two_note" => "two notes",
            "three_note" => "three notes",
            "none" => "nothing",
            _ => "four notes or more",
        };

    private static string Interval(int semitones) =>
        semitones switch
        {
            1 => "a semitone",
            2 => "a tone",
            3 => "a minor third",
            4 => "a major third",
            5 => "a fourth",
            6 => "a tritone",
            7 => "a fifth",
            8 => "a minor sixth",
            9 => "a major sixth",
            10 => "a minor seventh",
            11 => "a major seventh",
            12 => "an octave",
            _ => FormattableString.Invariant($"{semitones} semitones"),
        };

    public static string Texture(string kind) =>
        kind switch
        {
            "single" => "single notes",
            "two_note" => "two notes under an octave",
            "octave" => "bare octaves",
            "octave_inner" => "octaves with inner notes",
            "block" => "three or more notes under an octave",
            _ => "wider than an octave",
        };

    public static string Stays(string kind) => $"{Texture(kind)}, and again";
}
