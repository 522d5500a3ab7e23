using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using Stridewright.Workbench;

namespace Stridewright.Cli;

/// <summary>The command line: words in, text and an exit code out.</summary>
/// <param name="open">Opens the use cases; asked once a command is to be carried out.</param>
public sealed class CommandLineApp(Func<IUseCases> open, TextWriter output, TextWriter error)
{
    /// <summary>Characters in a line of help that is led into a file.</summary>
    private const int WidthOfHelp = 118;

    /// <summary>Both writers are a terminal: progress may be drawn.</summary>
    public bool SomebodyLooksOn { get; init; }

    /// <returns>An exit code of <see cref="ExitCode"/>.</returns>
    public int Run(string[] args, CancellationToken cancellation)
    {
        var desk = new Desk(open, output, error, SomebodyLooksOn, cancellation);
        var root = new RootCommand(CliMessages.Root)
        {
            new ArrangeCommand(desk).Command,
            new ArrangeCommand(desk, accompanies: true).Command,
            new CheckCommand(desk).Command,
            new PlayerCommand(desk).Command,
            new ProfileCommand(desk).Command,
            new FingerCommand(desk).Command,
            new CompareCommand(desk).Command,
            new LessonCommand(desk).Command,
            new ProgressCommand(desk).Command,
            new HandoutCommand(desk).Command,
            new ServeCommand(desk).Command,
        };
        foreach (var command in new SpotCommands(desk).Commands)
        {
            root.Add(command);
        }
        if (args.Length == 0)
        {
            Invoke(root.Parse(["--help"]), error);
            return ExitCode.Nothing;
        }
        if (!SomebodyLooksOn && root.Options.OfType<HelpOption>().Single().Action is HelpAction help)
        {
            help.MaxWidth = WidthOfHelp;
        }
        var parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parsed.Action is ParseErrorAction)
        {
            foreach (var fault in parsed.Errors)
            {
                desk.ArgumentError(fault.Message);
            }
            error.WriteLine(CliMessages.SeeHelp(parsed.CommandResult.Command.Name));
            return ExitCode.Nothing;
        }
        try
        {
            return Invoke(parsed, output);
        }
        catch (IOException fault)
        {
            // The terminal or the file that the output was led into is full or gone.
            error.WriteLine(CliMessages.NoOutput(fault.Message));
            return ExitCode.Nothing;
        }
    }

    private int Invoke(ParseResult parsed, TextWriter to) =>
        parsed.Invoke(
            new InvocationConfiguration
            {
                Output = to,
                Error = error,
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = null,
            }
        );
}

/// <summary>What the program's exit tells a script.</summary>
public static class ExitCode
{
    /// <summary>All written; for <c>check</c>: playable.</summary>
    public const int Done = 0;

    /// <summary>Some refused or unreadable, but something written; for <c>check</c>: not playable.</summary>
    public const int Partly = 1;

    /// <summary>Nothing written, or bad arguments.</summary>
    public const int Nothing = 2;

    /// <summary>Interrupted (128 and the number of the signal, as shells count it).</summary>
    public const int Cancelled = 130;
}
