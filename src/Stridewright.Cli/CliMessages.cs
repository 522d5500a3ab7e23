using System.Globalization;
using System.Text.RegularExpressions;
using Stridewright.Music;
using Stridewright.Workbench;
using Stridewright.Workbench.Reports;

namespace Stridewright.Cli;

/// <summary>Every sentence of the command line.</summary>
internal static partial class CliMessages
{
    public const string Root = """
        Makes playable ragtime and stride settings of tunes, for the hands that will play them.

        A tune in ABC, MusicXML or MIDI, with its chord symbols, goes in; an engraved two-staff score (PDF), a MusicXML file
        and a MIDI file come out. Start with:

          stridewright arrange samples/ferry-bell.abc
          stridewright arrange --help
        """;

    public const string ArrangeHelp = """
        Arranges tunes for a pair of hands.

        Each tune gives NAME.musicxml, NAME.mid and NAME.pdf in the output folder, NAME being the name of its file (for
        the tunes of a book: a numbered name each), and a summary of what was chosen and how hard it is. Nothing is
        written that the judge of playability has not passed; where no setting fits, you are told the bar, the limit
        and what would relax it.

        Examples:
          A classic rag at the usual level:
            stridewright arrange tune.abc
          For a beginner's right hand over a full stride:
            stridewright arrange tune.abc --left 3 --right 1
          For a small hand, without octaves, slower and less ragged:
            stridewright arrange tune.abc --span 185 --no-octaves --bpm 72 --raggedness 0.3
          A whole folder in B flat, only MIDI and MusicXML:
            stridewright arrange tunes --key Bb --format musicxml,midi --out in-b-flat
          A left-hand page over chords, in all twelve keys:
            stridewright arrange --chords "F | D7 | G7 C7 | F" --left 3 --all-keys
          Saved, and later set again as it was but for its tempo:
            stridewright arrange tune.abc --level 5 --key Bb --save tune.stridewright
            stridewright arrange tune.stridewright --bpm 84

        Exit codes: 0 all written; 1 some refused or unreadable, something written; 2 nothing written, or bad
        arguments; 130 interrupted.
        """;

    public const string AccompanyHelp = """
        Accompanies a singer: stride in the left hand, chords and fills around the voice in the right, the tune and its
        words on a small staff above.

        The right hand leaves the tune to the voice: chords off the beat while it sings, fills where it rests or holds,
        away from its notes. With --range the key is found in which the tune lies within the voice, with as much room
        above as below; without it the tune is sung where it is written. A song in 4/4 keeps its note values, as stride.

        Examples:
          In the tune's own key:
            stridewright accompany song.abc
          For a voice from A3 to D5 (C4 is middle C):
            stridewright accompany song.abc --range A3-D5
          With an introduction and an ending, the chords enriched:
            stridewright accompany song.abc --range G2-E4 --form "intro A A end" --harmony seasoned

        Exit codes: 0 all written; 1 some refused or unreadable, something written; 2 nothing written, or bad
        arguments; 130 interrupted.
        """;

    public const string ServeHelp = """
        Opens the page: bring a tune, say what is wanted, see the setting, take it away, find it again tomorrow.

        The page is served to this machine alone, and only to the browser that opens the printed address. Ctrl-C ends it.
        What is on the desk is kept on a shelf, a file in your own data folder or in the one of --data. A folder serves one
        start of the program at a time.

        Examples:
          stridewright serve
          stridewright serve --port 8080 --no-browser
          stridewright serve --data ~/pieces

        Exit codes: 0 ended; 2 the port or the data folder is taken, or bad arguments.
        """;

    public const string PortHelp = "Port to serve on; 0 takes any that is free [default: 5177]";
    public const string DataHelp =
        "Folder that the shelf is kept in, private to you [default: stridewright in your data folder]";
    public const string NoBrowserHelp = "Print the address only, do not open it";
    public const string NoBrowser = "no browser could be opened: open the address yourself";

