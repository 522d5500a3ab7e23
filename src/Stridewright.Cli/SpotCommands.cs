using System.CommandLine;
using Stridewright.Cli.Output;
using Stridewright.Workbench;

namespace Stridewright.Cli;

/// <summary><c>ways</c>, <c>keep</c>, <c>choose</c>, <c>release</c>, <c>rewrite</c>, <c>figure</c> and <c>use</c>: work on the bars of an arrangement
/// file.</summary>
internal sealed class SpotCommands
{
    private readonly Desk _desk;
    private readonly Argument<string> _file = new("FILE") { Description = CliMessages.ArrangementFileHelp };
    private readonly Argument<string> _score = new("SCORE") { Description = CliMessages.EditedHelp };
    private readonly Option<string?> _bar = Options.Text("--bar", CliMessages.BarHelp, "NUMBER");
    private readonly Option<string?> _hand = Hand(CliMessages.HandHelp);
    private readonly Option<string?> _whose = Hand(CliMessages.FigureHandHelp);
    private readonly Option<int?> _each = Options.Whole("--each", CliMessages.EachHelp, "N");
    private readonly Option<string?> _way = Options.Text("--way", CliMessages.WayHelp, "NAME");
    private readonly Option<string?> _name = Options.Text("--name", CliMessages.FigureNameHelp, "NAME");
    private readonly Option<int?> _bars = Options.Whole("--bars", CliMessages.FigureBarsHelp, "N");
    private readonly Option<string?> _kind = Options.Chosen(
        "--kind",
        CliMessages.FigureKindHelp,
        "KIND",
        text => text is "introduction" or "fill" or "run" or "ending" ? text : null,
        "introduction, fill, run, ending"
    );
    private readonly Option<string?> _of = Options.Text("--of", CliMessages.FigureOfHelp, "FILE");
    private readonly Option<bool> _json = Options.Flag("--json", CliMessages.JsonHelp);

    public SpotCommands(Desk desk)
    {
        _desk = desk;
        Commands =
        [
            Made("ways", CliMessages.WaysHelp, SpotAction.Ways, Needed(_bar), _each),
            Made("keep", CliMessages.KeepHelp, SpotAction.Keep, Needed(_bar), _hand),
            Made("choose", CliMessages.ChooseHelp, SpotAction.Choose, Needed(_bar), Needed(_way)),
            Made(
                "release",
                CliMessages.ReleaseHelp,
                SpotAction.Release,
                Free(_bar, CliMessages.ReleasedBarHelp),
                _hand
            ),
            Made("rewrite", CliMessages.RewriteHelp, SpotAction.Rewrite),
            Made(
                "figure",
                CliMessages.FigureHelp,
                SpotAction.Figure,
                Needed(_name),
                Needed(_bar),
                _bars,
                _whose,
                _kind
            ),
            Made("use", CliMessages.UseHelp, SpotAction.Use, Needed(_name), Free(_bar, CliMessages.UsedBarHelp), _of),
        ];
    }

    public IReadOnlyList<Command> Commands { get; }

    private static Option<string?> Hand(string help) =>
        Options.Chosen("--hand", help, "HAND", text => text is "left" or "right" ? text : null, "left, right");

    private static Option<string?> Needed(Option<string?> option) =>
        new(option.Name)
        {
            Description = option.Description,
            HelpName = option.HelpName,
            Required = true,
        };

    private static Option<string?> Free(Option<string?> option, string help) =>
        new(option.Name) { Description = help, HelpName = option.HelpName };

    private Command Made(string name, string help, SpotAction action, params Option[] options)
    {
        var command = new Command(name, help) { _file };
        if (action == SpotAction.Rewrite)
        {
            command.Add(_score);
        }
        foreach (var option in options.Append(_json))
        {
            command.Add(option);
        }
        command.SetAction(parsed => Run(parsed, action));
        return command;
    }

    private int Run(ParseResult parsed, SpotAction action)
    {
        using var useCases = _desk.Open();
        var report = useCases.Spots(
            new SpotRequest
            {
                File = parsed.GetRequiredValue(_file),
                Action = action,
                Bar = action == SpotAction.Rewrite ? null : parsed.GetValue<string?>(_bar.Name),
                Hand = action is SpotAction.Keep or SpotAction.Release or SpotAction.Figure
                    ? parsed.GetValue<string?>(_hand.Name)
                    : null,
                Each = action == SpotAction.Ways ? parsed.GetValue(_each) : null,
                Way = action == SpotAction.Choose ? parsed.GetValue<string?>(_way.Name) : null,
                Figure = action is SpotAction.Figure or SpotAction.Use ? parsed.GetValue<string?>(_name.Name) : null,
                Bars = action == SpotAction.Figure ? parsed.GetValue(_bars) : null,
                FigureKind = action == SpotAction.Figure ? parsed.GetValue(_kind) : null,
                Source = action == SpotAction.Use ? parsed.GetValue(_of) : null,
                Edited = action == SpotAction.Rewrite ? parsed.GetRequiredValue(_score) : null,
            },
            _desk.Cancellation
        );
        if (parsed.GetValue(_json))
        {
            ReportJson.Write(_desk.Output, report);
        }
        else if (report.Problems.Count == 0 && !report.Cancelled)
        {
            SpotSummary.Write(_desk.Output, report, action);
        }
        _desk.Errors(report.Problems, areWishes: false);
        return report.Cancelled ? ExitCode.Cancelled
            : report.Problems.Count > 0 ? ExitCode.Nothing
            : ExitCode.Done;
    }
}
