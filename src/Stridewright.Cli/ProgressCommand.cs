using System.CommandLine;
using System.Globalization;
using Stridewright.Cli.Output;
using Stridewright.Workbench.Practising;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Cli;

/// <summary><c>progress</c>: how players have come on, by the takes on a shelf.</summary>
internal sealed class ProgressCommand
{
    private const string DayFormat = "yyyy-MM-dd";

    private readonly Desk _desk;
    private readonly Option<string?> _data = Options.Text("--data", CliMessages.DataHelp, "DIR");
    private readonly Option<string?> _player = Options.Text("--player", CliMessages.ProgressPlayerHelp, "NAME");
    private readonly Option<string?> _on = Options.Text("--on", CliMessages.ProgressDayHelp, "DAY");
    private readonly Option<string?> _csv = Options.Text("--csv", CliMessages.ProgressCsvHelp, "FILE");
    private readonly Option<bool> _replace = Options.Flag("--replace", CliMessages.ReplaceHelp);
    private readonly Option<bool> _json = Options.Flag("--json", CliMessages.JsonHelp);

    public ProgressCommand(Desk desk)
    {
        _desk = desk;
        Command = new Command("progress", CliMessages.ProgressHelp) { _data, _player, _on, _csv, _replace, _json };
        Command.SetAction((parsed, _) => Run(parsed));
    }

    public Command Command { get; }

    private async Task<int> Run(ParseResult parsed)
    {
        var now = TimeProvider.System.GetLocalNow();
        if (parsed.GetValue(_on) is { } day)
        {
            if (!DateOnly.TryParseExact(day, DayFormat, CultureInfo.InvariantCulture, DateTimeStyles.None, out var on))
            {
                _desk.Error("--on", "", CliMessages.NoDay(day));
                return ExitCode.Nothing;
            }
            now = new(on.ToDateTime(TimeOnly.MinValue), now.Offset);
        }
        ProgressReport report;
        try
        {
            using var shelf = ShelfDesk.Take(parsed.GetValue(_data));
            var player = parsed.GetValue(_player) is { } name ? await Players.Called(shelf, name, _desk) : null;
            report = await shelf.Progress.Of(player?.Id, now, _desk.Cancellation);
        }
        catch (ShelfRefusedException refused)
        {
            _desk.Error(refused.IsMissing ? "--player" : "--data", "", refused.Message);
            return ExitCode.Nothing;
        }
        if (parsed.GetValue(_json))
        {
            ReportJson.Write(_desk.Output, report);
        }
        else
        {
            ProgressSummary.Write(_desk.Output, report);
        }
        return parsed.GetValue(_csv) is not { } csv || Written(csv, report, parsed) ? ExitCode.Done : ExitCode.Nothing;
    }

    private bool Written(string csv, ProgressReport report, ParseResult parsed)
    {
        var written = ProgressFile.Write(csv, report, parsed.GetValue(_replace), _desk.Cancellation, out var problem);
        if (written is null)
        {
            _desk.Error("--csv", "", problem);
        }
        else if (!parsed.GetValue(_json))
        {
            _desk.Output.WriteLine(CliMessages.Row(written.Unchanged ? "unchanged" : "written", written.Path));
        }
        return written is not null;
    }
}
