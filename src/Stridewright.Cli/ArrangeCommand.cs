using System.CommandLine;
using System.Globalization;
using Stridewright.Cli.Output;
using Stridewright.Music;
using Stridewright.Workbench;
using Stridewright.Workbench.Reports;

namespace Stridewright.Cli;

/// <summary><c>arrange</c>: tunes in, settings out.</summary>
internal sealed class ArrangeCommand
{
    private readonly Desk _desk;
    private readonly Argument<string[]> _tunes = new("TUNE")
    {
        Description = CliMessages.TuneHelp,
        Arity = ArgumentArity.ZeroOrMore,
    };
    private readonly Option<string?> _chords = Options.Text("--chords", CliMessages.ChordsHelp, "LINE");
    private readonly Option<string?> _title = Options.Text("--title", CliMessages.TitleHelp, "WORDS");
    private readonly Option<bool> _allKeys = Options.Flag("--all-keys", CliMessages.AllKeysHelp);
    private readonly Option<bool> _leftHandOnly = Options.Flag("--left-hand-only", CliMessages.LeftHandOnlyHelp);
    private readonly Option<string?> _out = Options.Text("--out", CliMessages.OutHelp, "DIR");
    private readonly Option<string?> _part = Options.Text("--part", CliMessages.PartHelp, "NAME");
    private readonly Option<string?> _feel = Options.Text("--feel", CliMessages.FeelHelp, CliMessages.Feels);
    private readonly Option<int?> _level = Options.Whole("--level", CliMessages.LevelHelp, "1-6");
    private readonly Option<LevelRange?> _levels = Options.Chosen(
        "--levels",
        CliMessages.LevelsHelp,
        "1-6",
        Choices.Levels,
        CliMessages.LevelRanges
    );
    private readonly Option<int?> _left = Options.Whole("--left", CliMessages.LeftHelp, "1-6");
    private readonly Option<int?> _right = Options.Whole("--right", CliMessages.RightHelp, "1-6");
    private readonly Option<double?> _effort = Options.Number("--effort", CliMessages.EffortHelp, "1-100");
    private readonly Option<double?> _raggedness = Options.Number("--raggedness", CliMessages.RaggednessHelp, "0-1");
    private readonly Option<string?> _play = Options.Text("--play", CliMessages.PlayHelp, "LIST");
    private readonly Option<string?> _harmony = Options.Text(
        "--harmony",
        CliMessages.HarmonyHelp,
        CliMessages.Richnesses
    );
    private readonly Option<string?> _without = Options.Text("--without", CliMessages.WithoutHelp, "LIST");
    private readonly Option<string?> _key = Options.Text("--key", CliMessages.KeyHelp, "TONIC");
    private readonly Option<double?> _bpm = Options.Number("--bpm", CliMessages.BpmHelp, "BEATS");
    private readonly Option<string?> _form = Options.Text("--form", CliMessages.FormHelp, "LINE");
    private readonly Option<string?> _minutes = Options.Text("--minutes", CliMessages.MinutesHelp, "M");
    private readonly Option<int?> _pages = Options.Whole("--pages", CliMessages.PagesHelp, "N");
    private readonly HandOptions _hands = new();
    private readonly Option<bool> _noOctaves = Options.Flag("--no-octaves", CliMessages.NoOctavesHelp);
    private readonly Option<bool> _lyrics = Options.Flag("--lyrics", CliMessages.LyricsHelp);
    private readonly Option<bool> _showPlain = Options.Flag("--show-plain", CliMessages.ShowPlainHelp);
    private readonly Option<bool> _why = Options.Flag("--why", CliMessages.WhyHelp);
    private readonly Option<bool> _notes = Options.Flag("--notes", CliMessages.NotesHelp);
    private readonly Option<bool> _plain = Options.Flag("--plain", CliMessages.PlainHelp);
    private readonly Option<string?> _paper = Options.Paper();
    private readonly Option<ValueList<OutputFormat>?> _format = Options.Formats(CliMessages.FormatHelp);
    private readonly Option<bool> _json = Options.Flag("--json", CliMessages.JsonHelp);
    private readonly Option<int?> _seed = Options.Whole("--seed", CliMessages.SeedHelp, "NUMBER");
    private readonly Option<int?> _settings = Options.Whole("--settings", CliMessages.SettingsHelp, "N");
    private readonly Option<string?> _figures = Options.Text("--figures", CliMessages.FiguresHelp, "FILE");
    private readonly Option<string?> _save = Options.Text("--save", CliMessages.SaveHelp, "FILE");
    private readonly Option<bool> _replace = Options.Flag("--replace", CliMessages.ReplaceHelp);

