using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Stridewright.Music;
using Stridewright.Workbench;

namespace Stridewright.Cli;

/// <summary>Makes options whose faults are told in a sentence of ours.</summary>
internal static class Options
{
    public static Option<string?> Text(string name, string help, string value) =>
        new(name) { Description = help, HelpName = value };

    public static Option<bool> Flag(string name, string help) => new(name) { Description = help };

    public static Option<int?> Whole(string name, string help, string value) =>
        new(name)
        {
            Description = help,
            HelpName = value,
            CustomParser = result =>
                int.TryParse(Given(result), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)
                    ? number
                    : Fault<int?>(result, CliMessages.NotWhole(name, Given(result))),
        };

    public static Option<double?> Number(string name, string help, string value) =>
        new(name)
        {
            Description = help,
            HelpName = value,
            CustomParser = result =>
                double.TryParse(Given(result), NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
                    ? number
                    : Fault<double?>(result, CliMessages.NotNumber(name, Given(result))),
        };

    public static Option<T?> Chosen<T>(string name, string help, string value, Func<string, T?> read, string fault)
        where T : class =>
        new(name)
        {
            Description = help,
            HelpName = value,
            CustomParser = result =>
                read(Given(result)) ?? Fault<T?>(result, CliMessages.NotAmong(name, Given(result), fault)),
        };

    public static Option<string?> Paper() =>
        Chosen(
            "--paper",
            CliMessages.PaperHelp,
            CliMessages.Papers,
            text => Choices.Paper(text) is null ? null : text,
            CliMessages.Papers
        );

    /// <summary>The paper that was chosen, else A4.</summary>
    public static Paper PaperOf(ParseResult parsed, Option<string?> paper) =>
        parsed.GetValue(paper) is { } chosen ? Choices.Paper(chosen)!.Value : Workbench.Paper.A4;

    /// <summary>Words with commas between them; empty where there are none.</summary>
    public static ValueList<string> Listed(string? words) =>
        [.. (words ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];

    public static Option<ValueList<OutputFormat>?> Formats(string help) =>
        Chosen("--format", help, "LIST", Choices.Formats, CliMessages.Formats);

    private static string Given(ArgumentResult result) => result.Tokens.Count > 0 ? result.Tokens[0].Value : "";

    private static T Fault<T>(ArgumentResult result, string message)
    {
        result.AddError(message);
        return default!;
    }
}
