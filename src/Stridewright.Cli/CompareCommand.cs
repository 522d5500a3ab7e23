using System.CommandLine;
using Stridewright.Cli.Output;
using Stridewright.Workbench;
using Stridewright.Workbench.Reports;

namespace Stridewright.Cli;

/// <summary><c>compare</c>: a score and a take in, what was heard out.</summary>
internal sealed class CompareCommand
{
    private readonly Desk _desk;
    private readonly Argument<string> _score = new("SCORE") { Description = CliMessages.ComparedScoreHelp };
    private readonly Argument<string> _take = new("TAKE") { Description = CliMessages.TakeHelp };
    private readonly Option<string?> _out = Options.Text("--out", CliMessages.CompareOutHelp, "DIR");
    private readonly Option<string?> _range = Options.Text("--range", CliMessages.ComparedRangeHelp, "BARS");
    private readonly Option<string?> _hand = Options.Chosen(
        "--hand",
        CliMessages.ComparedHandHelp,
        "left|right",
        text => text is "left" or "right" ? text : null,
        "left, right"
    );
    private readonly Option<bool> _json = Options.Flag("--json", CliMessages.JsonHelp);
    private readonly Option<bool> _replace = Options.Flag("--replace", CliMessages.ReplaceHelp);

    public CompareCommand(Desk desk)
    {
        _desk = desk;
        Command = new Command("compare", CliMessages.CompareHelp)
        {
            _score,
            _take,
            _out,
            _range,
            _hand,
            _json,
            _replace,
        };
        Command.SetAction(Run);
    }

    public Command Command { get; }

    private int Run(ParseResult parsed)
    {
        using var useCases = _desk.Open();
        var report = useCases.Compare(
            new CompareRequest
            {
                Score = parsed.GetRequiredValue(_score),
                Take = parsed.GetRequiredValue(_take),
                OutputFolder = parsed.GetValue(_out) is { Length: > 0 } folder ? folder : CompareRequest.UsualFolder,
                Range = parsed.GetValue(_range),
                Hand = parsed.GetValue(_hand),
                Replace = parsed.GetValue(_replace),
            },
            _desk.Cancellation
        );
        _desk.Tell(
            parsed.GetValue(_json) ? o => ReportJson.Write(o, report) : o => CompareSummary.Write(o, report),
            report.Problems,
            areWishes: report.Outcome == CompareOutcome.BadWish
        );
        return report.Outcome switch
        {
            CompareOutcome.Compared => ExitCode.Done,
            CompareOutcome.AnotherPiece => ExitCode.Partly,
            CompareOutcome.Cancelled => ExitCode.Cancelled,
            _ => ExitCode.Nothing,
        };
    }
}
