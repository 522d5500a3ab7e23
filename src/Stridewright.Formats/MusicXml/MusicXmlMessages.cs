using Stridewright.Formats.Parts;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>Every sentence of the MusicXML reader: what is the matter and what was, or can be, done.</summary>
internal static class MusicXmlMessages
{
    private const string Megabytes = "16 MB";

    // The file as a whole.
    public const string Empty = "the file is empty";
    public const string TooLarge =
        "the file is larger than a tune or piano score can be ("
        + Megabytes
        + ", 400000 elements, 64 levels); nothing was read";
    public const string NotText = "the file is not text in the encoding that it states; export it again as UTF-8";
    public const string BrokenZip = "the compressed file is damaged; export it again, or export it uncompressed";
    public const string TooManyEntries = "the compressed file holds more than 1000 files; nothing was read";
    public const string InflatesTooFar = "the compressed file swells to over 200 times its size; nothing was read";
    public const string NoScoreInZip = "the compressed file holds no .xml or .musicxml score";

    public static string ContainerIgnored(string entry) =>
        $"META-INF/container.xml is missing or broken; the first score, '{entry}', is read";

    public static string WrongRoot(string root) =>
        $"the document is <{root}>, not a score: MusicXML begins with <score-partwise> or <score-timewise>";

    public static string MoreFindings(int count) => $"{count} more findings are not listed";

    /// <summary>A sentence for a fault that the XML parser reports in its own words.</summary>
    public static string NotWellFormed(string parserText)
    {
        var tail = parserText.LastIndexOf(" Line ", StringComparison.Ordinal);
        var fault = (tail > 0 ? parserText[..tail] : parserText).Trim();
        if (fault.Contains("undeclared entity", StringComparison.Ordinal))
        {
            var name = fault.Split('\'') is { Length: >= 3 } parts ? $"&{parts[1]};" : "an entity";
            return $"{name} is not defined: a score may not use entities of its own, replace it with its text";
        }
        if (fault.Contains("Unexpected end of file", StringComparison.Ordinal))
        {
            return "the file ends in the middle of the score; it was cut off, export or copy it again";
        }
        if (fault.Contains("MaxCharacters", StringComparison.Ordinal))
        {
            return TooLarge;
        }
        return $"the XML is not well-formed: {fault}";
    }

    // What can be read at all.
    public const string NoNotes = "there are neither notes nor chord symbols, only rests";
    public const string TooManyBars = "there are more than 10000 bars; the rest is left out";

    public const string LeftHandOnly = "one staff in the bass clef is read as the left hand alone";

    public static string NotTwoStaves(int parts) =>
        parts == 1
            ? "the music stands on one staff, as in a lead sheet; a piano score has two, and a left hand alone is in the bass clef"
            : $"{parts} parts of one staff each are no piano score; leave a part of two staves, or two parts of one";

    public static string TwoParts(string right, string left) =>
        $"part '{right}' is taken for the right hand, part '{left}' for the left";

    public static string ScorePart(string name, int parts) =>
        $"of {parts} parts, '{name}' is read, the first on two staves";

    public const string MoreThanTwoStaves = "there are more than two staves; the left hand takes all below the first";

    public const string OnlyPercussion = "the only notes are those of percussion; there is no tune to read";

    public static string TunePart(PartLabel taken, string why, IReadOnlyList<PartLabel> parts) =>
        $"of {parts.Count} parts ({PartChoice.List(parts)}), {taken} is read as the tune, {why}";

    public const string AsAsked = "as asked for";

    public static string NoSuchPart(string asked, IReadOnlyList<PartLabel> parts) =>
        $"there is no part '{Element.Clean(asked)}'; there "
        + (parts.Count == 1 ? $"is only {parts[0]}" : $"are {PartChoice.List(parts)}");

    public static string NoSuchVoice(string asked, PartLabel part, IReadOnlyList<string> voices) =>
        $"part {part} has no voice '{Element.Clean(asked)}' with notes; "
        + (voices.Count == 1 ? $"it has only {voices[0]}" : $"it has {PartChoice.List(voices)}");

    public static string SilentPart(PartLabel part) => $"part {part} has neither notes nor chord symbols, only rests";

    public static string TuneVoice(string voice, int staff, IReadOnlyList<string> voices) =>
        $"there are several voices ({PartChoice.List(voices)}); the tune is read from voice {voice} of staff {staff}";

    public static string ChordsFrom(string name) => $"the chord symbols are taken from part '{name}'";

    // Key, metre, bars.
    public static string NoTime(Metre metre) => $"no time signature; {metre} is assumed from the length of the bars";

    public const string SenzaMisura = "without metre (senza misura); each bar is as long as what it holds";

    public static string NoKey(Key key) => $"no key signature; {key} is assumed, which holds most of the notes";

    public static string BadTime(string? beats, string? types) =>
        $"time signature '{beats}/{types}' makes no sense; the metre before it goes on";

