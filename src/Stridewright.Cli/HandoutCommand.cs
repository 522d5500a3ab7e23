using System.CommandLine;
using System.Globalization;
using Stridewright.Cli.Output;
using Stridewright.Music;
using Stridewright.Workbench;
using Stridewright.Workbench.Handouts;

namespace Stridewright.Cli;

/// <summary><c>handout</c>: a tune or an arrangement in, one page for a pupil out.</summary>
internal sealed class HandoutCommand
{
    private readonly Desk _desk;
    private readonly Argument<string> _file = new("FILE") { Description = HandoutMessages.FileHelp };
    private readonly Option<int?> _tune = Options.Whole("--tune", HandoutMessages.TuneHelp, "N");
    private readonly Option<string?> _bars = Options.Text("--bars", HandoutMessages.BarsHelp, "FIRST-LAST");
    private readonly Option<string?> _items = Options.Text("--items", HandoutMessages.ItemsHelp, "LIST");
    private readonly Option<string?> _levels = Options.Text("--levels", HandoutMessages.LevelsHelp, "LIST");
    private readonly Option<string?> _keyboard = Options.Text("--keyboard", HandoutMessages.KeyboardHelp, "LIST");
    private readonly Option<int?> _staves = Options.Whole("--staves", HandoutMessages.StavesHelp, "N");
    private readonly Option<string?> _text = Options.Text("--text", HandoutMessages.TextHelp, "WORDS");
    private readonly Option<string?> _pupil = Options.Text("--pupil", HandoutMessages.PupilHelp, "NAME");
    private readonly Option<string?> _credit = Options.Text("--credit", HandoutMessages.CreditHelp, "WORDS");
    private readonly Option<bool> _free = Options.Flag("--free", HandoutMessages.FreeHelp);
    private readonly Option<bool> _fingering = Options.Flag("--fingering", HandoutMessages.FingeringHelp);
    private readonly Option<bool> _oneSystem = Options.Flag("--one-system", HandoutMessages.OneSystemHelp);
    private readonly Option<string?> _out = new("--out")
    {
        Description = HandoutMessages.OutHelp,
        HelpName = "FILE",
        Required = true,
    };
    private readonly Option<string?> _paper = Options.Paper();
    private readonly Option<string?> _feel = Options.Text("--feel", CliMessages.FeelHelp, CliMessages.Feels);
    private readonly Option<int?> _level = Options.Whole("--level", CliMessages.LevelHelp, "1-6");
    private readonly Option<int?> _left = Options.Whole("--left", CliMessages.LeftHelp, "1-6");
    private readonly Option<int?> _right = Options.Whole("--right", CliMessages.RightHelp, "1-6");
    private readonly Option<double?> _raggedness = Options.Number("--raggedness", CliMessages.RaggednessHelp, "0-1");
    private readonly Option<string?> _key = Options.Text("--key", CliMessages.KeyHelp, "TONIC");
    private readonly Option<double?> _bpm = Options.Number("--bpm", CliMessages.BpmHelp, "BEATS");
    private readonly HandOptions _hands = new();
    private readonly Option<bool> _noOctaves = Options.Flag("--no-octaves", CliMessages.NoOctavesHelp);
    private readonly Option<bool> _json = Options.Flag("--json", CliMessages.JsonHelp);
    private readonly Option<bool> _replace = Options.Flag("--replace", CliMessages.ReplaceHelp);

    public HandoutCommand(Desk desk)
    {
        _desk = desk;
        Command = new Command("handout", HandoutMessages.Help)
        {
            _file,
            _tune,
            _bars,
            _items,
            _levels,
            _keyboard,
            _staves,
            _text,
            _pupil,
            _credit,
            _free,
            _fingering,
            _oneSystem,
            _out,
            _paper,
            _feel,
            _level,
            _left,
            _right,
            _raggedness,
            _key,
            _bpm,
            _hands.Player,
            _hands.Span,
            _hands.OctaveWidth,
            _noOctaves,
            _json,
            _replace,
        };
        _levels.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } given && Numbers(given) is null)
            {
                result.AddError(HandoutMessages.NotAList("--levels", given));
            }
        });
        Command.SetAction(Run);
    }

    public Command Command { get; }

    private int Run(ParseResult parsed)
    {
        using var useCases = _desk.Open();
        var report = useCases.Handout(Request(parsed), _desk.Cancellation);
        if (parsed.GetValue(_json))
        {
            ReportJson.Write(_desk.Output, report);
        }
        else
        {
            foreach (var file in report.Outputs)
            {
                _desk.Output.WriteLine(CliMessages.Row(file.Unchanged ? "unchanged" : "written", file.Path));
            }
        }
        _desk.Errors(report.Problems, areWishes: report.IsBadWish);
        return report.Cancelled ? ExitCode.Cancelled
            : report.Problems.Count > 0 ? ExitCode.Nothing
            : ExitCode.Done;
    }

    private HandoutRequest Request(ParseResult parsed) =>
        new()
        {
            File = parsed.GetRequiredValue(_file),
            Number = parsed.GetValue(_tune),
            Out = parsed.GetRequiredValue(_out)!,
            Replace = parsed.GetValue(_replace),
            Paper = Options.PaperOf(parsed, _paper),
            Wish = new HandoutWish
            {
                Bars = parsed.GetValue(_bars),
                Items = Options.Listed(parsed.GetValue(_items)),
                Levels = (Numbers(parsed.GetValue(_levels) ?? "") ?? []).ToValueList(),
                Keyboard = Options.Listed(parsed.GetValue(_keyboard)),
                Staves = parsed.GetValue(_staves),
                Text = parsed.GetValue(_text),
                Pupil = parsed.GetValue(_pupil),
                Credit = parsed.GetValue(_credit),
                Free = parsed.GetValue(_free),
                Fingering = parsed.GetValue(_fingering),
                OneSystem = parsed.GetValue(_oneSystem),
            },
            Wishes = new Wishes
            {
                Feel = parsed.GetValue(_feel),
                Level = parsed.GetValue(_level),
                LeftLevel = parsed.GetValue(_left),
                RightLevel = parsed.GetValue(_right),
                Raggedness = parsed.GetValue(_raggedness),
                Key = parsed.GetValue(_key),
                BeatsPerMinute = parsed.GetValue(_bpm),
                Player = parsed.GetValue(_hands.Player),
                Span = parsed.GetValue(_hands.Span),
                OctaveWidth = parsed.GetValue(_hands.OctaveWidth),
                NoOctaves = parsed.GetValue(_noOctaves),
            },
        };

    private static List<int>? Numbers(string list)
    {
        var words = Options.Listed(list);
        var numbers = words
            .Select(w => int.TryParse(w, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : -1)
            .ToList();
        return numbers.Contains(-1) ? null : numbers;
    }
}
