using System.Globalization;
using Stridewright.Arranging;
using Stridewright.Engraving;
using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>Every sentence this project says to a person.</summary>
internal static partial class WorkbenchMessages
{
    public const string NothingNamed =
        "no file is named: give a tune in ABC, MusicXML or MIDI, or a folder of them; or chords, as --chords 'F | D7 | G7 C7 | F'";
    public const string TunesAndChords = "give either tunes or a line of chords, not both";
    public const string TitleOfChords = "a title is given to a line of chords only: tunes have their own";
    public const string OneKeyOfAll = "all twelve keys are asked for: leave the key out";
    public const string LeftHandTitle = "Left hand";

    /// <summary>What a line of chords is called in messages and reports.</summary>
    public const string ChordsName = "chords";

    /// <summary>What typed ABC is called, and files made of a tune without words in its title.</summary>
    public const string TypedName = "typed",
        UntitledName = "setting";
    public const string Busy = "more is asked for at once than can be done: ask again in a moment";
    public const string NoArrangement = "this is no arrangement: keep the setting as one of its own";
    public const string NoEvent =
        "this is nothing that a keyboard tells: give seconds from the start, and a key and its velocity, or the pedal";
    public const string TappedStep = "the rhythm, tapped";
    public const string NothingPlayed = "nothing was played in this take";

    public static string TakeTooLong(int most) =>
        FormattableString.Invariant($"a take holds {most} strokes and releases: end this one and begin another");

    public const string NoTake = "there is no such take";
    public const string NoPlayer = "there is no such player";
    public const string NotAPlayer = "this is no player: choose one from the shelf";
    public const string OtherKind = "on the shelf this is something else: keep it as one of its own";

    public static string NoHandsWord(string word) =>
        $"nothing is said of hands by '{Quoted.Short(word)}': see docs/player-file.md";

    public static string NoChordHere(string word) =>
        $"'{Quoted.Short(word)}' is no chord of this bar: write symbols such as F C7, or with a place, C7@3/8";

    public static string NoKey(string text) => $"'{Quoted.Short(text)}' is no key: write one such as F, Bb or Dm";

    public static string NoMetre(string text) => $"'{Quoted.Short(text)}' is no metre: write one such as 2/4 or 6/8";

    public static string NoPickUp(string text) =>
        $"'{Quoted.Short(text)}' is no pick-up: write its length as a part of a whole note, shorter than a bar, such as 1/8; 0 for none";

    public static string NoCorrection(string action) =>
        $"a tune is not corrected by '{Quoted.Short(action)}': notes, chords, key, metre or pick-up";

    public static string NotesOverlap(string pitch, bool isLast) =>
        isLast
            ? $"{pitch} runs over the bar line: shorten it, and tie it to the next bar there"
            : $"{pitch} runs into the next note: a tune is one line, shorten it";

    public const string NotForTheDesk = "only tunes and arrangements can be put on the desk";
    public const string NotFound = "there is no such file or folder: check the name";
    public const string EmptyFile = "the file is empty: give a tune in ABC, MusicXML or MIDI";
    public const string UnknownKind =
        "this is neither ABC nor MusicXML nor MIDI: give a tune as .abc, .musicxml, .xml, .mxl or .mid";
    public const string AbcToCheck = "ABC holds a tune, not a two-staff score: give the score as MusicXML";
    public const string NotAScore = "this is no MusicXML score: give one as .musicxml, .xml or .mxl";
    public const string NotATake = "this is no MIDI file: give the take as .mid";

    public static string AnotherPiece(string title, int right, int played) =>
        FormattableString.Invariant(
            $"{right} of its {played} notes are found in '{title}', and those only here and there: it seems to be another piece"
        );

    public static string NoSuchRange(string range, string first, string last) =>
        $"'{range}' is no range of bars: give printed numbers such as 5-12, from {first} to {last}";

    public const string TheSetting = "The setting",
        PlainAbove = "The plain tune above, the ragged one below",
        LevelsBeside = "Level by level",
        OnTheKeyboard = "On the keyboard",
        WhyItIsSo = "Why it is so",
        YourOwn = "Your own",
        MiddleC = "middle C",
        NothingToTell = "nothing in these bars is out of the way";

    public const string NoOwnText = "own words are wanted and there are none: give some, or leave 'text' out";
    public const string NoPlainTune = "there is no tune here, only chords: leave 'plain' out";
    public const string NoMusicForSystem = "one system needs music: name score, plain, hands or levels among the items";

