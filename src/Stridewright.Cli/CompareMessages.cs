using Stridewright.Workbench.Reports;

namespace Stridewright.Cli;

/// <summary>What the command line says about takes.</summary>
internal static partial class CliMessages
{
    public const string CompareHelp = """
        Hears a take against a score: lays every note that was played along the notes that were asked for, through
        hesitations, wrong notes, skips, restarts and repeats left out.

        TAKE.mid gives, in the output folder, TAKE.alignment.tsv, note by note what was matched, what is missing and what
        is extra, and TAKE.report.txt, what a teacher would say of it (docs/comparing.md).

        Examples:
          stridewright compare rag.musicxml monday.mid
          stridewright compare rag.stridewright monday.mid --range 17-32 --hand left --out heard

        Exit codes: 0 heard and written; 1 the take is of another piece; 2 nothing written, or bad arguments;
        130 interrupted.
        """;

    public const string ComparedScoreHelp =
        "A piano score in MusicXML (.musicxml, .xml, .mxl), or an arrangement file (.stridewright)";
    public const string TakeHelp = "What was played, as a MIDI file";
    public const string CompareOutHelp = "Folder to write into [default: compared]";

    public static string HeardTitle(CompareReport report) =>
        $"{report.Heard!.Title} ({report.Score}), played in {report.Take}";

    public const string ComparedRangeHelp =
        "Bars that were to be played, by their printed numbers, such as 5-12; what was played besides is said to be outside";
    public const string ComparedHandHelp =
        "The hand that was to be played alone [default: both, or the one that is heard]";
}