    public static string Serving(Uri address, string folder) =>
        $"open {address} (Ctrl-C ends); the shelf is kept in {folder}";

    public static string PortTaken(int port) =>
        $"port {port.ToString(CultureInfo.InvariantCulture)} is taken: give another, or 0 for any that is free";

    public static string NoPort(int port, int highest) =>
        FormattableString.Invariant($"--port: {port} is no port; choose 0 to {highest}");

    public const string RangeHelp =
        "The singer's lowest and highest note as they sound, such as A3-D5 (C4 is middle C): the key is found from it";

    public const string CheckHelp = """
        Judges a two-staff piano score for a pair of hands: whether they can play it, how hard it is and in which parts, the
        hardest bars and why, at which tempo and for which spans it is comfortable, the smallest change that removes the
        worst spot, and every spot that cannot be played, why, and by how much. Bars are judged once, as they are written.

        Examples:
          stridewright check rag.musicxml
          stridewright check rag.musicxml --player ada.player --plot rag-effort.png
          stridewright check rag.mxl --span 8.1in --bpm 84
          stridewright check rag.musicxml --span ninth --octave-width 152.5

        Exit codes: 0 playable; 1 not playable; 2 unreadable, or bad arguments; 130 interrupted.
        """;

    public const string TuneHelp =
        "Tunes in ABC (.abc), MusicXML (.musicxml, .xml, .mxl) or MIDI (.mid), books of several tunes, folders of them, or arrangement files (.stridewright), whose brief holds where no option says otherwise";
    public const string ProfileHelp = """
        Measures the style of two-staff piano scores beside published ragtime: syncopation, patterns, registers,
        textures, returning rhythms and the left hand.

        Examples:
          stridewright profile rag.musicxml
          stridewright profile rag.musicxml --plot rag-style.png
          stridewright profile arrangements/*.musicxml --json
        """;

    public const string PlayerCommandHelp = """
        Shows a player's hands in words, and writes them into a player file (docs/player-file.md), which arrange and check
        take with --player.

        Without a file the hands are usual ones; each option says something else of them. An option for both hands takes
        back what was said of one.

        Examples:
          Of a file:
            stridewright player ada.player
          A new one, the left hand measured by itself, one finger at rest:
            stridewright player --out ada.player --name Ada --span 8.1in --left-span 200 --right-without 4
          One changed:
            stridewright player ada.player --no-tenths --out ada.player --replace
          Measured:
            stridewright player --write-leap-test test
            stridewright player ada.player --leap-test take.mid --out ada.player --replace
          Of usual hands, wider than half of all women's:
            stridewright player --usual "women 50"
        """;

    public const string LeapTestHelp =
        "A take of the leap test, a MIDI file: how fast this hand leaps and repeats is measured from it (docs/leap-test.md)";
    public const string WriteTestHelp =
        "Write the leap test of each hand, MusicXML and MIDI, into a folder, to be played to its click";
    public const string PlayerFileHelp = "A player file to begin with [default: usual hands]";
    public const string PlayerOutHelp = "Write the player into a file that ends in .player";
    public const string PlayerNameHelp = "The player's name";
    public const string PlayerNotesHelp = "Notes on the player";
    public const string UsualHelp =
        "A usual span: women or men, and how many of a hundred have none wider, such as \"women 50\"";

    /// <summary>What a word for hands is, in the help.</summary>
    public static string HandsWordHelp(string word, string expected)
    {
        var (side, rest) =
            word.StartsWith("left-", StringComparison.Ordinal) ? (" of the left hand alone", word[5..])
            : word.StartsWith("right-", StringComparison.Ordinal) ? (" of the right hand alone", word[6..])
            : ("", word);
        var what = rest switch
        {
            "span" => "Thumb to little finger, hand flat",
            "index-span" => "Second finger to fifth, hand flat",
            "leaps" => "Leaps that are landed",
            "strokes" => "Strokes of one key that are kept up",
            "without" => "Fingers that cannot be used",
            "weaker" => "The slower hand",
            "octave-width" => "Width of an octave on the keyboard",
            "no-octaves" => "No octaves in one hand",
            "no-tenths" => "No tenths in one hand, rolled or not",
            "no-strain" => "No strained stretch at all",
            _ => rest,
        };
        return what + side + (expected.Length > 0 ? ": " + expected : "");
    }

