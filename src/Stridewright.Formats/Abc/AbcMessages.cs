using System.Globalization;
using Stridewright.Formats.Parts;

namespace Stridewright.Formats.Abc;

/// <summary>What the ABC reader says to its user.</summary>
internal static class AbcMessages
{
    public const string NoTune =
        "there is no tune here: in ABC a tune begins with a line X:1 and has a line K: before its notes";
    public const string NotUtf8 =
        "the text is not UTF-8 and was read as Latin-1; accents in titles and words may be wrong";
    public const string NoReference = "the tune has no X: line; it was read all the same";
    public const string NoTitle = "the tune has no title (T:)";
    public const string NoKey = "the tune has no key (K:); C major was taken";
    public const string NoNotes = "the tune has neither notes nor chord symbols and was left out";
    public const string ChordsOnly = "the tune has chord symbols but no notes";
    public const string OutsideTune =
        "these lines look like music but stand after a blank line, which ends a tune; take the blank line out to have them read";
    public const string NotAHeader = "this line of the header is neither a field nor music and was left out";
    public const string TopNotes = "notes written together were reduced to the top one, which is taken for the tune";
    public const string Overlay = "a second layer of a bar (&) was left out";
    public const string Jumps = "marks such as D.C. and D.S. are not played out; repeats and endings are";
    public const string Macros = "macros (m:) are not expanded";
    public const string MicroTone = "a quarter-tone accidental was read as none";
    public const string DoubledChord = "of two chord symbols at one place the first was taken";
    public const string BrokenWithoutNote = "a < or > has no note of its own before it in its bar and was left out";
    public const string EmptyChord = "brackets [ ] without a note were left out";
    public const string TieToNowhere = "the tie leads to no note of the same pitch and was left out";
    public const string TupletRunsOut = "a tuplet begins before the last one is complete";
    public const string MoreLyrics = "there are more syllables than notes; the rest was left out";
    public const string BadLength = "this length cannot be read; the unit length was taken";
    public const string RoundedLength = "this length is no usual division and was rounded";
    public const string OutOfRange = "this note lies outside the MIDI range and was read as a rest";
    public const string EndingNotClosed = "the ending before this one has no repeat sign; one was taken to stand there";
    public const string BadEnding = "this ending's numbers cannot be read and were left out";
    public const string Transposing =
        "this voice sounds at another pitch than it is written at (transpose=); it was read at sounding pitch";
    public const string MoreFindings = "further findings are not listed";

    public static string TooLarge(int megabytes) =>
        Text($"the input is larger than {megabytes} MB; split it into smaller books");

    public static string TooManyTunes(int most) => Text($"more than {most} tunes; the rest was left out");

    public static string TooManyBars(int most) => Text($"the tune has more than {most} bars; the rest was left out");

    public static string TooManyNotes(int most) =>
        Text($"the bar has more than {most} notes; the rest of it was left out. Is a bar line missing?");

    public static string TooManyVoices(int most) =>
        Text($"the tune has more than {most} voices; the rest was left out");

    public static string TooLongNote(string most) =>
        $"this length is more than {most} whole notes; the unit length was taken";

    public static string BadMetre(string text) =>
        $"the metre M:{Short(text)} cannot be read; the metre before it goes on";

    public static string GuessedMetre(string metre) =>
        $"no metre (M:) is given; by the length of its bars the tune was taken to be in {metre}";

    public static string BadDirective(string name) => $"%%{Short(name)} is not understood and was left out";

    public static string OtherBarNumbers(int numbers, int bars) =>
        Text(
            $"%%{AbcDirectives.BarNumbers} numbers {numbers} bars, but the tune has {bars}; they were counted instead"
        );

    public static string BadUnit(string text) => $"the unit length L:{Short(text)} cannot be read and was left out";

    public static string BadTempo(string text) => $"the tempo Q:{Short(text)} cannot be read and was left out";

    public static string BadKey(string text) => $"the key K:{Short(text)} cannot be read; the key before it goes on";

    public static string BadOrder(string text) =>
        $"the order of parts '{Short(text)}' cannot be read; the parts stand as written";

    public static string UnknownPart(string name) =>
        $"the order of parts names '{Short(name)}', but no part has that name; it was passed over";

    public static string NoChordSymbol(string text) =>
        $"\"{Short(text)}\" is no chord symbol and was taken for a remark";

    public static string NotClosed(string what) => $"{what} is opened but not closed on its line";

    public static string NotUnderstood(string what) => $"{Short(what)} is not understood here and was left out";

    public static string BadTuplet(string text) => $"the tuplet {Short(text)} cannot be read and was left out";

    public const string AsAsked = "as asked for";

    public static string TuneVoice(PartLabel taken, string why, IReadOnlyList<PartLabel> voices) =>
        Text(
            $"of {voices.Count} voices ({Short(PartChoice.List(voices), 400)}), {Short(taken.ToString())} was read as the tune, {why}"
        );

    public static string NoSuchVoice(string asked, IReadOnlyList<PartLabel> voices) =>
        $"there is no voice '{Short(asked)}'; there "
        + (
            voices.Count > 1
                ? $"are {Short(PartChoice.List(voices), 400)}"
                : $"is only {Short(PartChoice.List(voices))}"
        );

    public static string SilentVoice(PartLabel voice) =>
        $"voice {Short(voice.ToString())} has neither notes nor chord symbols, only rests";

    public static string ChordsFrom(PartLabel voice) =>
        $"the chord symbols were taken from voice {Short(voice.ToString())}";

    public static string BadProperty(string text) =>
        $"{Short(text)} cannot be read and was left out: octave= goes from -4 to 4, transpose= from -48 to 48";

    public static string NoNotesAfter(string fault) => $"{fault}; the tune has no notes left and was left out";

    public static string ShortBar(string holds, string due) =>
        $"the bar holds {holds} where {due} is due; it was filled up with silence";

    public static string ShortBarKept(string holds, string due) =>
        $"the bar holds {holds} where {due} is due, and no short bar across the repeat or double bar completes it; it was kept";

    public static string LongBar(string holds, string due) =>
        $"the bar holds {holds} where {due} is due; it was kept as long as it is";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    // Input is quoted in one line, without control characters and at no great length.
    private static string Short(string text, int most = 40)
    {
        var clean = string.Concat(text.Take(most).Select(c => char.IsControl(c) || char.IsSurrogate(c) ? '?' : c));
        return text.Length > most ? clean + "…" : clean;
    }
}
