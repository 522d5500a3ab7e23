using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Stridewright.Testing;
using static Microsoft.Playwright.Assertions;

namespace Stridewright.Web.Tests;

/// <summary>The shelf as a person meets it on the page.</summary>
public sealed partial class ShelfPageTests(Page page, Chromium chromium) : IClassFixture<Page>, IClassFixture<Chromium>
{
    private const float Patience = 60_000; // milliseconds

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
        await Expect(Word(desk, "B♭")).ToBeVisibleAsync(new() { Timeout = Patience });
        await Expect(Word(desk, "hardly ragged")).ToBeVisibleAsync();
        await Expect(desk.Locator("h1")).ToHaveTextAsync("The Ferry Bell");
        await Expect(desk.Locator(".page svg").First).ToBeVisibleAsync(new() { Timeout = Patience });
        Assert.Empty(faults);
    }

    [Theory]
    [InlineData(ColorScheme.Light, 1280, 800)]
    [InlineData(ColorScheme.Dark, 390, 844)]
    public async Task A_sample_is_kept_in_one_click_then_renamed_tagged_found_put_away_and_taken_back(
        ColorScheme scheme,
        int width,
        int height
    )
    {
        var (desk, faults) = await Desks.Open(chromium, page, scheme, width, height);
        await desk.GetByRole(AriaRole.Button, new() { Name = "Lamps along the Quay" }).ClickAsync();
        await Expect(desk.Locator(".page svg").First).ToBeVisibleAsync(new() { Timeout = Patience });
        await IsKept(desk);

        await desk.GetByRole(AriaRole.Button, new() { Name = "the shelf", Exact = true }).ClickAsync();
        await Expect(desk.GetByRole(AriaRole.Heading, new() { Name = "On the shelf" })).ToBeFocusedAsync();
        var title = $"Lamps for {scheme} <b>";
        await desk.GetByRole(AriaRole.Button, new() { Name = "rename: Lamps along the Quay", Exact = true })
            .First.ClickAsync();
        await desk.GetByLabel("Its title on the shelf").FillAsync(title);
        await desk.Keyboard.PressAsync("Enter");
        var piece = desk.Locator(".pieces > li").Filter(new() { HasText = title });
        await Expect(piece).ToHaveCountAsync(1);
        await Button(piece, $"tag: {title}").ClickAsync();
        await desk.GetByLabel("Its tags").FillAsync($"Saturday, {scheme}");
        await desk.Keyboard.PressAsync("Enter");
        await Expect(piece).ToContainTextAsync($"Saturday");
        await Button(piece, $"versions: {title}").ClickAsync();
        await Expect(piece.Locator("ol li").First).ToContainTextAsync("it holds now");
        await Desks.Clean(desk);
        await Desks.Shot(desk, $"shelf-{scheme}");
        Assert.Equal(width, await desk.EvaluateAsync<int>("document.documentElement.scrollWidth"));

        await desk.GetByLabel("words of a title or tag").FillAsync($"{scheme} lamps");
        await Expect(desk.Locator(".pieces > li")).ToHaveCountAsync(1);
        await Button(piece, $"put away: {title}").ClickAsync();
        await Desks.Clean(desk);
        await desk.GetByRole(AriaRole.Button, new() { Name = "yes, put it away" }).ClickAsync();
        await Expect(desk.GetByText("was put away.")).ToBeVisibleAsync();
        await Expect(desk.Locator(".pieces > li")).ToHaveCountAsync(0);
        await Desks.Shot(desk, $"away-{scheme}");
        await desk.GetByRole(AriaRole.Button, new() { Name = "take it back", Exact = true }).ClickAsync();
        await Button(piece, title).ClickAsync();
        await Expect(desk.GetByRole(AriaRole.Heading, new() { Name = "On the shelf" })).ToHaveCountAsync(0);
        await Expect(desk.Locator("h1")).ToHaveTextAsync("Lamps along the Quay");
        await IsKept(desk);
        Assert.Empty(faults);
    }

    [Fact]
    public async Task Of_two_pages_on_one_piece_neither_loses_its_change()
    {
        var (here, _) = await Desks.Open(chromium, page, ColorScheme.Light, 1280, 800);
        await here.GetByRole(AriaRole.Button, new() { Name = "The Ferry Bell" }).ClickAsync();
        await Expect(Word(here, "F major")).ToBeVisibleAsync(new() { Timeout = Patience });
        await IsKept(here);
        // Another page of the same browser has what was last on the desk.
        var (there, faults) = await Desks.OpenIn(here.Context, page);
        await Expect(Word(there, "F major")).ToBeVisibleAsync(new() { Timeout = Patience });
        await IsKept(there);
        await Choose(here, "F major", "G");
        await IsKept(here);
        await Choose(there, "F major", "E♭");
        var question = there.Locator(".apart");
        await Expect(question).ToContainTextAsync("Both are kept", new() { Timeout = Patience });
        await Desks.Clean(there);
        await Desks.Shot(there, "apart");
        await question.GetByRole(AriaRole.Button, new() { NameRegex = Mine() }).ClickAsync();
        await Expect(question).ToHaveCountAsync(0);
        await Expect(Word(there, "E♭")).ToBeVisibleAsync();

        await there.GetByRole(AriaRole.Button, new() { Name = "the shelf", Exact = true }).ClickAsync();
        await there
            .GetByRole(AriaRole.Button, new() { Name = "versions: The Ferry Bell", Exact = true })
            .First.ClickAsync();
        var versions = there.Locator(".pieces ol").First;
        await Expect(versions.Locator("li").First).ToContainTextAsync("E♭ major");
        await Expect(versions).ToContainTextAsync("G major");
        await Expect(versions).ToContainTextAsync("came second, kept beside");
        // The browser itself tells of the answer 409.
        Assert.All(faults, fault => Assert.Contains("409", fault));
    }

    [GeneratedRegex("^go on with mine")]
    private static partial Regex Mine();

    private static ILocator Word(IPage desk, string label) =>
        desk.GetByRole(AriaRole.Button, new() { Name = label + ", change it", Exact = true });

    private static ILocator Button(ILocator inside, string name) =>
        inside.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    private static async Task Choose(IPage desk, string before, string label)
    {
        await Word(desk, before).ClickAsync(new() { Timeout = Patience });
        await desk.GetByRole(AriaRole.Radio, new() { Name = label, Exact = true }).CheckAsync();
        await desk.Keyboard.PressAsync("Escape");
        await Expect(Word(desk, label)).ToBeVisibleAsync();
    }

    private static Task IsKept(IPage desk) =>
        Expect(desk.Locator(".kept-line[data-kept=true]")).ToContainTextAsync("Kept at", new() { Timeout = Patience });
}
