using Stridewright.Music;

namespace Stridewright.Formats.Tests.Abc;

/// <summary>Bars, repeats, chord symbols and words. Source: the ABC standard 2.1, sections 4.8 to 4.10, 4.18, 4.19, 5.1;
/// common practice for pick-ups and split bars.</summary>
public sealed class AbcBarsTests
{
    // Bars as they sound, one letter each: the test tunes have one note a bar.
    [Theory]
    [InlineData("|:A8|B8:|c8|]", "ABABC")]
    [InlineData("A8|B8:|c8:|", "ABABCC")]
    [InlineData("A8::B8:|", "AABB")]
    [InlineData("A8:|:B8:|", "AABB")]
    [InlineData("A8:||:B8:|", "AABB")]
    [InlineData("A8:| |:B8:|", "AABB")]
    [InlineData("|:A8|1B8:|2c8|]", "ABAC")]
    [InlineData("|:A8|[1B8:|[2c8||d8|]", "ABACD")]
    [InlineData("|: A8 | [1 B8 :| [2 c8 |\n|: d8 :|", "ABACDD")]
    [InlineData("|:A8|1,3B8:|2,4c8:|", "ABACABAC")]
    [InlineData("|:A8|1-3B8:|4c8|]", "ABABABAC")]
    [InlineData("|:A8|1 B8|2 c8|]", "ABAC")]
    [InlineData("|::A8::|B8|", "AAAB")]
    [InlineData("[|A8||B8:|", "ABB")]
    [InlineData("|:A8|B8|", "AB")]
    public void Repeats_and_endings(string body, string sounding)
    {
        var bars = Unfolding.Unfold(Abc.Body(body)).Bars;
        Assert.Equal(sounding, string.Concat(bars.Select(b => b.Notes[0].Pitch.Step)));
    }

    [Fact]
    public void Marks_stand_on_their_bars()
    {
        var bars = Abc.Body("|:A8|1B8|c8:|2d8||e8|]").Bars;
        Assert.Equal([true, false, false, false, false], bars.Select(b => b.Marks.RepeatStart));
        Assert.Equal([0, 0, 2, 0, 0], bars.Select(b => b.Marks.RepeatEnd));
        Assert.Equal(["", "1", "1", "2", ""], bars.Select(b => string.Concat(b.Marks.Ending)));
        Assert.True(bars[3].Marks.DoubleBarAfter);
        Assert.True(bars[4].Marks.FinalBarAfter);
    }

    [Theory]
    [InlineData("G2|A8|B8|c6|]", "0 1 2 3", "2 8 8 6")]
    [InlineData("G2|:A8|B6:|c2|d8|e6|]", "0 1 2 X1 3 4", "2 8 6 2 8 6")]
    [InlineData("A8|B6:|:c2|d8|e6:|", "1 2 X1 3 4", "8 6 2 8 6")]
    [InlineData("|:G2|A8|1B8:|2c6||", "0 1 2 3", "2 8 8 6")]
    [InlineData("A8|B4|c4|d8|]", "1 2 X1 3", "8 4 4 8")]
    [InlineData("A8|B6|c8|]", "1 2 3", "8 8 8")]
    [InlineData("A8|B9|c8|]", "1 2 3", "8 9 8")]
    [InlineData("A8||B4||c8|]", "1 X1 2", "8 4 8")]
    public void Short_and_long_bars(string body, string numbers, string eighths)
    {
        var bars = Abc.Body(body).Bars;
        Assert.Equal(numbers, string.Join(' ', bars.Select(b => b.Number)));
        Assert.Equal(eighths, string.Join(' ', bars.Select(b => b.Length * 8)));
    }

    [Theory]
    [InlineData("A8|B6|c8|]", "line 6, column 4, bar 2: the bar holds 3/4 where 4/4 is due; it was filled up")]
    [InlineData("A8|B9|c8|]", "line 6, column 4, bar 2: the bar holds 9/8 where 4/4 is due; it was kept")]
    [InlineData("A8|B5:|c8|]", "line 6, column 4, bar 2: the bar holds 5/8 where 4/4 is due, and no short bar")]
    [InlineData("A8|\nc8-|d8|]", "line 7, column 1, bar 2: the tie leads to no note")]
    [InlineData("|:A8|1 B8|2 c8|]", "the ending before this one has no repeat sign")]
    [InlineData("A8|\"Hello\"B8|]", "line 6, column 4, bar 2: \"Hello\" is no chord symbol")]
    [InlineData("A8|?B8|]", "line 6, column 4, bar 2: '?' is not understood")]
    [InlineData("A8|\"G B8|]", "a quotation mark is opened but not closed")]
    [InlineData("A8|[CEG", "the bracket [ is opened but not closed")]
    [InlineData("A8|{c", "the grace group { is opened but not closed")]
    [InlineData("A8|[K:G", "the field in brackets is opened but not closed")]
    [InlineData("A8|C99999999999|", "line 6, column 5, bar 2")]
    [InlineData("A8|\nK:Q", "the key K:Q cannot be read")]
    [InlineData("A8|\nM:7/9", "the metre M:7/9 cannot be read")]
    [InlineData("A8|\nL:1/7", "the unit length L:1/7 cannot be read")]
    [InlineData("A8|(1A8|", "the tuplet (1 cannot be read")]
    [InlineData("A8|B4> >c4|", "a < or > has no note")]
    [InlineData(">A8|", "a < or > has no note")]
    [InlineData("A8|B''''''''''8|", "outside the MIDI range")]
    [InlineData("A8|[]B8|", "brackets [ ] without a note")]
    [InlineData("C8|\nw:one two", "more syllables than notes")]
    public void What_does_not_fit_is_said_with_its_place(string body, string message) =>
        Assert.Contains(message, Abc.Findings("X:1\nT:t\nM:4/4\nL:1/8\nK:C\n" + body), StringComparison.Ordinal);