    public static string OneHandOf(OneHandReport hand) =>
        Text(
            $"span {hand.SpanMm:0.#} mm, second finger to fifth {hand.IndexSpanMm:0.#}{(hand.Without.Count > 0 ? ", without finger " + string.Join(" and ", hand.Without) : "")}, leaps to {hand.LeapBitsPerSecond:0.#} bits a second, {hand.StrokesPerSecond:0.#} strokes a second"
        );

    public static string ReachOf(ReachReport reach) =>
        reach.Manner.PadRight(12) + "up to the " + reach.Every + string.Concat(reach.Also.Select(a => "; " + a));

    public const string UsualName = "Usual hands";
    public const string FingerHelp = """
        Fingers two-staff piano scores for a pair of hands and writes them anew.

        Each score gives NAME.musicxml and NAME.pdf in the output folder. Both hands are fingered by an exact search:
        the shape of each chord, the way to the next, the thumb under, black keys, leaps and repeated keys, in
        millimetres for these hands. Fingers that you wrote in the score stay, and the rest is worked around them;
        where you changed some in a score fingered here, --keep edited works the others again.

        Examples:
          stridewright finger rag.musicxml
          stridewright finger rag.musicxml --span 185 --density changes --out for-lena
          stridewright finger fingered/rag.musicxml --keep edited --out again

        Exit codes: 0 all written; 1 some unreadable, something written; 2 nothing written, or bad arguments;
        130 interrupted.
        """;

    public const string FingeredScoresHelp = "Two-staff scores in MusicXML (.musicxml, .xml, .mxl), or folders of them";
    public const string FingerOutHelp = "Folder to write into [default: fingered]";
    public const string DensityHelp =
        "Fingers to print: all; changes, where a hand moves or a finger is not the expected one; hard, the dearest moves only [default: all]";
    public const string Densities = "all|changes|hard";
    public const string KeepFingersHelp =
        "Fingers in the score that hold: all; edited, those that are not what this program takes there; none [default: all]";
    public const string Keeps = "all|edited|none";
    public const string FingerBpmHelp = "Tempo to finger for, in beats a minute [default: as printed]";
    public const string FingerFormatHelp =
        "What to write, as a comma list of musicxml, mxl, midi, pdf, svg, png, wav, phone [default: musicxml,pdf]";

    public const string PlotHelp =
        "Draw the figures beside the published ones, for print, into a file that ends in .png, .svg or .pdf";

