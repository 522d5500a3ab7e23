using Microsoft.Playwright;
using Stridewright.Testing;
using static Microsoft.Playwright.Assertions;

namespace Stridewright.Web.Tests;

/// <summary>The shelf as a person meets it on the page.</summary>
public sealed class ShelfPageTests(Page page, Chromium chromium) : IClassFixture<Page>, IClassFixture<Chromium>
{
    private static readonly string Ferry = Path.Combine(Corpus.CheckoutRoot, "samples", "ferry-bell.abc");

    [Fact]
    public async Task What_is_on_the_desk_is_there_again_after_a_reload()
    {
        var (desk, faults) = await Desks.Open(chromium, page, ColorScheme.Light, 1280, 800);
        await desk.Locator("input[type=file]").First.SetInputFilesAsync(Ferry);
        await Choose(desk, "F major", "B♭");
        await Choose(desk, "rather ragged", "hardly ragged");
        await IsKept(desk);
        await desk.ReloadAsync();
        await Expect(Word(desk, "B♭")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Expect(Word(desk, "hardly ragged")).ToBeVisibleAsync();
        await Expect(desk.Locator("h1")).ToHaveTextAsync("The Ferry Bell");
        await Expect(desk.Locator(".page svg").First).ToBeVisibleAsync();
        Assert.Empty(faults);
    }

    private static ILocator Word(IPage desk, string label) =>
        desk.GetByRole(AriaRole.Button, new() { Name = label + ", change it", Exact = true });

    private static async Task Choose(IPage desk, string before, string label)
    {
        await Word(desk, before).ClickAsync(new() { Timeout = 60_000 });
        await desk.GetByRole(AriaRole.Radio, new() { Name = label, Exact = true }).CheckAsync();
        await desk.Keyboard.PressAsync("Escape");
        await Expect(Word(desk, label)).ToBeVisibleAsync();
    }

    private static async Task IsKept(IPage desk)
    {
        await Expect(desk.Locator(".kept-line[data-kept=true]"))
            .ToContainTextAsync("Kept at", new() { Timeout = 60_000 });
    }
}