    [Theory]
    [InlineData("G2|A8|B8|c6|]")]
    [InlineData("|:G2|A8|B6:|:c2|d8|e6:|")]
    [InlineData("\"C\"A8-|\"^slow\"A8|]")]
    public void What_fits_is_read_without_a_word(string body) =>
        Assert.Equal("", Abc.Findings("X:1\nT:t\nM:4/4\nL:1/8\nK:C\n" + body));

    [Theory]
    [InlineData("\"C\"A4\"G7\"B4", "C@0 G7@4")]
    [InlineData("\"C\"A2>B2 \"G7\"c4", "C@0 G7@4")]
    [InlineData("\"E7\"\"G\"A8", "E7@0")]
    [InlineData("\"(Am)\"A4\"[G]\"A4", "Am@0 G@4")]
    [InlineData("\"^up\"\"C\"A4\"_down\"B4", "C@0")]
    [InlineData("\"<(\"\">)\"A4\"@1,2 x\"B4", "")]
    [InlineData("\"G(Em)\"A4\"D/f+\"B4", "G@0 D/F#@4")]
    [InlineData("\"D m\"A4\"Cd\"B4", "Dm@0 Cdim@4")]
    [InlineData("\"C\"z4\"G\"z4", "C@0 G@4")]
    [InlineData("A4\"G\"|B8", " | G@0")]
    [InlineData("A4\"G\"|\"D\"B8", " | D@0")]
    [InlineData("[\"F\"CEG]8", "F@0")]
    [InlineData("\"N.C.\"A8", "N.C.@0")]
    public void Chord_symbols_and_annotations(string body, string chords) =>
        Assert.Equal(chords, Abc.Chords(Abc.Body(body)));

    [Theory]
    [InlineData("C2D2E2F2|\nw:one two three four", "one two three four")]
    [InlineData("C2D2E2F2|\nw:a-bi-de with", "a- bi- de with")]
    [InlineData("C2D2E2F2|\nw:night_ of day", "night_ . of day")]
    [InlineData("C2D2E2F2|\nw:* two~words * four", ". two words . four")]
    [InlineData("C2D2E2F2|\nw:well\\-known a--b", "well-known a- . b")]
    [InlineData("C2D2E2F2|G8|\nw:one | two", "one . . . two")]
    [InlineData("C2z2E2F2|\nw:one two three", "one two three")]
    [InlineData("C2D2\\\nE2F2|\nw:one two three four", "one two three four")]
    [InlineData("C2D2E2F2|\nw:one two\n+:three four", "one two three four")]
    public void Words_go_under_notes(string body, string words)
    {
        var notes = Abc.Body(body).Bars.SelectMany(b => b.Notes);
        Assert.Equal(
            words,
            string.Join(
                ' ',
                notes.Select(n =>
                    n.Lyrics.Count == 0
                        ? "."
                        : n.Lyrics[0].Text
                            + (
                                n.Lyrics[0].HyphenAfter ? "-"
                                : n.Lyrics[0].Extends ? "_"
                                : ""
                            )
                )
            )
        );
    }

    [Fact]
    public void Several_lines_of_words_are_verses()
    {
        var notes = Abc.Body("C4D4|\nw:one two\nw:three four\nE4F4|\nw:five six")
            .Bars.SelectMany(b => b.Notes)
            .ToList();
        Assert.Equal(
            ["1one 2three", "1two 2four", "1five", "1six"],
            notes.Select(n => string.Join(' ', n.Lyrics.Select(l => l.Verse + l.Text)))
        );
    }

    [Fact]
    public void A_chart_of_chords_without_notes_is_a_tune_too()
    {
        var tune = Abc.Body("\"C\"z8|\"F\"z4\"G7\"z4|");
        Assert.Equal("r8 | r8", Abc.Notes(tune));
        Assert.Equal("C@0 | F@0 G7@4", Abc.Chords(tune));
    }

    [Fact]
    public void A_tune_without_a_metre_takes_the_one_its_bars_fill()
    {
        var tune = Abc.Body("A2|A4B4|c4d4|e8|", "L:1/8\nK:D");
        Assert.All(tune.Bars, b => Assert.Equal(Metre.FourFour, b.Metre));
        Assert.Equal("0 1 2 3", string.Join(' ', tune.Bars.Select(b => b.Number)));
        Assert.Contains(
            "taken to be in 4/4",
            Abc.Findings("X:1\nT:t\nL:1/8\nK:D\nA4B4|c4d4|"),
            StringComparison.Ordinal
        );
    }
}