    public const string ScoreHelp = "A two-staff score in MusicXML (.musicxml, .xml, .mxl)";
    public const string ChordsHelp =
        "Instead of tunes: a line of chords for the left hand alone. Bars between |, chords share their bar ('.' holds one for another share), % repeats a bar, |: and :| a part, N.C. is no chord; 2/4, or the metre of --feel";
    public const string TitleHelp = "Title of the page that --chords gives [default: Left hand]";
    public const string LeftHandOnlyHelp = "Write the left hand of the setting alone, on one staff";
    public const string AllKeysHelp =
        "In all twelve keys, from the tune's own round by fourths: NAME.F, NAME.B-flat and so on, and one PDF of all, NAME.all-keys.pdf";
    public const string NothingNamed =
        "name a tune, a book or a folder, or give a line of chords: --chords \"F | D7 | G7 C7 | F\"";
    public const string OutHelp = "Folder to write into [default: arrangements]";
    public const string PartHelp =
        "Part or voice that has the tune: its name, abbreviation, id or number from the top; in MusicXML also PART:VOICE or :VOICE [default: by name, words, chord symbols, place]";
    public const string FeelHelp =
        "Manner of the setting; it must fit the metre [default: 2/4, 4/4, 2/2 classic; 3/4 waltz; 6/8 six-eight]";
    public const string Feels = "classic|stride|waltz|six-eight";
    public const string LevelHelp =
        "Level of both hands: 1 roots and single notes, 2 off-beats, 3 full stride, 4 octaves on first beats and ties over the bar line, 5 octaves, 6 tenths and full chords [default: 4]";
    public const string PlayHelp =
        "Ways of playing, put on fitting bars in turn by the phrase, as a comma list: walking-octaves, walking-tenths, chromatic-approach, back-beat-tenths, broken-tenths, contrary-run, low-pedal, cadence-figure, stop-time, break, thirds, sixths, octaves, full-octaves, call, answer, crushed-notes, fills-only, thumb-tune, obbligato, three-against-four, parallel-run, tremolo, plain, ragged, stride, left-silent, right-silent";
    public const string HarmonyHelp =
        "How far the chords are enriched: plain as they stand, seasoned with a change now and then, rich wherever the tune allows; every change is named [default: plain]";
    public const string Richnesses = "plain|seasoned|rich";
    public const string WithoutHelp =
        "Kinds of change that are not wanted, as a comma list of secondary-dominant, circle-of-fifths, passing-diminished, common-tone-diminished, minor-subdominant, strain-ending, two-five, tritone, turnaround, pedal, chromatic-bass; one change alone with its bar, such as pedal:7";
    public const string LevelRanges = "two levels such as 1-6";
    public const string LevelsHelp = "Several levels, each set and written as NAME.level-N, with what it adds";
    public const string LeftHelp = "Level of the left hand alone";
    public const string RightHelp = "Level of the right hand alone";
    public const string EffortHelp =
        "The most effort it may ask for, instead of a level: the fullest setting within it, and what was given up";
    public const string RaggednessHelp = "How often the level's syncopations occur: 0 plain, 1 most [default: 0.5]";
    public const string KeyHelp = "Tonic to set it in, such as F or Bb; the mode stays the tune's";
    public const string FormHelp =
        "Form of the piece in one line, such as \"intro A A(octaves,ff) B* trio:A(high) tag end\" (docs/forms.md); usual: one that fits the tune and the level; plain: as it stands";
    public const string MinutesHelp =
        "Playing time, repeats included, such as 2, 1.5 or 1:45: strains more or fewer, then a tempo up to 6 % away unless --bpm fixes it";
    public const string PagesHelp = "Grow or shrink the form to fill at most so many engraved pages";

