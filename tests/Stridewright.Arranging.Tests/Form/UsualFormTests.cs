using Stridewright.Formats.Abc;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Arranging.Tests;

public sealed class UsualFormTests
{
    public static TheoryData<int> Levels => [1, 2, 3, 4, 5, 6];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    // The bounds: choruses differ and keep 98 % of the tune. Where the strain lies too high to be lifted, the first
    // levels have little but the left hand to vary.
    [Theory]
    [MemberData(nameof(Levels))]
    public void Every_chorus_keeps_its_tune_and_differs_from_the_one_before(int level)
    {
        foreach (var tune in Tunes.Samples)
        {
            var brief = At(level) with { Form = FormLine.Usual };
            var arrangement = Assert.IsType<Arrangement>(Arranger.Arrange(tune, brief, Stop).Arrangement);
            Assert.True(Judge.Check(arrangement.Score, brief.Hands).IsPlayable);
            Assert.NotEmpty(arrangement.Choruses);
            Assert.All(arrangement.Choruses, c => Assert.True(c.Kept >= 0.98 * c.Notes, $"{tune.Title}: {c}"));
            Assert.All(
                arrangement.Choruses.Where(c => c.RightDiffers is not null),
                c => Assert.True(Math.Max(c.RightDiffers!.Value, c.LeftDiffers!.Value) >= 0.1, $"{tune.Title}: {c}")
            );
            // The form that was chosen is a line that gives the same.
            var again = brief with
            {
                Form = FormLine.Read(arrangement.Brief.Form!.ToString(), out _),
            };
            Assert.Equal(arrangement.Score, Arranger.Arrange(tune, again, Stop).Arrangement!.Score);
        }
    }

    [Fact]
    public void The_form_grows_with_the_level_and_has_a_plan()
    {
        var tune = Tunes.Samples.First(t => t.Title == "Two Sugars, No Hurry");
        var forms = Enumerable
            .Range(1, 6)
            .Select(level => Arranger.Arrange(tune, At(level) with { Form = FormLine.Usual }, Stop).Arrangement!)
            .ToList();
        Assert.Equal([2, 2, 3, 3, 4, 4], forms.Select(f => f.Choruses.Count));
        var parts = forms[5].Brief.Form!.Parts.Where(p => p.HasLetter).ToList();
        Assert.Contains(parts, p => p.Treatment.Left == LeftManner.StopTime);
        Assert.Contains(parts, p => p.Breaks);
        Assert.Equal("ff", parts[^1].Treatment.Dynamic);
        Assert.True(parts[^1].Treatment.Fullness > parts[0].Treatment.Fullness);
        Assert.Equal(1, parts[^1].Treatment.Lift);
    }

    // trade.md 2.4: A A B B A C C D D, the trio in the subdominant, 144 bars with all repeats and four of introduction.
    [Fact]
    public void Four_strains_become_a_rag()
    {
        var text =
            "X:1\nT:Four\nM:2/4\nL:1/8\nK:Eb\n"
            + string.Concat(
                "ABCD".Select(p => $"P:{p}\n" + string.Concat(Enumerable.Repeat("\"Eb\"e2g2|\"Bb7\"f2d2|", 8)) + "\n")
            );
        var tune = AbcReader.Read(new StringReader(text)).Value![0];
        var done = Arranger.Arrange(tune, At(5) with { Form = FormLine.Usual }, Stop).Arrangement!;
        Assert.Equal(["A", "A", "B", "B", "A", "Trio", "Trio", "Trio", "Trio"], done.Choruses.Select(c => c.Part));
        Assert.Equal(["Eb", "Ab"], done.Score.Bars.Select(b => b.Key.Tonic.ToString()).Distinct());
        Assert.InRange(done.Score.Bars.Count, 4 + 144, 4 + 144 + 3);
    }

    [Fact]
    public void A_song_keeps_the_order_of_its_verses_and_refrain()
    {
        var tune = Tunes.Samples.First(t => t.Title == "Seven Lamps to Home");
        var done = Arranger.Arrange(tune, At(5) with { Form = FormLine.Usual }, Stop).Arrangement!;
        Assert.Equal(["A", "B", "C", "B", "D", "B"], done.Choruses.Select(c => c.Part));
    }

