using System.CommandLine;
using System.ComponentModel;
using System.Diagnostics;
using Stridewright.Web;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Cli;

/// <summary><c>serve</c>: the page, until it is interrupted.</summary>
internal sealed class ServeCommand
{
    private const int HighestPort = 65535;

    private readonly Desk _desk;
    private readonly Option<int?> _port = Options.Whole("--port", CliMessages.PortHelp, "N");
    private readonly Option<string?> _data = Options.Text("--data", CliMessages.DataHelp, "DIR");
    private readonly Option<bool> _noBrowser = Options.Flag("--no-browser", CliMessages.NoBrowserHelp);

    public ServeCommand(Desk desk)
    {
        _desk = desk;
        Command = new Command("serve", CliMessages.ServeHelp) { _port, _data, _noBrowser };
        _port.Validators.Add(result =>
        {
            if (
                result.Errors.Any()
                || result.GetValueOrDefault<int?>() is not { } port
                || port is >= 0 and <= HighestPort
            )
            {
                return;
            }
            result.AddError(CliMessages.NoPort(port, HighestPort));
        });
        Command.SetAction(
            (parsed, _) =>
                Run(parsed.GetValue(_port) ?? PageHost.UsualPort, parsed.GetValue(_data), parsed.GetValue(_noBrowser))
        );
    }

    public Command Command { get; }

    private async Task<int> Run(int port, string? data, bool noBrowser)
    {
        PageHost host;
        try
        {
            host = await PageHost.Start(port, data, _desk.Cancellation);
        }
        catch (ShelfRefusedException refused)
        {
            _desk.Error("--data", "", refused.Message);
            return ExitCode.Nothing;
        }
        catch (IOException)
        {
            _desk.Error("--port", "", CliMessages.PortTaken(port));
            return ExitCode.Nothing;
        }
        catch (OperationCanceledException)
        {
            return ExitCode.Cancelled;
        }
        await using (host)
        {
            _desk.Output.WriteLine(CliMessages.Serving(host.Address, host.Folder));
            if (!noBrowser && _desk.SomebodyLooksOn)
            {
                OpenBrowser(host.Address);
            }
            var stopped = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            await using var registration = _desk.Cancellation.Register(stopped.SetResult);
            await stopped.Task;
        }
        return ExitCode.Done;
    }

    private void OpenBrowser(Uri address)
    {
        try
        {
            using var browser = Process.Start(new ProcessStartInfo(address.ToString()) { UseShellExecute = true });
        }
        catch (Exception fault) when (fault is Win32Exception or PlatformNotSupportedException or FileNotFoundException)
        {
            _desk.Output.WriteLine(CliMessages.NoBrowser);
        }
    }
}
