using System.CommandLine;
using Stridewright.Cli.Output;
using Stridewright.Music;
using Stridewright.Workbench;

namespace Stridewright.Cli;

/// <summary><c>finger</c>: scores in, scores with fingers out.</summary>
internal sealed class FingerCommand
{
    private readonly Desk _desk;
    private readonly Argument<string[]> _scores = new("SCORE")
    {
        Description = CliMessages.FingeredScoresHelp,
        Arity = ArgumentArity.OneOrMore,
    };
    private readonly Option<string?> _out = Options.Text("--out", CliMessages.FingerOutHelp, "DIR");
    private readonly Option<string?> _density = Options.Text(
        "--density",
        CliMessages.DensityHelp,
        CliMessages.Densities
    );
    private readonly Option<string?> _keep = Options.Text("--keep", CliMessages.KeepFingersHelp, CliMessages.Keeps);
    private readonly HandOptions _hands = new();
    private readonly Option<double?> _bpm = Options.Number("--bpm", CliMessages.FingerBpmHelp, "BEATS");
    private readonly Option<string?> _paper = Options.Paper();
    private readonly Option<ValueList<OutputFormat>?> _format = Options.Formats(CliMessages.FingerFormatHelp);
    private readonly Option<bool> _json = Options.Flag("--json", CliMessages.JsonHelp);
    private readonly Option<bool> _replace = Options.Flag("--replace", CliMessages.ReplaceHelp);

    public FingerCommand(Desk desk)
    {
        _desk = desk;
        Command = new Command("finger", CliMessages.FingerHelp)
        {
            _scores,
            _out,
            _density,
            _keep,
            _hands.Player,
            _hands.Span,
            _hands.OctaveWidth,
            _bpm,
            _paper,
            _format,
            _json,
            _replace,
        };
        Command.SetAction(Run);
    }

    public Command Command { get; }

    private int Run(ParseResult parsed)
    {
        using var useCases = _desk.Open();
        var request = new FingerRequest
        {
            Scores = parsed.GetRequiredValue(_scores).ToValueList(),
            OutputFolder = parsed.GetValue(_out) is { Length: > 0 } folder ? folder : FingerRequest.UsualFolder,
            Density = parsed.GetValue(_density),
            Keep = parsed.GetValue(_keep),
            Player = parsed.GetValue(_hands.Player),
            Span = parsed.GetValue(_hands.Span),
            OctaveWidth = parsed.GetValue(_hands.OctaveWidth),
            BeatsPerMinute = parsed.GetValue(_bpm),
            Paper = Options.PaperOf(parsed, _paper),
            Formats = parsed.GetValue(_format) ?? FingerRequest.UsualFormats,
            Replace = parsed.GetValue(_replace),
        };
        var report = useCases.Finger(request, _desk.Cancellation);
        _desk.Tell(
            parsed.GetValue(_json) ? o => ReportJson.Write(o, report) : o => FingerSummary.Write(o, report),
            report.Problems,
            areWishes: report.IsBadWish
        );
        return report.Cancelled ? ExitCode.Cancelled
            : report.Written.Count == 0 ? ExitCode.Nothing
            : report.Problems.Count > 0 ? ExitCode.Partly
            : ExitCode.Done;
    }
}
