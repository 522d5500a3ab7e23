using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Stridewright.Web.Tests;

/// <summary>Playing from the pages alone.</summary>
public sealed class StandTests(Page page, Chromium chromium) : IClassFixture<Page>, IClassFixture<Chromium>
{
    private const int Pages = 2;

    [Theory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task Pages_turn_on_an_upright_tablet_by_keys_taps_and_halves_with_no_network(ColorScheme scheme)
    {
        var (desk, faults) = await Desks.Open(chromium, page, scheme, 820, 1180);
        var stand = await PutOnStand(desk);
        var number = stand.GetByRole(AriaRole.Status);
        await Expect(number).ToHaveTextAsync("1 of 2");
        await Expect(stand.Locator(".leaf > svg")).ToHaveCountAsync(Pages);
        await Desks.Clean(desk);
        await Desks.Shot(desk, $"stand-{scheme}");

        var asked = new List<string>();
        desk.Request += (_, request) => asked.Add(request.Url);
        await desk.Context.SetOfflineAsync(true);
        // What pedals send, besides the keys of the keyboard.
        foreach (
            var (key, place) in new[]
            {
                ("PageDown", "2 of 2"),
                ("PageUp", "1 of 2"),
                ("ArrowRight", "2 of 2"),
                ("ArrowLeft", "1 of 2"),
                ("ArrowDown", "2 of 2"),
                ("PageDown", "2 of 2"),
                ("ArrowUp", "1 of 2"),
                ("Space", "2 of 2"),
                ("Home", "1 of 2"),
            }
        )
        {
            await desk.Keyboard.PressAsync(key);
            await Expect(number).ToHaveTextAsync(place);
        }
        await desk.Mouse.ClickAsync(700, 700);
        await Expect(number).ToHaveTextAsync("2 of 2");
        await Expect(Leaf(stand, 1)).ToBeHiddenAsync();
        await Expect(Leaf(stand, 2)).ToBeVisibleAsync();
        await desk.Mouse.ClickAsync(100, 700);
        await Expect(number).ToHaveTextAsync("1 of 2");

        // The focus stays inside: the two words, and the browser's own.
        await desk.Keyboard.PressAsync("Tab");
        await desk.Keyboard.PressAsync("Tab");
        await Expect(Button(stand, "turn half a page at a time")).ToBeFocusedAsync();
        await desk.Keyboard.PressAsync("Enter");
        await desk.Keyboard.PressAsync("PageDown");
        await Expect(number).ToHaveTextAsync("1 of 2, below the next");
        await Expect(Leaf(stand, 1)).ToBeVisibleAsync();
        await Expect(Leaf(stand, 2)).ToBeVisibleAsync();
        await NothingCut(stand);
        await Desks.Clean(desk);
        await Desks.Shot(desk, $"stand-half-{scheme}");
        await desk.Keyboard.PressAsync("Space");
        await Expect(number).ToHaveTextAsync("2 of 2");
        Assert.Empty(asked);

        await Expect(number).ToHaveCSSAsync("opacity", "0", new() { Timeout = 10_000 });
        await Expect(stand.Locator(".stand-words")).ToHaveCSSAsync("opacity", "0", new() { Timeout = 10_000 });
        await desk.Keyboard.PressAsync("Escape");
        await Expect(stand).ToHaveCountAsync(0);
        await Expect(Button(desk, "Put it on the stand")).ToBeFocusedAsync();
        Assert.Empty(faults);
    }

    [Fact]
    public async Task A_broad_screen_shows_half_a_page_at_a_time_uncut()
    {
        var (desk, faults) = await Desks.Open(chromium, page, ColorScheme.Light, 1180, 820);
        var stand = await PutOnStand(desk);
        var number = stand.GetByRole(AriaRole.Status);
        foreach (
            var place in new[]
            {
                "1 of 2, upper half",
                "1 of 2, lower half",
                "2 of 2, upper half",
                "2 of 2, lower half",
            }
        )
        {
            await Expect(number).ToHaveTextAsync(place);
            await NothingCut(stand);
            await Desks.Shot(desk, "stand-broad-" + place.Replace(' ', '-'));
            await desk.Keyboard.PressAsync("PageDown");
        }
        Assert.Empty(faults);
    }

    [Fact]
    public async Task The_screen_is_kept_awake_and_again_after_the_page_was_hidden()
    {
        var (desk, faults) = await Desks.Open(chromium, page, ColorScheme.Light, 820, 1180);
        // The browser's edge: what it was asked for.
        await desk.EvaluateAsync(
            """
            () => {
              window.held = [];
              const lock = () => { const l = { release: async () => { window.held.splice(window.held.indexOf(l), 1); } }; window.held.push(l); return l; };
              Object.defineProperty(navigator, "wakeLock", { value: { request: async () => lock() }, configurable: true });
            }
            """
        );
        await PutOnStand(desk);
        Assert.Equal(1, await desk.EvaluateAsync<int>("window.held.length"));
        await desk.EvaluateAsync("window.held.length = 0; document.dispatchEvent(new Event('visibilitychange'))");
        Assert.Equal(1, await desk.EvaluateAsync<int>("window.held.length"));
        await desk.Keyboard.PressAsync("Escape");
        await Expect(desk.Locator("dialog.stand")).ToHaveCountAsync(0);
        Assert.Equal(0, await desk.EvaluateAsync<int>("window.held.length"));
        Assert.Empty(faults);
    }

    private static async Task<ILocator> PutOnStand(IPage desk)
    {
        await desk.GetByRole(AriaRole.Button, new() { Name = "The Ferry Bell" }).ClickAsync();
        await Expect(desk.Locator(".page svg").First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Button(desk, "as it stands, change it").ClickAsync();
        await desk.GetByText("for two minutes").ClickAsync();
        await desk.Keyboard.PressAsync("Escape");
        await Expect(desk.Locator(".score .page > svg")).ToHaveCountAsync(Pages, new() { Timeout = 60_000 });
        await Button(desk, "Put it on the stand").FocusAsync();
        await desk.Keyboard.PressAsync("Enter");
        var stand = desk.GetByRole(AriaRole.Dialog);
        await Expect(stand.Locator(".leaf svg").First).ToBeVisibleAsync();
        return stand;
    }

    // Every system that shows does so from its first line to its last, and no two lie on each other.
    private static async Task NothingCut(ILocator stand)
    {
        var cut = await stand.EvaluateAsync<string[]>(
            """
            stand => {
              const room = stand.getBoundingClientRect();
              const faults = [];
              const shown = [];
              for (const leaf of stand.querySelectorAll(".leaf:not(.hidden)")) {
                const box = leaf.getBoundingClientRect();
                const [top, , bottom] = leaf.style.clipPath.match(/[\d.]+/g).map(Number);
                const [from, to] = [box.top + box.height * top / 100, box.bottom - box.height * (bottom ?? top) / 100];
                for (const system of leaf.querySelectorAll(".system")) {
                  const s = system.getBoundingClientRect();
                  if (s.bottom <= from + 1 || s.top >= to - 1) continue;
                  if (s.top < from - 1 || s.bottom > to + 1 || s.top < room.top - 1 || s.bottom > room.bottom + 1 || s.left < room.left - 1 || s.right > room.right + 1)
                    faults.push(`system at ${s.top} to ${s.bottom} of ${from} to ${to}`);
                  shown.push(s);
                }
              }
              shown.sort((a, b) => a.top - b.top);
              for (let i = 1; i < shown.length; i++) if (shown[i].top < shown[i - 1].bottom - 1) faults.push("one on another");
              if (shown.length < 2) faults.push("hardly anything shows");
              return faults;
            }
            """
        );
        Assert.Empty(cut);
    }

    private static ILocator Leaf(ILocator stand, int number) => stand.Locator(".leaf").Nth(number - 1);

    private static ILocator Button(IPage desk, string name) =>
        desk.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    private static ILocator Button(ILocator part, string name) =>
        part.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });
}
