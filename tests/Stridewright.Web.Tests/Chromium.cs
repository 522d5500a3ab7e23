using System.Diagnostics;
using Microsoft.Playwright;
using Stridewright.Testing;

namespace Stridewright.Web.Tests;

/// <summary>A browser out of its npm package, unpacked below artifacts: one in the temporary folder may be stale.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private static readonly string Project = Path.Combine(Corpus.CheckoutRoot, "tests", "Stridewright.Web.Tests");
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public IBrowser Browser => _browser!;

    // Once for all that ask: a file that is being written cannot be run.
    private static readonly Lazy<Task<string>> Unpacked = new(Unpack);

    private static async Task<string> Unpack()
    {
        var folder = Path.Combine(Corpus.CheckoutRoot, "artifacts", "chromium");
        Directory.CreateDirectory(folder);
        var start = new ProcessStartInfo("node")
        {
            WorkingDirectory = Project,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            Environment = { ["TMPDIR"] = folder },
        };
        start.ArgumentList.Add("--input-type=module");
        start.ArgumentList.Add("-e");
        start.ArgumentList.Add("import c from '@sparticuz/chromium'; process.stdout.write(await c.executablePath())");
        using var unpacking = Process.Start(start)!;
        var path = await unpacking.StandardOutput.ReadToEndAsync();
        var said = await unpacking.StandardError.ReadToEndAsync();
        await unpacking.WaitForExitAsync();
        Assert.True(File.Exists(path), "no Chromium was unpacked: " + said);
        return path;
    }

    public async ValueTask InitializeAsync()
    {
        var path = await Unpacked.Value;
        _playwright = await Playwright.CreateAsync();
        Assertions.SetDefaultExpectTimeout(60_000); // of a machine that is busy with other tests
        try
        {
            _browser = await _playwright.Chromium.LaunchAsync(
                new BrowserTypeLaunchOptions
                {
                    ExecutablePath = path,
                    ChromiumSandbox = false,
                    Args = ["--disable-background-networking", "--disable-gpu", "--disable-component-update"],
                }
            );
        }
        catch (PlaywrightException fault)
        {
            throw new InvalidOperationException("Chromium needs libnss3, libnspr4 and libexpat1: install them", fault);
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }
        _playwright?.Dispose();
    }
}