    public const string BpmHelp =
        "Tempo in beats a minute, as printed: quarters in 2/4, 4/4 and 3/4, dotted quarters in 6/8";
    public const string CheckBpmHelp = "Tempo to judge at, in beats a minute [default: as printed]";
    public const string PlayerHelp =
        "A player file (stridewright player --help): hands, keyboard and wishes; --span and the like go before it";
    public const string SpanHelp =
        "Thumb to little finger, hand flat: millimetres (205), inches (8.1in) or the widest interval you reach (ninth) [default: 205]";
    public const string OctaveWidthHelp =
        "Width of an octave on your keyboard: millimetres or inches (6.5in) [default: 165.1]";
    public const string NoOctavesHelp = "No octaves struck by one hand";
    public const string LyricsHelp = "Print the tune's words under the right hand's staff";
    public const string ShowPlainHelp =
        "Show the plain tune, where it stood before it was ragged, on a small staff above (with --left-hand-only and "
        + "--lyrics its words too)";
    public const string WhyHelp = "Say of every bar why it is as it is";
    public const string NotesHelp =
        "Print the most telling reasons as small numbered notes: numbers under the score, the notes on a page after it";
    public const string PlainHelp =
        "Write the plain tune too, back on the beat, as a lead sheet NAME.plain in the same formats";
    public const string SketchHelp =
        "Write a one-page sketch too, NAME.sketch in the same formats: the plain tune, chord symbols and the bass line";
    public const string PaperHelp = "Paper of the engraved score [default: a4]";
    public const string Papers = "a4|letter";
    public const string FormatHelp =
        "What to write, as a comma list of musicxml, mxl, midi, pdf, svg, png, wav, phone; svg and png are a picture a page, png at 150 dots an inch; wav is a grand piano playing what midi says, 44.1 kHz; phone is NAME.html, score and sound in one file for a phone or a tablet, offline [default: musicxml,midi,pdf]";
    public const string Formats = "musicxml, mxl, midi, pdf, svg, png, wav, phone, with commas between";
    public const string JsonHelp = "Print one JSON object instead of the summary (docs/json.md)";
    public const string SeedHelp = "Another seed gives another setting of equal quality [default: 1]";
    public const string SettingsHelp =
        "Write so many settings of each tune, 1 to 5, different in motif and bass plan, as NAME.setting-1 and so on";
    public const string FiguresHelp =
        "Put the figures of this arrangement file wherever their kind belongs and these hands can play them ('figure' stores them)";
    public const string SaveHelp =
        "Write the one tune and its brief as an arrangement file too, FILE.stridewright (docs/arrangement-file.md), to be arranged again as it was";
    public const string ReplaceHelp = "Replace existing outputs that differ";

    public const string Finishing = "finishing";
    public const string Copyright = WorkbenchCautions.Copyright;

    public static string NoOption(string given) =>
        $"{given}: there is no such option (a file of that name is given as ./{given})";

    public static string NoOutput(string reason) => $"output: the report cannot be written ({OneLine(reason)})";

    public static string SeeHelp(string command) =>
        $"See: stridewright {(command is "arrange" or "accompany" or "check" or "player" or "profile" or "finger" or "compare" ? command + " " : "")}--help";

    public static string NotWhole(string option, string given) =>
        $"{option}: '{given}' is no whole number: give one such as 4";

    public static string NotNumber(string option, string given) =>
        $"{option}: '{given}' is no number: give one such as 0.5 (with a point, not a comma)";

    public static string NotAmong(string option, string given, string choices) =>
        $"{option}: '{given}' is not among {choices}";

    public static string TuneOfFile(WrittenTune tune) =>
        tune.Number is { } number ? Text($"{tune.Title} ({tune.File}, tune {number})") : $"{tune.Title} ({tune.File})";

    public static string SettingOf(Setting s) =>
        Text($"{s.Feel}, {s.Key}, {s.Metre}, {s.Beat} = {s.BeatsPerMinute:0.#}");

    public static string LevelsOf(Setting s) =>
        s.LeftHandOnly
            ? Text($"left {s.LeftLevel}, alone, seed {s.Seed}")
            : Text($"left {s.LeftLevel}, right {s.RightLevel}, raggedness {s.Raggedness:0.##}, seed {s.Seed}");

    public static string HandsOf(HandsUsed h) =>
        Text(
            $"span {h.SpanMm:0.#} mm, octave {h.OctaveMm:0.#} mm{(h.NoOctaves ? ", no octaves" : "")}{string.Concat(h.Also.Select(w => ", " + w.Replace('-', ' ')))}"
        );

    public static string LengthOf(Setting s) => Text($"{s.Bars} bars, {Minutes(s.Seconds)} minutes with repeats");

    public static string SurvivalOf(TuneSurvival t) =>
        Text(
            $"{t.Kept} of {t.Notes} notes kept ({t.Early} early, {t.Late} late), {t.Fillers} fillers{(t.LeftOut > 0 ? Text($", {t.LeftOut} left out as asked") : "")}"
        );

    public static string VoiceOf(SungRange voice) => $"sings from {voice.Lowest} to {voice.Highest}";

