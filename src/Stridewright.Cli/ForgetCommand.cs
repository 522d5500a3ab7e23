using System.CommandLine;
using Stridewright.Workbench.Practising;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Cli;

/// <summary><c>player forget</c>: a player and all of theirs thrown away from a shelf.</summary>
internal sealed class ForgetCommand
{
    private readonly Desk _desk;
    private readonly Argument<string> _name = new("NAME") { Description = CliMessages.ForgetNameHelp };
    private readonly Option<string?> _data = Options.Text("--data", CliMessages.DataHelp, "DIR");
    private readonly Option<bool> _yes = Options.Flag("--yes", CliMessages.ForgetYesHelp);

    public ForgetCommand(Desk desk)
    {
        _desk = desk;
        Command = new Command("forget", CliMessages.ForgetHelp) { _name, _data, _yes };
        Command.SetAction((parsed, _) => Run(parsed));
    }

    public Command Command { get; }

    private async Task<int> Run(ParseResult parsed)
    {
        try
        {
            using var shelf = ShelfDesk.Take(parsed.GetValue(_data));
            var player = await Players.Called(shelf, parsed.GetRequiredValue(_name), _desk);
            if (!parsed.GetValue(_yes))
            {
                var takes = await shelf.Takes.List(player.Id, null, _desk.Cancellation);
                _desk.Error(player.Name, "", CliMessages.WouldForget(takes.Count));
                return ExitCode.Nothing;
            }
            var gone = await shelf.Progress.Forget(player.Id, _desk.Cancellation);
            _desk.Output.WriteLine(CliMessages.OneLine(gone.Message));
            return ExitCode.Done;
        }
        catch (ShelfRefusedException refused)
        {
            _desk.Error(refused.IsMissing ? "NAME" : "--data", "", refused.Message);
            return ExitCode.Nothing;
        }
    }
}

/// <summary>Players of a shelf by their names.</summary>
internal static class Players
{
    /// <exception cref="ShelfRefusedException">Nobody is called so.</exception>
    public static async Task<ShelvedPlayer> Called(ShelfDesk shelf, string name, Desk desk) =>
        await shelf.Players.Find(name, desk.Cancellation)
        ?? throw new ShelfRefusedException(CliMessages.NobodyCalled(name)) { IsMissing = true };
}
