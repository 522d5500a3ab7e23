namespace Stridewright.Cli;

/// <summary>The texts of <c>handout</c>.</summary>
internal static class HandoutMessages
{
    public const string Help = """
        Makes a hand-out: bars and items of your choice on exactly one page (PDF, SVG or PNG), or one system as a picture.

        It is printed as large as the page allows; what does not fit is said with what to leave out.

        Examples:
          stridewright handout tune.abc --bars 5-8 --items plain,keyboard,reasons --out lesson.pdf
          stridewright handout tune.stridewright --bars 9-12 --items levels --levels 2,4,6 --pupil Ada --out levels.pdf
          stridewright handout tune.abc --bars 1-4 --one-system --out system.svg

        Exit codes: 0 written; 2 nothing written, or bad arguments; 130 interrupted.
        """;
    public const string FileHelp = "A tune (ABC, MusicXML, MIDI) or an arrangement file";
    public const string TuneHelp = "Which tune of a book, counted from 1";
    public const string BarsHelp = "Bars by their printed numbers, such as 5-8; left out: all";
    public const string ItemsHelp =
        "What stands on it, in this order, with commas: score, plain (the plain tune above the ragged one), hands (each "
        + "apart), levels (below each other), keyboard (a still drawing), reasons, text, staves (empty ones)";
    public const string LevelsHelp = "Which levels, such as 2,4,6; left out: the setting's own and its neighbours";
    public const string KeyboardHelp = "Bars drawn on a keyboard, such as 5,7; left out: the first one";
    public const string StavesHelp = "How many empty systems";
    public const string TextHelp = "Your own words";
    public const string PupilHelp = "Whose page it is; '' leaves a line for the name";
    public const string CreditHelp = "Whom tune and setting are owed to, at the foot";
    public const string FreeHelp = "The tune is free of rights, or yours: leave the caution at the foot out";
    public const string FingeringHelp = "Print fingers at the notes";
    public const string OneSystemHelp = "Only the music, in one system, on a picture of its own size";
    public const string OutHelp = "File to write, ending in .pdf, .svg or .png";

    public static string NotAList(string option, string given) =>
        $"{option} takes whole numbers with commas, such as 2,4: not '{given}'";
}