    public static string EffortOf(EffortReport e) => Text($"{e.Overall:0} of 100");

    public static string HandOf(HandEffortReport h) =>
        Text(
            $"{h.StrokesPerSecond:0.0} strokes a second, {(h.LeapBitsPerSecond < 0.05 ? "no leaps" : Text($"leaps up to {h.LeapBitsPerSecond:0.0} bits a second"))}, stretch {h.MeanStretch:0%} of the span, strained {h.StrainedShare:0.#%}"
        );

    public static string HardestOf(IEnumerable<HardBar> bars) =>
        "bars " + string.Join(", ", bars.Select(b => Text($"{b.Bar} ({b.Effort:0})")));

    public static string RemarkOf(Remark r) => r.Place.Length > 0 ? $"{r.Place}: {r.Message}" : r.Message;

    /// <summary>What is said of several bars in the same words is said once, of all of them.</summary>
    public static List<Remark> Gathered(IEnumerable<Remark> remarks) =>
        [
            .. remarks
                .GroupBy(r =>
                    BarPlace().Match(r.Place) is { Success: true } bar
                        ? (object)(r.Severity, r.Message, bar.Groups[2].Value)
                        : r
                )
                .Select(g =>
                    g.Count() == 1
                        ? g.First()
                        : g.First() with
                        {
                            Place =
                                "bars "
                                + string.Join(", ", g.Select(r => BarPlace().Match(r.Place).Groups[1].Value).Distinct())
                                + BarPlace().Match(g.First().Place).Groups[2].Value,
                        }
                ),
        ];

    [GeneratedRegex("^bar (\\S+)( of the tune)?$")]
    private static partial Regex BarPlace();

    public static string WhyRow(string bar, string message) => OneLine("    " + bar.PadRight(6) + message);

    public static string MoreRemarks(int count) => Text($"and {count} more (all of them with --json)");

    public static string TuneInALine(WrittenTune t) =>
        Text(
            $"{t.Title}: {SettingOf(t.Setting)}, {ShortLevelsOf(t.Setting)}, {t.Setting.Bars} bars, {Minutes(t.Setting.Seconds)}, {KeptOf(t.Setting)}effort {t.Setting.Effort.Overall:0} -> {string.Join(" ", t.Outputs.Select(o => o.Path))}"
        );

    private static string ShortLevelsOf(Setting s) =>
        s.LeftHandOnly ? Text($"left hand level {s.LeftLevel}") : Text($"levels {s.LeftLevel}/{s.RightLevel}");

    private static string KeptOf(Setting s) =>
        s.Voice is { } voice ? VoiceOf(voice) + ", "
        : s.LeftHandOnly ? ""
        : Text($"{s.Tune.Kept} of {s.Tune.Notes} notes kept, ");

    public static string Counts(ArrangeReport report) =>
        Text($"{report.Written.Count} written, {report.Problems.Count} failed")
        + (report.Outcome == ArrangeOutcome.Cancelled ? "; interrupted" : "");

    public static string JudgedTitle(string file, JudgedScore score) =>
        Text($"{(score.Title.Length > 0 ? score.Title : "Untitled")} ({file}), {score.Bars} bars");

    public static string TempoOf(JudgedScore score) =>
        score.QuartersPerMinute is { } tempo ? Text($"quarter = {tempo:0.#}") : "as printed";

    public static string SpotOf(UnplayableSpot s) =>
        Text(
            $"{s.Place}, {s.Hand} hand, {s.Fault}: {s.Message} (needs {s.Need:0.##}, limit {s.Limit:0.##}, over by {s.Over:0.##})"
        );

    public static string Judgement(JudgedScore score) =>
        score.Spots.Count == 0
            ? Text($"These hands can play it. It {Verb(score.Effort.Words)} ({score.Effort.Overall:0} of 100).")
            : Text(
                $"{score.Spots.Count} spots cannot be played by these hands; as a whole it {Verb(score.Effort.Words)} ({score.Effort.Overall:0} of 100)."
            );

