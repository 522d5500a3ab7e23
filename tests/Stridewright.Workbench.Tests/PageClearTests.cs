using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Stridewright.Workbench.Sheets;

namespace Stridewright.Workbench.Tests;

/// <summary>What stands above the music keeps clear of each other.</summary>
public sealed partial class PageClearTests
{
    // Font size of both on the page, in hundredths of a millimetre: lines of words nearer than that run into each other.
    private const int Letters = 371;

    // The left hand's high chords lift all symbols of a system; the first one, over a low bass, is the one under the tempo.
    [Theory]
    [InlineData("F | D7 | G7 C7 | F")]
    [InlineData("C | A7 | D7 G7 | C")]
    [InlineData("Bb | G7 | C7 F7 | Bb")]
    public async Task The_tempo_keeps_clear_of_the_chord_symbols(string chords)
    {
        using var desk = SheetDesk.Open();
        var made = await desk.Arrange(
            desk.ReadText(chords),
            1,
            new Wishes(),
            new SheetLook(),
            TestContext.Current.CancellationToken
        );
        var page = Encoding.UTF8.GetString(made.Sheet!.Pages[0]);
        var (tempo, symbol) = (Line(Tempo().Match(page)), Line(Symbol().Match(page)));
        Assert.True(Math.Abs(tempo - symbol) >= Letters, $"tempo at {tempo}, first symbol at {symbol}");
    }

    private static int Line(Match found) => int.Parse(found.Groups[1].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("class=\"tempo\"[^>]*>\\s*<text x=\"[0-9]+\" y=\"([0-9]+)\"")]
    private static partial Regex Tempo();

    [GeneratedRegex("class=\"harm\"[^>]*>\\s*<text x=\"[0-9]+\" y=\"([0-9]+)\"")]
    private static partial Regex Symbol();
}
