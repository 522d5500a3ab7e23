using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Stridewright.Web.Tests;

/// <summary>Work on single bars, as a pianist does it on the page.</summary>
public sealed class SpotPageTests(Page page, Chromium chromium) : IClassFixture<Page>, IClassFixture<Chromium>
{
    [Theory]
    [InlineData(ColorScheme.Light, 1280, 800)]
    [InlineData(ColorScheme.Dark, 390, 844)]
    public async Task A_bar_is_looked_at_set_another_way_kept_written_and_taken_back(
        ColorScheme scheme,
        int width,
        int height
    )
    {
        var (desk, slip, faults) = await Slip(scheme, width, height);
        await Expect(slip.Locator("h2")).ToContainTextAsync("effort");
        await Expect(slip.Locator(".reasons li").First).ToBeVisibleAsync();
        await Desks.Shot(desk, $"spot-{scheme}");
        await Desks.Clean(desk);

        await Button(slip, "see other ways").ClickAsync();
        await Expect(slip.Locator(".ways .excerpt svg").First).ToBeVisibleAsync(new() { Timeout = 30_000 });
        await Desks.Shot(desk, $"ways-{scheme}");
        await Desks.Clean(desk);
        await Button(slip, "take it").First.ClickAsync();
        await Expect(slip.GetByRole(AriaRole.Status).First).ToContainTextAsync("Done", new() { Timeout = 30_000 });
        await Expect(desk.Locator(".kept-words").First).ToContainTextAsync("kept");

        await Button(slip, "keep the left hand").ClickAsync();
        await Expect(Button(slip, "let the left hand change again")).ToBeVisibleAsync(new() { Timeout = 30_000 });
        await Button(slip, "write it yourself").ClickAsync();
        var strokes = slip.GetByRole(AriaRole.Listbox);
        await strokes.FocusAsync();
        await desk.Keyboard.PressAsync("End");
        await desk.Keyboard.PressAsync("ArrowRight");
        await desk.Keyboard.PressAsync("s");
        await desk.Keyboard.PressAsync("ArrowDown");
        await Expect(slip.GetByText("These hands can play it")).ToBeVisibleAsync(new() { Timeout = 30_000 });
        await Desks.Shot(desk, $"write-{scheme}");
        await Desks.Clean(desk);
        await Button(slip, "keep it so").ClickAsync();
        // What was said of the work before is gone with the click.
        await Expect(slip.GetByRole(AriaRole.Status).First).ToContainTextAsync("Done", new() { Timeout = 30_000 });
        await Expect(Button(slip, "let the right hand change again")).ToBeVisibleAsync(new() { Timeout = 30_000 });

        await desk.Keyboard.PressAsync("Escape");
        await Button(desk, "take the last change back").ClickAsync();
        await Expect(Button(desk, "do it again")).ToBeVisibleAsync();
        await Button(desk, "do it again").ClickAsync();
        Assert.Equal(width, await desk.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        Assert.Empty(faults);
    }

    [Theory]
    [InlineData(ColorScheme.Light, 1280, 800)]
    [InlineData(ColorScheme.Dark, 390, 844)]
    public async Task A_figure_is_made_of_a_bar_and_put_where_its_kind_belongs(
        ColorScheme scheme,
        int width,
        int height
    )
    {
        var (desk, slip, faults) = await Slip(scheme, width, height);
        await Button(slip, "make or use a figure").ClickAsync();
        await slip.GetByLabel("Where it belongs").SelectOptionAsync("ending");
        await slip.GetByLabel("Name of the figure").FillAsync("home again");
        await Button(slip, "keep the figure").ClickAsync();
        var put = Button(slip, "put home again at the end");
        await Expect(put).ToBeVisibleAsync(new() { Timeout = 30_000 });
        await Desks.Shot(desk, $"figures-{scheme}");
        await Desks.Clean(desk);
        await put.FocusAsync();
        await desk.Keyboard.PressAsync("Enter");
        await Expect(desk.Locator(".kept-words").First).ToContainTextAsync("kept", new() { Timeout = 30_000 });
        Assert.Equal(width, await desk.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        Assert.Empty(faults);
    }

    [Fact]
    public async Task Work_that_comes_after_the_desk_was_changed_is_not_put_on_top()
    {
        var (desk, slip, faults) = await Slip(ColorScheme.Light, 1280, 800);
        await Button(slip, "keep the right hand").ClickAsync();
        await Expect(Button(slip, "let the right hand change again")).ToBeVisibleAsync(new() { Timeout = 30_000 });
        var (asked, undone) = (new TaskCompletionSource(), new TaskCompletionSource());
        await desk.RouteAsync(
            "**/spots",
            async route =>
            {
                asked.SetResult();
                await undone.Task;
                await route.ContinueAsync();
            }
        );
        await Button(slip, "keep the left hand").ClickAsync();
        await asked.Task;
        await Button(desk, "take the last change back").ClickAsync();
        await Expect(Button(slip, "keep the right hand")).ToBeVisibleAsync(new() { Timeout = 30_000 });
        undone.SetResult();
        await Expect(slip.GetByRole(AriaRole.Alert))
            .ToContainTextAsync("The desk was changed meanwhile", new() { Timeout = 30_000 });
        await Expect(Button(slip, "keep the left hand")).ToBeVisibleAsync();
        await Button(desk, "do it again").ClickAsync();
        await Expect(Button(slip, "let the right hand change again")).ToBeVisibleAsync(new() { Timeout = 30_000 });
        Assert.Empty(faults);
    }

    // A sample on the desk, and the slip under its hardest bar.
    private async Task<(IPage Desk, ILocator Slip, List<string> Faults)> Slip(ColorScheme scheme, int width, int height)
    {
        var (desk, faults) = await Desks.Open(chromium, page, scheme, width, height);
        await desk.GetByRole(AriaRole.Button, new() { Name = "The Ferry Bell" }).ClickAsync();
        await Expect(desk.Locator(".page svg").First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Button(desk, "go to the next hard place").ClickAsync();
        await Button(desk, "look at it").ClickAsync();
        return (desk, desk.Locator(".spot"), faults);
    }

    private static ILocator Button(IPage desk, string name) =>
        desk.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    private static ILocator Button(ILocator part, string name) =>
        part.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });
}
