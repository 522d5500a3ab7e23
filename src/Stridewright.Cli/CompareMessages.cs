using System.Globalization;
using Stridewright.Workbench.Reports;

namespace Stridewright.Cli;

/// <summary>What the command line says about takes.</summary>
internal static partial class CliMessages
{
    public const string CompareHelp = """
        Hears a take against a score: lays every note that was played along the notes that were asked for, through
        hesitations, wrong notes, skips, restarts and repeats left out.

        TAKE.mid gives TAKE.alignment.tsv in the output folder: note by note what was matched, what is missing and what is
        extra (docs/comparing.md).

        Examples:
          stridewright compare rag.musicxml monday.mid
          stridewright compare rag.stridewright monday.mid --out heard --json

        Exit codes: 0 heard and written; 1 the take is of another piece; 2 nothing written, or bad arguments;
        130 interrupted.
        """;

    public const string ComparedScoreHelp =
        "A piano score in MusicXML (.musicxml, .xml, .mxl), or an arrangement file (.stridewright)";
    public const string TakeHelp = "What was played, as a MIDI file";
    public const string CompareOutHelp = "Folder to write into [default: compared]";

    public static string HeardTitle(CompareReport report) =>
        $"{report.Heard!.Title} ({report.Score}), played in {report.Take}";

    public static string HeardNotes(HeardTake heard) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{heard.Notes} asked for, {heard.Played} played: {heard.Matched} right, {heard.Missing} missing, {heard.Extra} extra"
        );
}
