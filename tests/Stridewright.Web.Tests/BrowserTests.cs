using Microsoft.Playwright;
using Stridewright.Testing;
using static Microsoft.Playwright.Assertions;

namespace Stridewright.Web.Tests;

public sealed class BrowserTests(Page page, Chromium chromium) : IClassFixture<Page>, IClassFixture<Chromium>
{
    private static readonly string Ferry = Path.Combine(Corpus.CheckoutRoot, "samples", "ferry-bell.abc");

    [Theory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task A_tune_is_brought_and_a_word_of_its_brief_changed_by_keyboard(ColorScheme scheme)
    {
        var (desk, faults) = await Open(scheme, 1280, 800);
        await Desks.Clean(desk);
        await Desks.Shot(desk, $"bring-{scheme}");
        await desk.Locator("input[type=file]").First.SetInputFilesAsync(Ferry);
        await Expect(desk.Locator(".page svg").First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Expect(desk.Locator(".brief").GetByRole(AriaRole.Status)).ToContainTextAsync("26 bars");
        await Desks.Clean(desk);
        await Desks.Shot(desk, $"score-{scheme}");

        var word = desk.GetByRole(AriaRole.Button, new() { Name = "F major, change it" });
        await word.FocusAsync();
        await desk.Keyboard.PressAsync("Enter");
        await Expect(desk.GetByRole(AriaRole.Radio, new() { Name = "its own key" })).ToBeFocusedAsync();
        await desk.Keyboard.PressAsync("ArrowDown");
        await Expect(desk.GetByRole(AriaRole.Radio, new() { Name = "C", Exact = true })).ToBeCheckedAsync();
        await Desks.Clean(desk);
        await Desks.Shot(desk, $"word-{scheme}");
        await desk.Keyboard.PressAsync("Escape");
        var changed = desk.GetByRole(AriaRole.Button, new() { Name = "C, change it" });
        await Expect(changed).ToBeFocusedAsync();
        Assert.Empty(faults);
    }

    [Fact]
    public async Task Typed_chords_are_engraved_and_a_fault_stands_at_its_line()
    {
        var (desk, faults) = await Open(ColorScheme.Light, 820, 1180);
        await desk.GetByRole(AriaRole.Textbox).FillAsync("F | D7 |\nG7 Q7 | F");
        await Expect(desk.GetByRole(AriaRole.Button, new() { Name = "line 2, column 4" })).ToBeVisibleAsync();
        await Desks.Clean(desk);
        await Desks.Shot(desk, "fault");
        await desk.GetByRole(AriaRole.Textbox).FillAsync("F | D7 |\nG7 C7 | F");
        await Expect(desk.Locator(".page svg").First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Desks.Clean(desk);
        await Desks.Shot(desk, "chords");
        Assert.Empty(faults);
    }

    [Theory]
    [InlineData(1920, 1080)]
    [InlineData(390, 844)]
    public async Task Nothing_is_cut_at_the_side(int width, int height)
    {
        var (desk, faults) = await Open(ColorScheme.Light, width, height);
        await desk.GetByRole(AriaRole.Button, new() { Name = "The Ferry Bell" }).ClickAsync();
        await Expect(desk.Locator(".page svg").First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Desks.Shot(desk, $"wide-{width}");
        Assert.Equal(width, await desk.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        Assert.Empty(faults);
    }

    private Task<(IPage Desk, List<string> Faults)> Open(ColorScheme scheme, int width, int height) =>
        Desks.Open(chromium, page, scheme, width, height);
}
