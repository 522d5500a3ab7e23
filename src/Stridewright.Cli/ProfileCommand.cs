using System.CommandLine;
using Stridewright.Cli.Output;
using Stridewright.Music;
using Stridewright.Workbench;

namespace Stridewright.Cli;

/// <summary><c>profile</c>: scores in, their measured style out.</summary>
internal sealed class ProfileCommand
{
    private readonly Desk _desk;
    private readonly Argument<string[]> _scores = new("SCORE")
    {
        Description = CliMessages.ScoreHelp,
        Arity = ArgumentArity.OneOrMore,
    };
    private readonly Option<string?> _plot = Options.Text("--plot", CliMessages.PlotHelp, "FILE");
    private readonly Option<bool> _replace = Options.Flag("--replace", CliMessages.ReplaceHelp);
    private readonly Option<bool> _json = Options.Flag("--json", CliMessages.JsonHelp);

    public ProfileCommand(Desk desk)
    {
        _desk = desk;
        Command = new Command("profile", CliMessages.ProfileHelp) { _scores, _plot, _replace, _json };
        Command.SetAction(Run);
    }

    public Command Command { get; }

    private int Run(ParseResult parsed)
    {
        using var useCases = _desk.Open();
        var request = new ProfileRequest
        {
            Scores = parsed.GetRequiredValue(_scores).ToValueList(),
            Plot = parsed.GetValue(_plot),
            Replace = parsed.GetValue(_replace),
        };
        var report = useCases.Profile(request, _desk.Cancellation);
        if (parsed.GetValue(_json))
        {
            ReportJson.Write(_desk.Output, report);
        }
        else
        {
            ProfileSummary.Write(_desk.Output, report);
        }
        _desk.Errors(report.Problems, areWishes: false);
        return report.Cancelled ? ExitCode.Cancelled
            : report.Problems.Count == 0 ? ExitCode.Done
            : report.Scores.Count > 0 ? ExitCode.Partly
            : ExitCode.Nothing;
    }
}