    // The words of the scale are either a verb and more, or what it is.
    private static string Verb(string words) =>
        words.StartsWith("lies", StringComparison.Ordinal) || words.StartsWith("asks", StringComparison.Ordinal)
            ? words
            : "is " + words;

    public static string PartsOf(string name, HandEffortReport hand) =>
        Text($"{name} hand {hand.Value:0} of 100: ")
        + string.Join(
            ", ",
            hand.Parts.Where(p => p.Points >= 0.5)
                .OrderByDescending(p => p.Points)
                .Select(p => Text($"{p.Words} {p.Points:0}"))
        );

    public static string HardOf(HardSpotReport hard) => Text($"bar {hard.Bar} ({hard.Effort:0}): {hard.Why}");

    public static string ComfortOf(ComfortReport comfort) =>
        comfort.Speed >= 2
            ? "at twice this tempo and more"
            : Text(
                $"up to quarter = {Math.Floor(comfort.QuartersPerMinute):0}, {100 * comfort.Speed:0} % of this tempo ({Binding(comfort.Binding)} of the {comfort.Hand} hand, bar {comfort.Bar})"
            );

    private static string Binding(string kind) =>
        kind switch
        {
            "leap" => "leaps",
            "density" => "strokes",
            _ => "repeated keys",
        };

    public static string NeedOf(string hand, SpanReport need) =>
        (need.PlayableMm, need.FreeMm) switch
        {
            (null, _) => $"{hand} hand: none that hands have reaches it as written",
            ({ } all, null) => Text($"{hand} hand: {all} mm reach it; none is without strain"),
            ({ } all, { } free) => Text($"{hand} hand: {all} mm reach it, {free} mm without any strain"),
        };

    public static string ChangeOf(ChangeReport? change, bool isFault) =>
        change?.Message
        ?? (
            isFault
                ? "no single chord rolled or thinned, stroke left out or slower tempo removes the worst spot"
                : "no single chord rolled or thinned and no stroke left out makes the hardest bar like the next"
        );

    public static string CautionsOf(string source) => $"Take care ({source}):";

    public const string EffortPlotHelp =
        "Draw the effort along the piece, bar by bar, into a file that ends in .png, .svg or .pdf";

    public static string FingeredTitle(FingeredFile score) =>
        Text($"{(score.Title.Length > 0 ? score.Title : "Untitled")} ({score.File}), {score.Bars} bars");

    public static string FingersOf(FingeredFile score) =>
        Text($"{score.Fingered} of {score.Notes} notes have one, {score.Printed} are printed");

    public static string DearestOf(IEnumerable<FingeredBar> bars) =>
        string.Join("; ", bars.Select(b => Text($"bar {b.Bar} {b.Hand} ({b.Cost:0.#}: {b.Terms[0].Words})")));

    public static string ProfiledTitle(ProfiledScore score) =>
        $"{score.File}: {score.Title}, "
        + (
            score.Style.Reference.Length > 0
                ? $"{score.Style.Bars} bars measured, beside {score.Style.Reference}"
                : $"for {score.Style.Metre} no reference is published, and syncopation and the left hand's strokes are not counted"
        );

    /// <summary>A figure of style, and the published one behind it.</summary>
    public static string StyleRow(MeasuredFigure figure) =>
        "  "
        + figure.Words.PadRight(54)
        + Values(figure, figure.Values)
        + (figure.Reference.Count > 0 ? $"   (published {Values(figure, figure.Reference)})" : "");

    private static string Values(MeasuredFigure figure, IEnumerable<double> values) =>
        string.Join(" / ", values.Select(v => Value(figure.Unit, v)));

    private static string Value(string unit, double value) =>
        unit switch
        {
            "share" => Text($"{100 * value:0.0} %"),
            "key" => NoteOf((int)Math.Round(value)),
            _ => Text($"{value:0.##}"),
        };

