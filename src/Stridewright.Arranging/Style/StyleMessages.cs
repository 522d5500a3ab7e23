namespace Stridewright.Arranging;

/// <summary>The figures of style in a musician's words.</summary>
internal static class StyleMessages
{
    public const string Untied = "bars with short-long-short inside a half bar";
    public const string TiedMid = "bars with short-long-short tied over mid-bar";
    public const string TiedBar = "bars with short-long-short tied over the bar line";
    public const string AnyFigure = "bars with short-long-short of any kind";
    public const string Augmented = "bars with it in doubled values";
    public const string Held = "bars with a weak note held through the next stroke";
    public const string Syncopation = "strength of syncopation a bar (LHL, consecutive)";
    public const string Chance = "bars alike by chance";
    public const string Top = "right hand, top note";
    public const string Lowest = "right hand, lowest note";
    public const string Bass = "bass notes";
    public const string ChordLow = "off-beat chords, lowest note";
    public const string ChordHigh = "off-beat chords, highest note";
    public const string LeapUp = "leap from bass to chord, lowest to lowest";
    public const string Strict = "bars of strict stride";
    public const string Loose = "bars of stride, loosely";

    public static string Again(int bars) => bars == 1 ? "rhythm again in the next bar" : $"rhythm again {bars} bars on";

    public static string HalfBar(string pattern) => $"half bars {pattern} (1 struck, 0 not)";

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

    public static string Stays(string kind) => $"{Texture(kind)}, followed by the same";
}