    [Theory]
    [InlineData(1, 75)]
    [InlineData(3, 120)]
    [InlineData(4, 150)]
    [InlineData(5, 60)]
    [InlineData(6, 240)]
    public void A_length_that_is_asked_for_is_met_within_ten_seconds(int level, double seconds)
    {
        foreach (var tune in Tunes.Samples.Where((_, i) => i % 2 == level % 2))
        {
            var usual = Feels.Tempo(Feels.For(Feels.MainMetre(tune)), level);
            var brief = At(level) with { Form = FormLine.Usual, Seconds = seconds };
            var result = Arranger.Arrange(tune, brief, Stop);
            var done = Assert.IsType<Arrangement>(result.Arrangement);
            // Reckoned from the score alone.
            var quarters = Timeline.PlayOrder(done.Score).Sum(i => done.Score.Bars[i].Length.ToQuarters());
            var tempo = done.Score.Bars[0].Directions.First(d => d.BeatsPerMinute is not null);
            Assert.InRange(quarters * 60 / tempo.QuartersPerMinute!.Value, seconds - 10, seconds + 10);
            Assert.InRange(tempo.BeatsPerMinute!.Value, 0.94 * usual - 0.001, 1.06 * usual + 0.001);
        }
    }

    [Fact]
    public void Lengths_are_met_on_tunes_of_others()
    {
        var files = Corpus.Files("corpus/abc", ".abc");
        foreach (var file in files.Where((_, i) => i % 30 == 0))
        {
            foreach (var tune in AbcReader.Read(new StringReader(File.ReadAllText(file))).Value!.Take(1))
            {
                var brief = At(4) with { Form = FormLine.Usual, Seconds = 150 };
                var result = Arranger.Arrange(tune, brief, Stop);
                Assert.True(result.Arrangement is not null, $"{file}: {result.Refusal?.Message}");
                Assert.InRange(result.Arrangement.Seconds, 140, 160);
            }
        }
    }

    [Fact]
    public void A_tempo_that_the_brief_fixes_is_not_bent()
    {
        var tune = Tunes.Samples.First(t => t.Title == "The Ferry Bell");
        var brief = At(4) with { Form = FormLine.Usual, Seconds = 120, BeatsPerMinute = 71 };
        var done = Arranger.Arrange(tune, brief, Stop).Arrangement!;
        Assert.Equal(71, done.BeatsPerMinute);
        Assert.InRange(done.Seconds, 110, 130);
    }

    [Fact]
    public void A_line_of_ones_own_grows_by_its_strains_and_keeps_its_ends()
    {
        var tune = Tunes.Samples.First(t => t.Title == "Two Sugars, No Hurry");
        var brief = At(4) with { Form = FormLine.Read("intro A(mf) A(ff) tag end", out _), Seconds = 200 };
        var form = Arranger.Arrange(tune, brief, Stop).Arrangement!.Brief.Form!.ToString();
        Assert.StartsWith("intro A(mf) A(mf)", form, StringComparison.Ordinal);
        Assert.EndsWith("A(ff) tag end", form, StringComparison.Ordinal);
    }

    // A tune as it stands has one length: 32 bars of 2/4 at a quarter of 80 are 48 s, at most 6 % off.
    [Fact]
    public void A_length_that_cannot_be_met_is_refused_with_the_nearest()
    {
        var tune = Tunes.Samples.First(t => t.Title == "Two Sugars, No Hurry");
        var refusal = Arranger.Arrange(tune, At(4) with { Seconds = 70 }, Stop).Refusal!;
        Assert.Contains("1:10 minutes", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("0:51", refusal.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(20)]
    [InlineData(60)]
    [InlineData(111)]
    public void A_form_has_at_most_the_bars_that_are_asked_for(int most)
    {
        foreach (var tune in Tunes.Samples.Take(6))
        {
            var result = Arranger.Arrange(tune, At(4) with { Form = FormLine.Usual, MostBars = most }, Stop);
            var bars = Assert.IsType<Arrangement>(result.Arrangement).Score.Bars.Count;
            Assert.InRange(bars, most / 3, most);
        }
    }

    private static Brief At(int level) => new() { LeftLevel = level, RightLevel = level };
}
