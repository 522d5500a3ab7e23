using System.CommandLine;
using Stridewright.Cli.Output;
using Stridewright.Music;
using Stridewright.Workbench;
using Stridewright.Workbench.Reports;

namespace Stridewright.Cli;

/// <summary><c>lesson</c>: a piece and a player in, steps, drills and a plan out.</summary>
internal sealed class LessonCommand
{
    private readonly Desk _desk;
    private readonly Argument<string> _piece = new("PIECE") { Description = CliMessages.LessonPieceHelp };
    private readonly Option<string?> _player = Options.Text("--player", CliMessages.PlayerHelp, "FILE");
    private readonly Option<int?> _level = Options.Whole("--level", CliMessages.LessonLevelHelp, "1-6");
    private readonly Option<int?> _days = Options.Whole("--days", CliMessages.LessonDaysHelp, "N");
    private readonly Option<int?> _minutes = Options.Whole("--minutes", CliMessages.LessonMinutesHelp, "M");
    private readonly Option<string[]> _takes = new("--takes")
    {
        Description = CliMessages.LessonTakesHelp,
        HelpName = "TAKE.mid",
        AllowMultipleArgumentsPerToken = true,
    };
    private readonly Option<string?> _out = Options.Text("--out", CliMessages.LessonOutHelp, "DIR");
    private readonly Option<ValueList<OutputFormat>?> _format = Options.Formats(CliMessages.LessonFormatHelp);
    private readonly Option<string?> _paper = Options.Paper();
    private readonly Option<bool> _json = Options.Flag("--json", CliMessages.JsonHelp);
    private readonly Option<bool> _replace = Options.Flag("--replace", CliMessages.ReplaceHelp);

    public LessonCommand(Desk desk)
    {
        _desk = desk;
        Command = new Command("lesson", CliMessages.LessonHelp)
        {
            _piece,
            _player,
            _level,
            _days,
            _minutes,
            _takes,
            _out,
            _format,
            _paper,
            _json,
            _replace,
        };
        Command.SetAction(Run);
    }

    public Command Command { get; }

    private int Run(ParseResult parsed)
    {
        using var useCases = _desk.Open();
        var usual = new LessonRequest { Piece = parsed.GetRequiredValue(_piece) };
        var report = useCases.Lesson(
            usual with
            {
                Player = parsed.GetValue(_player),
                Level = parsed.GetValue(_level),
                Days = parsed.GetValue(_days) ?? usual.Days,
                Minutes = parsed.GetValue(_minutes) ?? usual.Minutes,
                Takes = (parsed.GetValue(_takes) ?? []).ToValueList(),
                OutputFolder = parsed.GetValue(_out) is { Length: > 0 } folder ? folder : LessonRequest.UsualFolder,
                Formats = parsed.GetValue(_format) ?? usual.Formats,
                Paper = Options.PaperOf(parsed, _paper),
                Replace = parsed.GetValue(_replace),
            },
            _desk.Cancellation
        );
        _desk.Tell(
            parsed.GetValue(_json) ? o => ReportJson.Write(o, report) : o => LessonSummary.Write(o, report),
            report.Problems,
            areWishes: report.Outcome == LessonOutcome.BadWish
        );
        return report.Outcome switch
        {
            LessonOutcome.Written => ExitCode.Done,
            LessonOutcome.Refused => ExitCode.Partly,
            LessonOutcome.Cancelled => ExitCode.Cancelled,
            _ => ExitCode.Nothing,
        };
    }
}
