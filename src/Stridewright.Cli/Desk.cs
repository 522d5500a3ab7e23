using Stridewright.Workbench;
using Stridewright.Workbench.Reports;

namespace Stridewright.Cli;

/// <summary>What the commands share: where to ask, where to write, when to stop.</summary>
internal sealed record Desk(
    Func<IUseCases> Open,
    TextWriter Output,
    TextWriter ErrorOutput,
    bool SomebodyLooksOn,
    CancellationToken Cancellation
)
{
    /// <summary>Tells what came of a run and what went wrong in it.</summary>
    /// <param name="report">Writes what came of it; not asked where the wishes themselves were wrong.</param>
    public void Tell(Action<TextWriter> report, IEnumerable<Problem> problems, bool areWishes)
    {
        if (!areWishes)
        {
            report(Output);
        }
        Errors(problems, areWishes);
    }

    public void Errors(IEnumerable<Problem> problems, bool areWishes)
    {
        foreach (var problem in problems)
        {
            var place =
                problem.Tune is null ? problem.Place
                : problem.Place.Length == 0 ? problem.Tune
                : $"{problem.Tune}, {problem.Place}";
            Error(
                areWishes || problem.File is "out" or "plot" ? "--" + problem.File : problem.File,
                place,
                problem.Message
            );
        }
    }

    /// <summary>A fault of the command line itself, which names its option where it can.</summary>
    public void ArgumentError(string message) =>
        ErrorOutput.WriteLine(
            CliMessages.OneLine(message.StartsWith("--", StringComparison.Ordinal) ? message : "arguments: " + message)
        );

    /// <summary>One line such as <c>tune.abc:line 4: what and what to do</c>.</summary>
    public void Error(string subject, string place, string message) =>
        ErrorOutput.WriteLine(CliMessages.OneLine($"{subject}:{(place.Length > 0 ? place + ":" : "")} {message}"));
}