    /// <summary>What several values of a figure are.</summary>
    public static string PercentilesOf(MeasuredFigure figure) =>
        (figure.Unit, figure.Values.Count) switch
        {
            ("key" or "semitones", 5) => " (of a hundred the 5th, 25th, 50th, 75th and 95th from below)",
            _ => "",
        };

    private static string NoteOf(int key) =>
        Text(
            $"{((string[])["C", "C#", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B"])[key % 12]}{key / 12 - 1}"
        );

    public static string Row(string name, string text) => OneLine("  " + name.PadRight(10) + text);

    /// <summary>Text of others made safe for one line of a terminal: control characters become spaces.</summary>
    public static string OneLine(string text) =>
        text.Any(char.IsControl) ? string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c)) : text;

    private static string Minutes(double seconds)
    {
        var whole = (long)Math.Round(seconds);
        return Text($"{whole / 60}:{whole % 60:00}");
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    public const string WaysHelp = "List other ways for a bar of an arrangement file, with what each changes.";
    public const string KeepHelp = "Keep a bar of an arrangement file as it is, whatever is worked again around it.";
    public const string ChooseHelp = "Take another way for a bar of an arrangement file, and keep it.";
    public const string ReleaseHelp = "Let a kept bar of an arrangement file be worked again.";
    public const string RewriteHelp = "Keep the bars that were written otherwise in the score that came back.";
    public const string ArrangementFileHelp = "An arrangement file, made with arrange TUNE --save FILE.stridewright.";
    public const string EditedHelp = "The setting's score in MusicXML with some bars written otherwise.";
    public const string BarHelp = "The bar, by its printed number.";
    public const string ReleasedBarHelp = "The bar, by its printed number; without it all bars.";
    public const string HandHelp = "left or right; without it both.";
    public const string EachHelp = "How many ways of each kind, 1 to 20 (3 without it).";
    public const string WayHelp = "The way, by the name that ways gives it, such as rhythm-2.";
    public const string FigureHelp =
        "Store bars of one hand of an arrangement file as a figure, by the chords they stand over.";
    public const string UseHelp =
        "Put a figure at a bar of an arrangement file, or wherever its kind belongs, over the chords there, and keep it.";
    public const string FigureNameHelp = "The figure's name.";
    public const string FigureKindHelp =
        "introduction, fill, run or ending. Where the figure belongs: before the first strain, in gaps of the tune, at ends of phrases with the same step of the harmony after them, or at the very end; without it where it is put";
    public const string FigureHandHelp = "left or right; without it the left";
    public const string UsedBarHelp =
        "The bar's number as printed; without it wherever the figure's kind belongs and these hands can play it";
    public const string FigureBarsHelp = "How many bars the figure takes, 1 to 8 (1 without it).";
    public const string FigureOfHelp = "The arrangement file that has the figure; without it the same.";
    public const string NoOtherWay = "There is no other way for this bar that these hands can play.";

    public static string WayLine(WayFound way) =>
        Text($"{way.Name}: {way.Dearer:0.00} dearer, effort of the bar {way.EffortBefore:0} to {way.EffortAfter:0}")
        + (way.OtherBars.Count > 0 ? $"; changes bar {string.Join(", ", way.OtherBars)} too" : "");

    public static string StyleLine(StyleMoved moved) =>
        $"{moved.Words}: {Value(moved.Unit, moved.Before)} to {Value(moved.Unit, moved.After)}, published {Value(moved.Unit, moved.Reference)}";

    public static string KeptOf(ValueList<KeptSpot> kept) =>
        kept.Count == 0
            ? "nothing"
            : string.Join(
                ", ",
                kept.GroupBy(k => k.Bar).Select(b => $"bar {b.Key} {string.Join(" and ", b.Select(k => k.Hand))}")
            );

    public static string ChangedOf(ValueList<string> bars) =>
        bars.Count == 0 ? "nothing" : "bar " + string.Join(", ", bars);
}
