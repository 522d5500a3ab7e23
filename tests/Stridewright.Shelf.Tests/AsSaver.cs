using Xunit.MicrosoftTestingPlatform;
using Xunit.Runner.InProc.SystemConsole;

namespace Stridewright.Shelf.Tests;

/// <summary>Started with a data folder in its environment, this program saves there until it is killed; else it tests, as the
/// runner's own entry point does.</summary>
internal static class AsSaver
{
    public static async Task<int> Main(string[] args)
    {
        if (Environment.GetEnvironmentVariable(KillTests.Loop.Asked) is { } folder)
        {
            await KillTests.Loop.Run(folder);
        }
        return args.Any(a => a is "--server" or "--internal-msbuild-node")
            ? await TestPlatformTestFramework.RunAsync(args, SelfRegisteredExtensions.AddSelfRegisteredExtensions)
            : await ConsoleRunner.Run(args);
    }
}