    public static string BadKey(string? text) =>
        $"key signature of '{text}' fifths makes no sense; the key before it goes on";

    public const string OddKey = "the key signature is not of sharps or flats in order; the key before it goes on";
    public const string BadTranspose = "the transposition makes no sense; pitches are taken as written";
    public const string TransposedConcertScore =
        "a score at sounding pitch (concert-score) has a transposition; pitches are taken as written";
    public const string Transposing = "written for a transposing instrument; read at sounding pitch";
    public const string KeyChangesInsideBar = "the key changes inside the bar; the new key counts from the next bar";
    public const string MetreChangesInsideBar =
        "the metre changes inside the bar; the new metre counts from the next bar";

    public static string BarOverfull(ScoreTime holds, Metre metre) =>
        $"the bar holds {holds} of a whole note where {metre} has {metre.BarLength}; it keeps what it holds";

    public static string BarPadded(ScoreTime holds, Metre metre) =>
        $"the bar holds {holds} of a whole note where {metre} has {metre.BarLength}; silence fills it up";

    // Time inside a bar.
    public static string BadDivisions(string? text) =>
        $"'{text}' is no number of divisions of a quarter note (above 0, at most 1000000); the one before it stays";

    public const string LengthRounded = "lengths in this bar fit no common grid with the others; they are rounded";
    public const string BarTooLong = "the bar grows longer than 64 whole notes; the note is left out";
    public const string MoveOutOfBar = "a backup or forward leads out of the bar; it is cut short";

    public static string BadMove(string? text) =>
        $"'{text}' is no length for a backup or forward; it is left out, what follows may stand at the wrong place";

    public static string NoteWithoutLength(string? text) =>
        $"duration '{text}' is no length and no note value is printed; the note is left out";

    public static string PrintedLengthUsed(string? text) =>
        $"duration '{text}' is no length; the printed note value is used";

    public static string BadOffset(string? text) => $"offset '{text}' is no length; it is left out";

    public const string OffsetBeforeBar = "an offset leads before the bar; its start is used";

    // Notes.
    public static string BadPitch(string? step, string? octave) =>
        $"step '{step}', octave '{octave}' is no note of a keyboard; it is read as a rest";

    public static string BadAlteration(string? text) => $"alteration '{text}' makes no sense; none is read";

    public const string QuarterTone = "a piano has no quarter tones; the alteration is rounded";
    public const string ChordWithoutNote = "a chord note without a note before it; it is read on its own";
    public const string NotesOverlap = "the next note of the line begins before this one ends; it is cut short";
    public const string GraceWithoutNote = "grace notes with no note after them are left out";
    public const string TieWithoutEnd = "the tie ends on no note of the same pitch; it is dropped";
    public const string TieWithoutStart = "the tie comes from no note of the same pitch; it is dropped";
    public const string TooManyLines = "too many notes overlap in one voice; this one is left out";

    // Chord symbols.
    public const string HarmonyWithoutRoot = "the chord symbol names no root (letter A to G); it is left out";
    public const string OnlyFirstOfHarmony = "the chord symbol holds several chords; the first is read";
    public const string BadDegree =
        "a degree of the chord symbol needs a value from 1 to 13 and add, alter or subtract; it is left out";
    public const string ChordMovedToNextBar = "the chord symbol stands after the end of its bar; it opens the next one";
    public const string ChordOutsideBar = "the chord symbol stands after the end of its bar; it is left out";
    public const string ChordRepeatedAtNextNote =
        "the chord symbol is written here and again at the next note; it is read there";
    public const string ChordsShareNote = "several chord symbols at one place; they share the time to the next note";

    public static string UnknownKind(string? kind) =>
        kind is null
            ? "the chord symbol has no kind; a major chord is read"
            : $"chord kind '{kind}' is not known; only its root is read";

    // Form and directions.
    public const string RepeatInsideBar = "a repeat inside a bar cannot be followed; it is left out";
    public const string RepeatNotClosed = "the repeat that begins here is never closed";
    public const string EndingReachesRepeat =
        "the ending before this bar is closed too early; it is taken to reach the repeat sign here";
    public const string EndingReachesNextRepeat =
        "the ending that begins here is never closed; it is taken to reach the next repeat";
    public const string EndingNotClosed = "the ending that begins here is never closed; it is taken as one bar";
    public const string EndingTwice = "this ending has a number that another one beside it has too";

    public static string EndingWithoutNumber(string? text) => $"ending '{text}' names no time through; it is left out";

    public static string BadTimes(string? text) => $"'{text}' is no number of times to play; two is read";

    public static string BadTempo(string? text) => $"tempo '{text}' makes no sense; it is left out";

    private const string NotFollowed = " is not followed; bars are read in written order";

    public static string JumpNotFollowed(string name) => $"'{name}'{NotFollowed}";

    public static bool IsJump(string message) => message.EndsWith(NotFollowed, StringComparison.Ordinal);
}