    public static string Capital(string sentence) =>
        sentence.Length == 0 ? "" : char.ToUpperInvariant(sentence[0]) + sentence[1..];

    public static string BarsOf((string First, string Last) ends) =>
        ends.First == ends.Last ? $"bar {ends.First}" : $"bars {ends.First}–{ends.Last}";

    public static string AtLevel(int level) => FormattableString.Invariant($"level {level}");

    public static string OtherBarsAtLevel(int level) =>
        FormattableString.Invariant(
            $"level {level} has other bars than this setting: give a form, so that all share it"
        );

    public static string ItemRefused(string item, string why) => $"'{item}' cannot be had here: {why}";

    public static string NoSuchItem(string item, IEnumerable<string> items) =>
        $"'{item}' is nothing for a hand-out: choose among {string.Join(", ", items)}";

    public static string NothingStruck(string bar) => $"nothing is struck in bar {bar}: draw another one";

    public static string Staves(int most) => FormattableString.Invariant($"give 1 to {most} empty systems");

    public static string Keyboards(int most) => FormattableString.Invariant($"draw at most {most} bars on a keyboard");

    public static string TooManyWords(int most) => FormattableString.Invariant($"give at most {most} characters");

    public static string WhichTune(int count) =>
        FormattableString.Invariant($"the book has {count} tunes: say which, as --tune 1");

    public static string LongSystem(int bars, int most) =>
        FormattableString.Invariant($"{bars} bars are too many for one system: take at most {most}");

    public static string KeyboardCaption(string bar, string? chord) =>
        chord is null ? $"Bar {bar}" : $"Bar {bar}, {Printed(chord)}";

    public static string KeyboardKey(bool hasFirst, bool hasLeft, bool hasRight)
    {
        var left = hasFirst ? "Squares: the left hand, first the solid, then the hollow. " : "Squares: the left hand. ";
        return $"{(hasLeft ? left : "")}{(hasRight ? "Rings: the right hand. " : "")}The numbers are fingers.";
    }

    // A chord symbol with the signs of print.
    private static string Printed(string chord) =>
        string.Concat(
            chord.Select(
                (c, i) =>
                    c == '#' ? '♯'
                    : c == 'b'
                    && i > 0
                    && (
                        char.IsAsciiLetterUpper(chord[i - 1]) || i + 1 < chord.Length && char.IsAsciiDigit(chord[i + 1])
                    )
                        ? '♭'
                    : c
            )
        );

    /// <summary>What to leave out: one part that makes room enough, else as few as do.</summary>
    public static string TooMuch(double over, ValueList<HandoutRoom> rooms)
    {
        var parts = rooms
            .GroupBy(r => r.Name)
            .Select(g => (Name: g.Key, Height: g.Sum(r => r.Height)))
            .OrderBy(p => p.Height)
            .ToList();
        static string Of((string Name, double Height) part) =>
            FormattableString.Invariant($"{part.Name} ({part.Height:0} mm)");
        var single = parts.Where(p => p.Height >= over).Take(2).Select(Of).ToList();
        var several = new List<(string Name, double Height)>();
        foreach (var part in parts.AsEnumerable().Reverse().TakeWhile(_ => several.Sum(p => p.Height) < over))
        {
            several.Add(part);
        }
        var advice =
            several.Count == parts.Count ? "take fewer bars"
            : single.Count > 0 ? $"leave out {string.Join(" or ", single)}, or take fewer bars"
            : $"leave out {string.Join(" and ", several.Select(Of))}, or take fewer bars";
        return FormattableString.Invariant(
            $"it does not fit on one page, not even in the smallest print, by {Math.Ceiling(over):0} mm: {advice}"
        );
    }

    public const string FolderForFile = "this is a folder: name one file";
    public const string FolderToCheck = "this is a folder: give one score in MusicXML";
    public const string EmptyFolder = "no tune lies in this folder: it needs .abc, .musicxml, .xml, .mxl or .mid files";
    public const string NoScoreInFolder = "no score lies in this folder: it needs .musicxml, .xml or .mxl files";
    public const string NoTuneInside = "nothing in it could be read as a tune: see what a tune needs in the README";
    public const string NoScoreInside = "nothing in it could be read as a two-staff score: give a piano score";
    public const string DiskFull = "the disk is full: make room, or write elsewhere with --out";
    public const string OverInput =
        "the output would replace the tune it comes from: write into another folder with --out";
    public const string BothLevels = "give one level for both hands, or left and right ones, not both";
    public const string NotUtf8 = "the file is not in UTF-8: save it as such";
    public const string SaveOneSetting =
        "an arrangement file holds one setting of one tune: name one tune, and leave --levels and --all-keys out";
    public const string LostInBrief = "something in the brief or in the kept bars has no words there";

