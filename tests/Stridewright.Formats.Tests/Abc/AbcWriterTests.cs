using CsCheck;
using Stridewright.Formats.Abc;
using Stridewright.Music;

namespace Stridewright.Formats.Tests.Abc;

public sealed class AbcWriterTests
{
    [Fact]
    public void Any_tune_comes_back() =>
        RandomTune.Tunes.Sample(tune => Assert.Null(RoundTrip.Difference(tune)), iter: 3000);

    [Fact]
    public void What_is_written_twice_is_the_same() =>
        RandomTune.Tunes.Sample(
            tune =>
            {
                var text = AbcWriter.Write(tune);
                Assert.DoesNotContain("\n\n", text, StringComparison.Ordinal); // a blank line would end the tune
                Assert.Equal(text, AbcWriter.Write(Abc.Whole(text)));
            },
            iter: 300
        );

    // Source of the forms: ABC 2.1, 4.2 to 4.13; the first three bars of trade.md 8.3's broken rhythm written out.
    [Theory]
    [InlineData("a>b c<d abcd |", "a3/2b/2 c/2d3/2 ab cd |")]
    [InlineData("C D E F G A B c | d4 z4 |", "CD EF GA Bc | d4 z4 |")]
    [InlineData("^FF f=f | [K:D]f2 ^^g2 z4 |", "^FF ^f=f | [K:D] f2 ^^g2 z4 |")]
    [InlineData("c8/13d96/13 |", "c8/13d96/13 |")]
    [InlineData("(3ABc (5:4:5ABcde |", "(3ABc (5:4ABcde |")]
    [InlineData("{^c}d4- d2 z2 |: \"Am7\"A8 ::|", "{^c}d4- d2 z2 |: \"Am7\"A8 ::|")]
    [InlineData("|: A8 |1 B8 :|2 c8 ||", "|: A8 | [1 B8 :| [2 c8 ||")]
    [InlineData("A8 | B8 :|: c8 |]", "A8 | B8 :|: c8 |]")]
    public void Music_is_written_in_the_standards_signs(string body, string written) =>
        Assert.Equal(written, AbcWriter.Write(Abc.Body(body)).Split('\n')[5]);

    [Theory]
    [InlineData("A8 |[1 B8 | [|] c8 |")] // an ending that is over without a sign
    [InlineData("A8 |[1 B8 | [|] [2 c8 |")] // two endings without a repeat between them
    public void An_ending_is_closed_by_a_bar_line_not_seen(string body)
    {
        // Source: ABC 2.1, 4.10 (an ending may end with [|]).
        var tune = Abc.Body(body);
        Assert.Equal(
            [
                [],
                [1],
                body.Contains("[2", StringComparison.Ordinal) ? [2] : [],
            ],
            tune.Bars.Select(b => b.Marks.Ending)
        );
        Assert.Equal(0, tune.Bars[1].Marks.RepeatEnd);
        Assert.Null(RoundTrip.Difference(tune));
    }

    [Fact]
    public void A_chord_symbol_inside_a_note_stands_in_a_layer_of_rests()
    {
        var tune = Abc.Body("\"C\"c8 & x4\"G7\"x4 | d8 & e4 f4 |");
        Assert.Equal("C@0 G7@4 | ", Abc.Chords(tune));
        Assert.Equal("C5:8 | D5:8", Abc.Notes(tune));
        Assert.Contains("\"C\"c8 & x4\"G7\"x4 |", AbcWriter.Write(tune), StringComparison.Ordinal);
    }

    [Fact]
    public void A_layer_that_is_left_out_leaves_nothing_behind() =>
        Assert.Equal("C5:8 | D5:2 E5:2 F5:4", Abc.Notes(Abc.Body("c8 & {g}(3efg | d2 e2 f4 |")));

    [Fact]
    public void What_abc_cannot_say_stands_in_directives()
    {
        var tune = Abc.Body("C4 | D8 | E8 | F8 |") with { SectionOrder = ["Trio", "A b"] };
        tune = tune with
        {
            Bars = tune
                .Bars.Select(
                    (b, i) => b with { Number = i == 2 ? "12a" : $"{i + 7}", Key = Key.FromSignature(9, Mode.Minor) }
                )
                .Select(
                    (b, i) =>
                        i == 2
                            ? b with
                            {
                                Length = ScoreTime.Half,
                                Notes = [b.Notes[0] with { Length = ScoreTime.Half }],
                            }
                            : b
                )
                .ToValueList(),
        };
        var lines = AbcWriter.Write(tune).Split('\n');
        Assert.Contains("%%stridewright-bar-numbers 7..8 12a 10", lines);
        Assert.Contains("%%stridewright-short-bars", lines);
        Assert.Contains("%%stridewright-far-keys", lines);
        Assert.Contains("%%stridewright-part-order Trio A\\u0020b", lines);
        Assert.Null(RoundTrip.Difference(tune));
    }

    [Fact]
    public void A_directive_that_no_longer_fits_is_told()
    {
        var tune = Abc.Body("C8 | D8 |");
        var text = AbcWriter.Write(tune with { Bars = [tune.Bars[0] with { Number = "5" }, tune.Bars[1]] });
        var findings = Abc.Findings(text + "E8 |\n");
        Assert.Contains("numbers 2 bars, but the tune has 3", findings, StringComparison.Ordinal);
        Assert.Contains(
            "bar-numbers is not understood",
            Abc.Findings(text.Replace("5 2", "5..x", StringComparison.Ordinal)),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("50\\% off", "50% off")]
    [InlineData("a\\\\b \\& c", "a\\b & c")]
    [InlineData("caf\\u00e9", "café")]
    [InlineData("caf\\'e \\u00", "caf\\'e \\u00")] // other escapes stay as they stand
    public void Texts_are_read_with_their_escapes(string written, string title)
    {
        // Source: ABC 2.1, 8.2.
        var tune = Abc.Whole($"X:1\nT:{written}\nK:C\nC D|\n");
        Assert.Equal(title, tune.Title);
        Assert.Null(RoundTrip.Difference(tune));
    }
}