    private readonly Option<bool> _sketch = Options.Flag("--sketch", CliMessages.SketchHelp);
    private readonly Option<string?> _range = Options.Text("--range", CliMessages.RangeHelp, "LOW-HIGH");
    private readonly bool _accompanies;

    /// <param name="accompanies">The tune is left to a voice: <c>accompany</c>.</param>
    public ArrangeCommand(Desk desk, bool accompanies = false)
    {
        _desk = desk;
        _accompanies = accompanies;
        _tunes.Validators.Add(result =>
        {
            foreach (var token in result.Tokens.Where(t => t.Value.StartsWith('-')))
            {
                result.AddError(CliMessages.NoOption(token.Value));
            }
        });
        Command = new Command(
            accompanies ? "accompany" : "arrange",
            accompanies ? CliMessages.AccompanyHelp : CliMessages.ArrangeHelp
        )
        {
            _tunes,
            _chords,
            _title,
            _leftHandOnly,
            _allKeys,
            _out,
            _part,
            _feel,
            _level,
            _levels,
            _left,
            _right,
            _effort,
            _raggedness,
            _key,
            _range,
            _play,
            _harmony,
            _without,
            _bpm,
            _form,
            _minutes,
            _pages,
            _hands.Player,
            _hands.Span,
            _hands.OctaveWidth,
            _noOctaves,
            _lyrics,
            _plain,
            _sketch,
            _showPlain,
            _why,
            _notes,
            _paper,
            _format,
            _json,
            _seed,
            _settings,
            _figures,
            _save,
            _replace,
        };
        Command.Validators.Add(result =>
        {
            if (result.GetResult(_tunes) is not { Tokens.Count: > 0 } && result.GetResult(_chords) is null)
            {
                result.AddError(CliMessages.NothingNamed);
            }
        });
        Option[] others = accompanies
            ? [_chords, _title, _leftHandOnly, _allKeys, _lyrics, _plain, _showPlain]
            : [_range];
        foreach (var option in others)
        {
            Command.Options.Remove(option);
        }
        Command.SetAction(Run);
    }

    public Command Command { get; }

    private int Run(ParseResult parsed)
    {
        using var useCases = _desk.Open();
        var request = Request(parsed);
        var report = _desk.SomebodyLooksOn
            ? ProgressBar.Around(_desk.ErrorOutput, bar => useCases.Arrange(request, bar, _desk.Cancellation))
            : useCases.Arrange(request, null, _desk.Cancellation);
        _desk.Tell(
            parsed.GetValue(_json) ? o => ReportJson.Write(o, report) : o => ArrangeSummary.Write(o, report),
            report.Problems,
            areWishes: report.Outcome == ArrangeOutcome.BadWish
        );
        return report.Outcome switch
        {
            ArrangeOutcome.AllWritten => ExitCode.Done,
            ArrangeOutcome.SomeWritten => ExitCode.Partly,
            ArrangeOutcome.Cancelled => ExitCode.Cancelled,
            _ => ExitCode.Nothing,
        };
    }

