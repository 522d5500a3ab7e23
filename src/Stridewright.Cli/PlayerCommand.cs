using System.CommandLine;
using Stridewright.Cli.Output;
using Stridewright.Music;
using Stridewright.Workbench;

namespace Stridewright.Cli;

/// <summary><c>player</c>: a player's hands shown, changed and written.</summary>
internal sealed class PlayerCommand
{
    private readonly Desk _desk;
    private readonly Argument<string?> _file = new("FILE")
    {
        Description = CliMessages.PlayerFileHelp,
        Arity = ArgumentArity.ZeroOrOne,
    };
    private readonly Option<string?> _out = Options.Text("--out", CliMessages.PlayerOutHelp, "FILE");
    private readonly Option<string?> _name = Options.Text("--name", CliMessages.PlayerNameHelp, "NAME");
    private readonly Option<string?> _notes = Options.Text("--notes", CliMessages.PlayerNotesHelp, "TEXT");
    private readonly Option<string?> _usual = Options.Text("--usual", CliMessages.UsualHelp, "HAND");
    private readonly Option<string?> _leapTest = Options.Text("--leap-test", CliMessages.LeapTestHelp, "TAKE");
    private readonly Option<string?> _writeTest = Options.Text(
        "--write-leap-test",
        CliMessages.WriteTestHelp,
        "FOLDER"
    );
    private readonly Option<bool> _replace = Options.Flag("--replace", CliMessages.ReplaceHelp);
    private readonly Option<bool> _json = Options.Flag("--json", CliMessages.JsonHelp);
    private readonly List<(PlayerWord Word, Option<string?> Option)> _said = [];
    private readonly List<(PlayerWord Word, Option<bool> Option)> _wished = [];

    public PlayerCommand(Desk desk)
    {
        _desk = desk;
        Command = new Command("player", CliMessages.PlayerCommandHelp) { _file, _out, _name, _usual };
        foreach (var word in PlayerRequest.Words)
        {
            var (name, help) = ("--" + word.Word, CliMessages.HandsWordHelp(word.Word, word.Expected));
            if (word.Expected.Length == 0)
            {
                _wished.Add((word, Options.Flag(name, help)));
                Command.Add(_wished[^1].Option);
            }
            else
            {
                _said.Add((word, Options.Text(name, help, "VALUE")));
                Command.Add(_said[^1].Option);
            }
        }
        Command.Add(_notes);
        Command.Add(_leapTest);
        Command.Add(_writeTest);
        Command.Add(_replace);
        Command.Add(_json);
        Command.Add(new ForgetCommand(desk).Command);
        Command.SetAction(Run);
    }

    public Command Command { get; }

    private int Run(ParseResult parsed)
    {
        using var useCases = _desk.Open();
        var said = _said
            .Where(s => parsed.GetValue(s.Option) is not null)
            .Select(s => new HandsSaid(s.Word.Word, parsed.GetValue(s.Option)!));
        var wished = _wished.Where(w => parsed.GetValue(w.Option)).Select(w => new HandsSaid(w.Word.Word, ""));
        var request = new PlayerRequest
        {
            File = parsed.GetValue(_file),
            Out = parsed.GetValue(_out),
            Replace = parsed.GetValue(_replace),
            Name = parsed.GetValue(_name),
            Notes = parsed.GetValue(_notes),
            Usual = parsed.GetValue(_usual),
            LeapTest = parsed.GetValue(_leapTest),
            LeapTestFolder = parsed.GetValue(_writeTest),
            Hands = said.Concat(wished).ToValueList(),
        };
        PlayerReport report;
        try
        {
            report = useCases.Player(request, _desk.Cancellation);
        }
        catch (OperationCanceledException)
        {
            return ExitCode.Cancelled;
        }
        if (parsed.GetValue(_json))
        {
            ReportJson.Write(_desk.Output, report);
        }
        else
        {
            PlayerSummary.Write(_desk.Output, report);
        }
        _desk.Errors(report.Problems.Where(p => p.File == request.File), areWishes: false);
        _desk.Errors(report.Problems.Where(p => p.File != request.File), areWishes: true);
        return report.Problems.Count > 0 ? ExitCode.Nothing : ExitCode.Done;
    }
}
