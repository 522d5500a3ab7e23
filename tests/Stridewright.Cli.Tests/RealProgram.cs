using Stridewright.Workbench;

namespace Stridewright.Cli.Tests;

/// <summary>The program with everything real behind it.</summary>
internal static class RealProgram
{
    public static (int Code, string Output, string Error) Run(params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var code = new CommandLineApp(UseCases.Open, output, error).Run(args, TestContext.Current.CancellationToken);
        return (code, output.ToString(), error.ToString());
    }
}
