using Spectre.Console;
using Stridewright.Workbench;

namespace Stridewright.Cli.Output;

/// <summary>A bar for the person who waits, drawn once there is more than one thing to wait for.</summary>
internal static class ProgressBar
{
    public static T Around<T>(TextWriter terminal, Func<IProgress<ArrangeProgress>, T> work)
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(terminal) });
        return console
            .Progress()
            .AutoClear(true)
            .Columns(new ProgressBarColumn(), new PercentageColumn(), new TaskDescriptionColumn())
            .Start(context => work(new Bar(context)));
    }

    private sealed class Bar(ProgressContext context) : IProgress<ArrangeProgress>
    {
        private ProgressTask? _task;

        public void Report(ArrangeProgress value)
        {
            if (value.Files == 1 && value.Done is 0 or 1)
            {
                return;
            }
            var name = CliMessages.OneLine(value.Current);
            var shown = string.IsNullOrWhiteSpace(name) ? CliMessages.Finishing : Markup.Escape(name);
            _task ??= context.AddTask(shown, maxValue: Math.Max(1, value.Files));
            _task.Description = shown;
            _task.Value = value.Done;
        }
    }
}
