using System.Diagnostics;

namespace Stridewright.Cli.Tests;

/// <summary>The program as a process of its own.</summary>
public sealed class EndToEndTests
{
    [Fact]
    public async Task A_missing_file_ends_the_process_with_2_and_one_line_on_stderr()
    {
        var start = new ProcessStartInfo("dotnet")
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            ArgumentList = { Path.Combine(AppContext.BaseDirectory, "stridewright.dll"), "arrange", "missing.abc" },
        };
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var error = await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal("missing.abc: there is no such file or folder: check the name", error.Trim());
        Assert.Equal((2, ""), (process.ExitCode, await output));
    }
}
