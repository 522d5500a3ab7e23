using System.CommandLine;
using Stridewright.Cli.Output;
using Stridewright.Workbench;
using Stridewright.Workbench.Reports;

namespace Stridewright.Cli;

/// <summary><c>check</c>: a score and a pair of hands in, a judgement out.</summary>
internal sealed class CheckCommand
{
    private readonly Desk _desk;
    private readonly Argument<string> _score = new("SCORE") { Description = CliMessages.ScoreHelp };
    private readonly HandOptions _hands = new();
    private readonly Option<double?> _bpm = Options.Number("--bpm", CliMessages.CheckBpmHelp, "BEATS");
    private readonly Option<string?> _plot = Options.Text("--plot", CliMessages.EffortPlotHelp, "FILE");
    private readonly Option<bool> _replace = Options.Flag("--replace", CliMessages.ReplaceHelp);
    private readonly Option<bool> _json = Options.Flag("--json", CliMessages.JsonHelp);

    public CheckCommand(Desk desk)
    {
        _desk = desk;
        Command = new Command("check", CliMessages.CheckHelp)
        {
            _score,
            _hands.Player,
            _hands.Span,
            _hands.OctaveWidth,
            _bpm,
            _plot,
            _replace,
            _json,
        };
        Command.SetAction(Run);
    }

    public Command Command { get; }

    private int Run(ParseResult parsed)
    {
        using var useCases = _desk.Open();
        var report = useCases.Check(
            new CheckRequest
            {
                Score = parsed.GetRequiredValue(_score),
                Player = parsed.GetValue(_hands.Player),
                Span = parsed.GetValue(_hands.Span),
                OctaveWidth = parsed.GetValue(_hands.OctaveWidth),
                BeatsPerMinute = parsed.GetValue(_bpm),
                Plot = parsed.GetValue(_plot),
                Replace = parsed.GetValue(_replace),
            },
            _desk.Cancellation
        );
        _desk.Tell(
            parsed.GetValue(_json) ? o => ReportJson.Write(o, report) : o => CheckSummary.Write(o, report),
            report.Problems,
            areWishes: report.Outcome == CheckOutcome.BadWish
        );
        return report.Outcome switch
        {
            CheckOutcome.Playable => ExitCode.Done,
            CheckOutcome.NotPlayable => ExitCode.Partly,
            CheckOutcome.Cancelled => ExitCode.Cancelled,
            _ => ExitCode.Nothing,
        };
    }
}
