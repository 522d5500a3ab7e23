using System.Text.Json.Nodes;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Stridewright.Testing;
using static Microsoft.Playwright.Assertions;

namespace Stridewright.Web.Tests;

/// <summary>Opens the page in a browser, as its owner does, and looks at it.</summary>
internal static class Desks
{
    /// <summary>Set, to anything: every picture is taken at all sizes that the page is made for, and nothing may stick out.</summary>
    private const string AllSizes = "STRIDEWRIGHT_SHOTS";

    /// <summary>Longest wait for what a page does, in milliseconds: far above what it takes, on a busy machine too.</summary>
    private const float Longest = 120_000;

    private static readonly (int Width, int Height)[] Sizes = [(1280, 800), (1920, 1080), (820, 1180), (390, 844)];

    /// <summary>A page in a browser of its own that knows nothing yet, and what goes wrong in it.</summary>
    public static async Task<(IPage Desk, List<string> Faults)> Open(
        Chromium chromium,
        Page page,
        ColorScheme scheme,
        int width,
        int height
    )
    {
        var context = await Context(chromium, scheme, width, height);
        return await OpenIn(context, page);
    }

    /// <summary>A browser of its own that knows nothing yet.</summary>
    public static Task<IBrowserContext> Context(Chromium chromium, ColorScheme scheme, int width, int height) =>
        chromium.Browser.NewContextAsync(
            new()
            {
                ColorScheme = scheme,
                ViewportSize = new() { Width = width, Height = height },
            }
        );

    /// <summary>A page with a setting on it that can be heard, and its performance as the page has it.</summary>
    /// <param name="context">With what is replaced at the browser's edge.</param>
    /// <param name="text">The tune, written down; null: a sample.</param>
    /// <param name="patience">Longest wait, in milliseconds.</param>
    public static async Task<(IPage Desk, JsonNode Heard, List<string> Faults)> Heard(
        IBrowserContext context,
        Uri address,
        string? text,
        float patience
    )
    {
        var (desk, faults) = await At(context, address);
        var told = desk.WaitForResponseAsync(
            r => r.Url.EndsWith("/heard", StringComparison.Ordinal),
            new() { Timeout = patience }
        );
        if (text is null)
        {
            await desk.GetByRole(AriaRole.Button, new() { Name = "The Ferry Bell" }).ClickAsync();
        }
        else
        {
            await desk.GetByRole(AriaRole.Textbox).FillAsync(text);
        }
        var heard = JsonNode.Parse(await (await told).TextAsync())!;
        await Expect(desk.Locator(".page svg").First).ToBeVisibleAsync(new() { Timeout = patience });
        return (desk, heard, faults);
    }

    /// <summary>Another page of the same browser.</summary>
    public static Task<(IPage Desk, List<string> Faults)> OpenIn(IBrowserContext context, Page page) =>
        At(context, page.Host.Address);

    /// <summary>A page at the address that a host printed.</summary>
    public static async Task<(IPage Desk, List<string> Faults)> At(IBrowserContext context, Uri address)
    {
        var desk = await context.NewPageAsync();
        desk.SetDefaultTimeout(Longest);
        var faults = new List<string>();
        // What the content security policy refuses is told here too.
        desk.Console += (_, said) =>
        {
            if (said.Type is "error" or "warning")
            {
                faults.Add(said.Text);
            }
        };
        desk.PageError += (_, fault) => faults.Add(fault);
        await desk.GotoAsync(address.ToString());
        await Expect(desk.GetByRole(AriaRole.Heading).First).ToBeVisibleAsync();
        return (desk, faults);
    }

    public static async Task Clean(IPage desk)
    {
        var found = await desk.RunAxe();
        Assert.True(
            found.Violations.Length == 0,
            string.Join("\n", found.Violations.Select(v => v.Id + ": " + v.Nodes[0].Html))
        );
    }

    // To be looked at; below artifacts, so never committed. Nothing in them overlaps or is cut.
    public static async Task Shot(IPage desk, string name)
    {
        await Taken(desk, name);
        Assert.Empty(await Tidy.Faults(desk));
        if (Environment.GetEnvironmentVariable(AllSizes) is null)
        {
            return;
        }
        var usual = desk.ViewportSize!;
        foreach (var (width, height) in Sizes)
        {
            await desk.SetViewportSizeAsync(width, height);
            await Task.Delay(300);
            await Taken(desk, $"{name}.{width}");
            Assert.Equal(width, await desk.EvaluateAsync<int>("document.documentElement.scrollWidth"));
            Assert.True(
                await Tidy.Faults(desk) is [],
                $"{name} at {width}: {string.Join("; ", await Tidy.Faults(desk))}"
            );
        }
        await desk.SetViewportSizeAsync(usual.Width, usual.Height);
        await Task.Delay(300);
    }

    private static Task<byte[]> Taken(IPage desk, string name) =>
        desk.ScreenshotAsync(
            new() { Path = Path.Combine(Corpus.CheckoutRoot, "artifacts", "shots", name + ".png"), FullPage = true }
        );
}