    public static string NoFiguresOfAKind(IEnumerable<string> kinds) =>
        $"the file has no figure with a kind ({string.Join(", ", kinds)}), and others are put at a bar with 'use'";

    public static string NoKind(string word) =>
        $"nothing on the shelf is a '{word}': say tune, arrangement, figure, player or take";

    public static string ShelvedUnreadable(string fault) => $"it cannot be read any more: {fault}";

    public static string TakeUnreadable(string title) => $"a take of {title} cannot be read any more";

    /// <summary>What was practised.</summary>
    public static string Practised(string? step, string? range, string? hand)
    {
        var part =
            range is null ? null
            : range.Contains('-') ? $"bars {range}"
            : $"bar {range}";
        var said = string.Join(
            ", ",
            new[] { step, part, hand is null ? null : $"the {hand} hand alone" }.OfType<string>()
        );
        return said.Length > 0 ? said : "the whole piece";
    }

    /// <param name="name">Null: it is about nothing in particular.</param>
    public static string TaskOf(string? name, string words) => name is null ? words : $"{name}. {words}";

    /// <summary>What was tapped.</summary>
    public static string Tapped(string? step) => step is null ? "the rhythm, tapped" : step + ", tapped";

    public static string DueOf(string title, string what) => $"{title}: {what}";

    public static string Forgotten(string name, int takes) =>
        FormattableString.Invariant(
            $"{name} and {takes} take{(takes == 1 ? "" : "s")} are gone for good from this shelf. Backups that were made before, and the copies beside the shelf's file, still have them: throw those away too if they must go. Settings that were made for these hands stay."
        );

    public static string NoPlayerCalled(string name) => $"no player on the shelf is called {name}";

    public static string PlayerName(int longest) =>
        FormattableString.Invariant($"a player that is written needs a name of at most {longest} characters");

    public static string PlayerEnding(string path, string ending) =>
        $"'{path}' is no name for a player file: let it end in {ending}";

    public const string TonicOnly =
        "give the tonic alone, such as F, Bb or F#: whether the key is major or minor stays the tune's";

    public static string Unreadable(string path, Exception fault) =>
        fault switch
        {
            UnauthorizedAccessException => "it may not be read: check its permissions",
            PathTooLongException => "its name is too long for this system: rename it",
            _ => $"it cannot be read ({fault.Message.Replace(path, "it", StringComparison.Ordinal)})",
        };

    public static string Unwritable(string path, Exception fault) =>
        fault switch
        {
            UnauthorizedAccessException => $"{path} may not be written: check the permissions, or choose another --out",
            PathTooLongException => $"{path} is too long a name for this system: rename the tune",
            IOException full when IsDiskFull(full) => DiskFull,
            _ => $"{path} cannot be written ({fault.Message}): choose another --out",
        };