    private ArrangeRequest Request(ParseResult parsed) =>
        new()
        {
            Tunes = (parsed.GetValue(_tunes) ?? []).ToValueList(),
            Chords = parsed.GetValue(_chords),
            Title = parsed.GetValue(_title) is { Length: > 0 } title ? title : null,
            AllKeys = parsed.GetValue(_allKeys),
            OutputFolder = parsed.GetValue(_out) is { Length: > 0 } folder ? folder : ArrangeRequest.UsualFolder,
            Formats = parsed.GetValue(_format) ?? ArrangeRequest.UsualFormats,
            Paper = Options.PaperOf(parsed, _paper),
            Levels = parsed.GetValue(_levels),
            Plain = parsed.GetValue(_plain),
            Sketch = parsed.GetValue(_sketch),
            Why = parsed.GetValue(_why),
            Notes = parsed.GetValue(_notes),
            Replace = parsed.GetValue(_replace),
            Settings = parsed.GetValue(_settings),
            Figures = parsed.GetValue(_figures),
            Save = parsed.GetValue(_save),
            Part = parsed.GetValue(_part),
            Pages = parsed.GetValue(_pages),
            Wishes = new Wishes
            {
                Feel = parsed.GetValue(_feel),
                Level = parsed.GetValue(_level),
                LeftLevel = parsed.GetValue(_left),
                RightLevel = parsed.GetValue(_right),
                Effort = parsed.GetValue(_effort),
                Raggedness = parsed.GetValue(_raggedness),
                Key = parsed.GetValue(_key),
                Accompany = _accompanies,
                Range = _accompanies ? parsed.GetValue(_range) : null,
                BeatsPerMinute = parsed.GetValue(_bpm),
                Form = parsed.GetValue(_form),
                Minutes = parsed.GetValue(_minutes),
                Player = parsed.GetValue(_hands.Player),
                Span = parsed.GetValue(_hands.Span),
                OctaveWidth = parsed.GetValue(_hands.OctaveWidth),
                NoOctaves = parsed.GetValue(_noOctaves),
                LeftHandOnly = parsed.GetValue(_leftHandOnly),
                Lyrics = parsed.GetValue(_lyrics),
                Harmony = parsed.GetValue(_harmony),
                Play = Options.Listed(parsed.GetValue(_play)),
                Without = Options.Listed(parsed.GetValue(_without)),
                ShowPlain = parsed.GetValue(_showPlain),
                Seed = parsed.GetValue(_seed),
            },
        };
}

/// <summary>The options that describe a pair of hands.</summary>
internal sealed class HandOptions
{
    public Option<string?> Player { get; } = Options.Text("--player", CliMessages.PlayerHelp, "FILE");

    public Option<string?> Span { get; } = Options.Text("--span", CliMessages.SpanHelp, "SPAN");

    public Option<string?> OctaveWidth { get; } = Options.Text("--octave-width", CliMessages.OctaveWidthHelp, "WIDTH");
}

/// <summary>Choices given as words.</summary>
internal static class Choices
{
    public static Paper? Paper(string text) =>
        text.ToLowerInvariant() switch
        {
            "a4" => Workbench.Paper.A4,
            "letter" => Workbench.Paper.Letter,
            _ => null,
        };

    /// <summary>Levels such as <c>1-6</c>, or one; null when the text is neither.</summary>
    public static LevelRange? Levels(string text)
    {
        var ends = text.Split('-', StringSplitOptions.TrimEntries);
        return ends.Length is 1 or 2 && Level(ends[0]) is { } first && Level(ends[^1]) is { } last
            ? new LevelRange(first, last)
            : null;

        static int? Level(string text) =>
            int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var level) ? level : null;
    }

    /// <summary>The formats of a comma list; null when one of them is none.</summary>
    public static ValueList<OutputFormat>? Formats(string text)
    {
        var formats = text.Split(',', StringSplitOptions.TrimEntries).Select(Format).ToList();
        return formats.Contains(null) ? null : formats.Select(f => f!.Value).Distinct().ToValueList();
    }

    private static OutputFormat? Format(string text) =>
        text.ToLowerInvariant() switch
        {
            "musicxml" => OutputFormat.MusicXml,
            "mxl" => OutputFormat.Mxl,
            "midi" => OutputFormat.Midi,
            "pdf" => OutputFormat.Pdf,
            "svg" => OutputFormat.Svg,
            "png" => OutputFormat.Png,
            "wav" => OutputFormat.Wav,
            "phone" => OutputFormat.Phone,
            _ => null,
        };
}
