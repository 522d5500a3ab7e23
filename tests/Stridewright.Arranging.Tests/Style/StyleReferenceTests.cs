using System.Globalization;
using System.Text.RegularExpressions;
using Stridewright.Testing;

namespace Stridewright.Arranging.Tests.Style;

/// <summary>The published figures as the project has them, against the notes on them beside the checkout (section 0 of
/// trade.md: 34 piano rags in 2/4, 3001 bars).</summary>
public sealed partial class StyleReferenceTests
{
    private static readonly Lazy<string> Section = new(() =>
        File.ReadAllText(Corpus.PathOf("trade.md")).Split("\n# 0.")[1].Split("\n# 1.")[0]
    );

    [Theory]
    [InlineData("RH half-bar patterns, all", "half_", 16)]
    [InlineData("first half", "first_", 14)]
    [InlineData("second half", "second_", 15)]
    [InlineData("RH whole-bar patterns", "bar_", 15)]
    public void Patterns_have_the_published_shares(string row, string key, int count)
    {
        var published = Patterns()
            .Matches(Row(row))
            .ToDictionary(m => key + m.Groups[1].Value, m => Number(m.Groups[2]) / 100);
        Assert.Equal(count, published.Count);
        Assert.All(published, p => Assert.Equal(p.Value, StyleReference.Of(inTwo: true)[p.Key].Single(), 6));
        var own = StyleReference.Of(inTwo: true).Keys.Where(k => k.StartsWith(key, StringComparison.Ordinal));
        Assert.Equal(count, own.Count(k => k[key.Length..].All(c => c is '0' or '1')));
    }

    [Theory]
    [InlineData("RH top note", "top")]
    [InlineData("RH lowest note", "lowest")]
    [InlineData("bass note (lowest LH note on a beat)", "bass")]
    [InlineData("leap bass to chord, lowest to lowest", "leap_up")]
    public void Registers_have_the_published_percentiles(string row, string key)
    {
        var published = Five().Match(Row(row)).Groups.Values.Skip(1).Select(Number);
        Assert.Equal(published, StyleReference.Of(inTwo: true)[key]);
    }

    [Fact]
    public void The_off_beat_chords_have_the_published_percentiles()
    {
        var found = Five().Matches(Row("off-beat chord")).Select(m => m.Groups.Values.Skip(1).Select(Number)).ToList();
        var reference = StyleReference.Of(inTwo: true);
        Assert.Equal(found, [reference["chord_low"], reference["chord_high"], reference["chord_span"]]);
    }

    [Theory]
    [InlineData(
        "short-long-short (121), share of bars",
        "untied_bars",
        "tied_mid_bars",
        "tied_bar_bars",
        "any121_bars"
    )]
    [InlineData("RH texture per onset", "single", "two_note", "block", "octave", "octave_inner")]
    [InlineData("LH on the beats", "beat_octave", "beat_single", "beat_three_note", "beat_none")]
    [InlineData("LH on the off-beats", "off_three_note", "off_octave", "off_none", "off_single", "off_two_note")]
    [InlineData("strict stride bars", "strict", "loose")]
    [InlineData("the two off-beat chords of a bar identical", "chords_alike")]
    [InlineData(
        "second bass of a bar to first bass of the next",
        "next_bass_fourth_fifth",
        "next_bass_step",
        "next_bass_other",
        "next_bass_same",
        "next_bass_octave"
    )]
    [InlineData(
        "RH texture after itself",
        "single_stays",
        "two_note_stays",
        "octave_stays",
        "octave_inner_stays",
        "block_stays"
    )]
    public void Kinds_have_the_published_shares(string row, params string[] keys)
    {
        // The numbers after the row's name, in their order; what stands in brackets explains.
        var numbers = Numbers().Matches(Brackets().Replace(Value(row), "")).Select(m => Number(m.Groups[1])).ToList();
        numbers.RemoveAll(n => row.StartsWith("second bass", StringComparison.Ordinal) && n == 1);
        Assert.Equal(
            keys.Select(k => StyleReference.Of(inTwo: true)[k].Single()).Select(v => Math.Round(100 * v, 4)),
            numbers.Take(keys.Length)
        );
    }

    [Fact]
    public void Textures_have_the_published_shares_at_every_place_of_the_bar()
    {
        var places = Place().Matches(Value("RH texture by place in the bar")).ToList();
        Assert.Equal(8, places.Count);
        foreach (var place in places)
        {
            var shares = place.Groups[2].Value.Split('/').Select(s => double.Parse(s, CultureInfo.InvariantCulture));
            Assert.Equal(
                shares,
                StyleReference.Of(inTwo: true)["place_" + place.Groups[1].Value].Select(v => Math.Round(100 * v, 4))
            );
        }
    }

    private static string Row(string name) =>
        Section.Value.Split('\n').Single(line => line.StartsWith("| " + name, StringComparison.Ordinal));

    private static string Value(string name) => Row(name).Split('|')[2];

    private static double Number(Group text) => double.Parse(text.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"\b([01]{4,8}) (\d+\.\d)")]
    private static partial Regex Patterns();

    [GeneratedRegex(@"(\d+) / (\d+) / (\d+) / (\d+) / (\d+)")]
    private static partial Regex Five();

    [GeneratedRegex(@"(?<![-\d.])(\d+(?:\.\d+)?)(?![\d.]*-)")]
    private static partial Regex Numbers();

    [GeneratedRegex(@"\([^)]*\)")]
    private static partial Regex Brackets();

    [GeneratedRegex(@"(\d): (\d+/\d+/\d+/\d+/\d+)")]
    private static partial Regex Place();
}