    public static string TooLarge(long limit) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"the file is larger than {limit / (1024 * 1024)} MiB: split the book into smaller ones"
        );

    public static string OutIsFile(string path) => $"{path} is a file: name a folder to write into";

    public static string OutputIsFolder(string path) => $"{path} is a folder: move it, or choose another --out";

    public static string WouldReplace(string path) =>
        $"{path} exists and is different: add --replace to replace it, or choose another --out";

    public static string SaveEnding(string path, string ending) =>
        $"'{path}' is no name for an arrangement file: let it end in {ending}";

    public static string ManyTunesStored(int tunes) =>
        string.Create(CultureInfo.InvariantCulture, $"an arrangement file holds one tune, and this has {tunes}");

    public static string NotSaved(string why) =>
        $"the arrangement file would not hold all of it ({why}): leave --save out, or mend the tune";

    public static string LostInAbc(string? bar) =>
        bar is null ? "something in its head cannot be written in ABC" : $"bar {bar} cannot be written in ABC";

    public static string NameTaken(string wanted, string given) =>
        $"another tune of this run is written as {wanted}: this one is written as {given}";

    public static string NotPassed(int faults, string first) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"the setting did not pass the judge ({faults} spots, the first: {first}): try a slower tempo or a lower level"
        );

    public static string Internal(Exception fault) =>
        $"something went wrong inside ({fault.GetType().Name}: {fault.Message}): please report it with this file";

    public static string MoreFaults(int count) =>
        string.Create(CultureInfo.InvariantCulture, $"and {count} more faults of this file: mend the first ones");

    public static string NoPicture(string plot) =>
        $"'{plot}' is no picture file: give a name that ends in .png, .svg or .pdf";

    public static string ChartOf(MeasuredStyle style) =>
        style.Reference.Length > 0
            ? FormattableString.Invariant(
                $"solid: this score, {style.Bars} bars in {style.Metre}; hollow, and in brackets: {style.Reference}"
            )
            : FormattableString.Invariant($"{style.Metre}: no figures are published for this metre");

    public static string EffortChart(JudgedScore score) =>
        FormattableString.Invariant(
            $"effort {score.Effort.Overall:0} of 100, {score.Effort.Words}; {score.Bars} bars, span {score.Hands.SpanMm:0.#} mm"
        );

    public static string SketchTooLong(int pages) =>
        FormattableString.Invariant(
            $"the sketch takes {pages} pages: a tune of up to 32 bars fits one; leave the form out, or take it as pages"
        );

    public const string TooLongToSound =
        "it plays longer than the six and three quarter hours that a WAV file holds; leave wav out of the formats";

    public static string NotEngraved(string reason) =>
        $"it could not be engraved ({reason}): leave pdf, svg and png out of --format";

    public static string Manner(string text, string all) => $"'{text}' is no way of playing; there are {all}";

    public static string Harmony(string text) => $"'{text}' is no richness of harmony; choose plain, seasoned or rich";

    public static string HarmonyKind(string text, string kinds) =>
        $"'{text}' is no kind of change; the kinds are {kinds}; one change alone is left out with its bar, such as pedal:7";

    public static string Keep(string given) =>
        $"'{given}' is not among the fingers that can be kept: choose all, edited or none";

    public static string Density(string given) => $"'{given}' is no density of fingers: choose all, changes or hard";

    public static string Feel(string given) => $"'{given}' is no feel: choose classic, stride, waltz or six-eight";

    public const string LevelsAndLevel = "give either one level or several, not both";

    public static string Levels(LevelRange given, int lowest, int highest) =>
        FormattableString.Invariant(
            $"{given.First}-{given.Last} are no levels: give two from {lowest} to {highest}, the lower first, such as {lowest}-{highest}"
        );

    /// <summary>What a level adds, and how much of the one before stands again.</summary>
    public static string Adds(int level, bool leftHandOnly, LevelStep? step)
    {
        var (left, right) = level switch
        {
            1 => ("single roots, the chord beside them", "the tune, one off-beat figure a phrase"),
            2 => ("the fifth, leaps up to an octave", "off-beat figures within the half bar"),
            3 => ("full stride on single basses", "ties over mid-bar"),
            4 => ("octaves on first beats, short runs", "ties over the bar line, thirds and sixths on accents"),
            5 => ("octaves throughout, more runs, breaks", "octaves"),
            _ => ("tenths, rolled where the hand asks", "octaves with inner notes, crushed notes"),
        };
        var adds = "level " + level + (leftHandOnly ? $" adds {left}" : $" adds left: {left}; right: {right}");
        return step is null ? adds
            : leftHandOnly ? FormattableString.Invariant($"{adds} (chords again {step.ChordsAgain} of {step.Chords})")
            : FormattableString.Invariant(
                $"{adds} (again: {step.OnsetsAgain} of {step.Onsets} right-hand onsets, {step.ChordsAgain} of {step.Chords} chords)"
            );
    }

    public static string Level(int given, int lowest, int highest) =>
        string.Create(CultureInfo.InvariantCulture, $"{given} is no level: choose {lowest} to {highest}");

    public const string EffortAndLevel = "give an effort or a level, not both: the levels are chosen for the effort";

    public const string EffortAndLevels =
        "levels and an effort cannot be asked for at once: an effort chooses one setting";

    public static string Effort(double given) =>
        string.Create(CultureInfo.InvariantCulture, $"{given} is no effort: give 1 (next to nothing) to 100");

    public static string Raggedness(double given) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{given} is out of range: raggedness goes from 0 (plain) to 1 (as ragged as the level allows)"
        );

    public static string Tempo(double given, double slowest, double fastest) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{given} beats a minute is out of range: choose {slowest} to {fastest}"
        );

    public const string MinutesAndPages = "give a length in minutes or in pages, not both";

    public const string PagesAndPlain = "a plain form has one length only: leave --form or --pages out";

    public static string Minutes(string given) =>
        $"'{given}' is no length from 0:15 to 20:00: give minutes such as 2, 1.5 or 1:45";

    public static string Pages(int given, int most) =>
        string.Create(CultureInfo.InvariantCulture, $"{given} pages are out of range: choose 1 to {most}");

    public static string Turns(int free, int all) =>
        string.Create(CultureInfo.InvariantCulture, $"a hand is free at {free} of {all} page turns");

    public static string NotCounted(string reason) =>
        $"its pages cannot be counted, since it could not be engraved ({reason}): leave --pages out";

    public static string NoRoomOnPages(int pages, int least) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"its shortest form takes {least} pages, {pages} are asked for: allow more"
        );

    public static string Key(string given) => $"'{given}' is no tonic: {TonicOnly}";

    private static bool IsDiskFull(IOException fault)
    {
        const int NoSpaceLeft = 28; // ENOSPC
        const int DiskFullWindows = unchecked((int)0x80070070); // ERROR_DISK_FULL
        const int QuotaExceeded = 122; // EDQUOT
        return fault.HResult is NoSpaceLeft or DiskFullWindows or QuotaExceeded;
    }

    public const string NotAnArrangement =
        "this is no arrangement file; make one first: arrange TUNE --save FILE.stridewright";

    public static string NoSuchBar(string number, string last) =>
        $"there is no bar {number}; the last one printed is {last}";

    public static string NoSuchWay(string way, IEnumerable<string> names) =>
        $"there is no way {Quoted.Short(way)}; there are "
        + string.Join(
            ", ",
            names
                .GroupBy(n => n[..n.LastIndexOf('-')])
                .Select(g => g.Count() == 1 ? g.First() : $"{g.First()} to {g.Last()}")
        );

    public static string Each(int each, int most) =>
        string.Create(CultureInfo.InvariantCulture, $"{each} ways of each kind; 1 to {most} can be listed");

    public static string Settings(int settings, int most) =>
        string.Create(CultureInfo.InvariantCulture, $"{settings} settings of a tune; 1 to {most} can be made");

    public const string SettingsOfOne =
        "several settings go with one level and one key, and neither with --pages nor with --save";

    public const string OneHandOnly = "this setting has one hand only: take the score";
    public const string MissingName = "what-is-missing.txt";

    public static string NotInZip(string format, string why) => $"{format}: {why}";

    public static string NoSuchPage(int page, int pages) =>
        string.Create(CultureInfo.InvariantCulture, $"there is no page {page}: there are {pages}");

    public static string HandAlone(Music.Hand hand) =>
        hand == Music.Hand.Right ? "the right hand alone" : "the left hand alone";

    public const string NoSuchSpot = "this setting has no such bar";

    public static string NoSuchAction(string action) =>
        $"nothing is known of {Quoted.Short(action)}; a bar can be kept, released, chosen another way, written, made a figure of or given a figure";

    public static string NoStrokes(int most) =>
        string.Create(CultureInfo.InvariantCulture, $"strokes of one hand are needed, at most {most}");

    public static string NoStroke(string at, string length, IEnumerable<string> pitches) =>
        $"a stroke of {Quoted.Short(string.Join(' ', pitches))} at {Quoted.Short(at)} of length {Quoted.Short(length)} does not fit the bar, or is none: it has one to ten different keys of a piano";

    public const string NoFigureName = "the figure needs a name";

    public static string NoSuchKind(string kind, IEnumerable<string> kinds) =>
        $"{Quoted.Short(kind)} is no kind of figure; there are {string.Join(", ", kinds)}";

    public static string NoKind(string name, IEnumerable<string> kinds) =>
        $"the figure {Quoted.Short(name)} has no kind ({string.Join(", ", kinds)}), so it is put at a bar: say which";

    /// <summary>No place of a kind was found, or none where these hands can play the figure.</summary>
    public static string NowhereFor(string name, FigureKind kind) =>
        $"nowhere can {Quoted.Short(name)} be played: "
        + kind switch
        {
            FigureKind.Introduction => "it needs an introduction of as many bars (--form \"intro A\")",
            FigureKind.Ending => "it needs as many bars of its length at the end",
            FigureKind.Run => "it needs the end of a phrase that steps to the next harmony as its own did",
            _ => "it needs a gap in the tune as long as it is",
        };

    public static string NoSuchFigure(string name, IEnumerable<string> names) =>
        names.Any() ? $"there is no figure {name}; there are {string.Join(", ", names)}" : "the file has no figures";

    public static string FigureBars(int bars, int most) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"a figure of {bars} bars; it has 1 to {most}, and they end with the piece"
        );

    public static string PartOfTest(bool isLeaps) =>
        isLeaps ? "eighths out and back, wider and wider" : "sixteenths on one key, with one finger";
}
