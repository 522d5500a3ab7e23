namespace Stridewright.Formats.Tests.Abc;

/// <summary>Source of the cases: the ABC standard 2.1, section 4 (trade.md 8.3 for lengths, accidentals, octaves).</summary>
public sealed class AbcNotesTests
{
    [Theory]
    [InlineData("C c C, c' | z8", "C4:1 C5:1 C3:1 C6:1 | r8")]
    [InlineData("A2 A/ A// A/4 A3/2 A3/ A4", "A4:2 A4:1/2 A4:1/4 A4:1/4 A4:3/2 A4:3/2 A4:4")]
    [InlineData("C8", "C4:8")]
    [InlineData("z4 C2 x2", "r4 C4:2 r2")]
    [InlineData("Z2 | C8", "r8 | r8 | C4:8")]
    [InlineData("C4 y C2 y2 D2", "C4:4 C4:2 D4:2")]
    public void Pitches_lengths_and_rests(string body, string notes) => Assert.Equal(notes, Abc.Notes(Abc.Body(body)));

    /// <summary>The three equal lines of the standard's broken-rhythm example.</summary>
    [Theory]
    [InlineData("1/16", "a3b cd3 a2b2c2d2")]
    [InlineData("1/8", "a3/2b/2 c/2d3/2 abcd")]
    [InlineData("1/8", "a>b c<d abcd")]
    [InlineData("1/8", "a > b c< d abcd")]
    public void Broken_rhythm_equals_written_out_lengths(string unit, string body) =>
        Assert.Equal(
            "A5:3/2 B5:1/2 C5:1/2 D5:3/2 A5:1 B5:1 C5:1 D5:1",
            Abc.Notes(Abc.Body(body, $"M:4/4\nL:{unit}\nK:C"))
        );

    [Theory]
    [InlineData("A4>>B4", "A4:7 B4:1")]
    [InlineData("A4>>>B4", "A4:15/2 B4:1/2")]
    [InlineData("A4<<B4", "A4:1 B4:7")]
    [InlineData("A4>\"G\"{c}B4", "A4:6 B4:2")]
    [InlineData("[CE]4>z4", "E4:6 r2")]
    public void More_marks_divide_more_sharply(string body, string notes) =>
        Assert.Equal(notes, Abc.Notes(Abc.Body(body)));

    [Theory]
    [InlineData("^F f F4 F2 | F8", "F#4:1 F#5:1 F#4:4 F#4:2 | F4:8")]
    [InlineData("^F =F F2 __B2 B2", "F#4:1 F4:1 F4:2 Bbb4:2 Bbb4:2")]
    [InlineData("^^F4 F4", "F##4:4 F##4:4")]
    [InlineData("^F8- | F4 F4 | F8", "F#4:8- | F#4:4 F4:4 | F4:8")]
    [InlineData("[^F A]4 F4", "A4:4 F#4:4")]
    public void An_accidental_holds_in_all_octaves_to_the_end_of_the_bar(string body, string notes) =>
        Assert.Equal(notes, Abc.Notes(Abc.Body(body)));

    [Theory]
    [InlineData("octave", "F#4:2 F5:2 F#4:4")]
    [InlineData("not", "F#4:2 F5:2 F4:4")]
    [InlineData("pitch", "F#4:2 F#5:2 F#4:4")]
    public void The_scope_of_accidentals_can_be_instructed(string scope, string notes)
    {
        Assert.Equal(notes, Abc.Notes(Abc.Body("^F2 f2 F4", $"I:propagate-accidentals {scope}\nL:1/8\nK:C")));
        Assert.Equal(notes, Abc.Notes(Abc.Whole($"%%propagate-accidentals {scope}\nX:1\nT:t\nK:C\n^F2 f2 F4|")));
    }

    /// <summary>Defaults of p:q:r from the table in ABC 2.1, 4.13.</summary>
    [Theory]
    [InlineData("4/4", "(3ABc d2 e4", "A4:2/3 B4:2/3 C5:2/3 D5:2 E5:4")]
    [InlineData("4/4", "(3:2:2A2B d2 e4", "A4:4/3 B4:2/3 D5:2 E5:4")]
    [InlineData("4/4", "(3::2A2B d2 e4", "A4:4/3 B4:2/3 D5:2 E5:4")]
    [InlineData("4/4", "(3:2A2 d2 e2 c4", "A4:4/3 D5:4/3 E5:4/3 C5:4")]
    [InlineData("4/4", "(5ABcde d2 e4", "A4:2/5 B4:2/5 C5:2/5 D5:2/5 E5:2/5 D5:2 E5:4")]
    [InlineData("4/4", "(6ABcABc d2 e4", "A4:1/3 B4:1/3 C5:1/3 A4:1/3 B4:1/3 C5:1/3 D5:2 E5:4")]
    [InlineData("6/8", "(2AB c3", "A4:3/2 B4:3/2 C5:3")]
    [InlineData("6/8", "(4ABcd c3", "A4:3/4 B4:3/4 C5:3/4 D5:3/4 C5:3")]
    [InlineData("6/8", "(5ABcde c3", "A4:3/5 B4:3/5 C5:3/5 D5:3/5 E5:3/5 C5:3")]
    [InlineData("4/4", "(3A>Bc d2 e4", "A4:1 B4:1/3 C5:2/3 D5:2 E5:4")]
    public void Tuplets(string metre, string body, string notes) =>
        Assert.Equal(notes, Abc.Notes(Abc.Body(body, $"M:{metre}\nL:1/8\nK:C")));

    [Theory]
    [InlineData("A4-A4 | A8", "A4:4- A4:4 | A4:8")]
    [InlineData("A8- | A8", "A4:8- | A4:8")]
    [InlineData("A8 -| A8", "A4:8- | A4:8")]
    [InlineData("A4 -A4", "A4:4- A4:4")]
    [InlineData("A4-B4", "A4:4 B4:4")]
    [InlineData("A4-z2A2", "A4:4 r2 A4:2")]
    [InlineData("[F2-A2-]A2 (A2 c2)", "A4:2- A4:2 A4:2 C5:2")]
    public void Ties_join_equal_pitches(string body, string notes) => Assert.Equal(notes, Abc.Notes(Abc.Body(body)));

    [Fact]
    public void Of_notes_together_the_top_one_is_the_tune_and_it_is_said_once()
    {
        const string body = "[CEG]2 [c2E2] [ee]4 | [C3E]2 z2\n";
        Assert.Equal("G4:2 C5:2 E5:4 | E4:6 r2", Abc.Notes(Abc.Body(body)));
        Assert.Equal(1, Abc.Findings("X:1\nT:t\nM:4/4\nL:1/8\nK:C\n" + body).Split("top one").Length - 1);
    }

    [Fact]
    public void Graces_stand_with_the_note_they_lean_on()
    {
        var tune = Abc.Body("{/ga}c4 {^f}d4 {c}z4 e4");
        Assert.Equal(["G5 A5", "F#5", ""], tune.Bars.SelectMany(b => b.Notes).Select(n => string.Join(' ', n.Graces)));
    }

    [Theory]
    [InlineData("!trill!A2 .B2 ~c2 !D.C.!d2", "A4:2 B4:2 C5:2 D5:2")]
    [InlineData("+trill+A2 TB2 uc2 vd2", "A4:2 B4:2 C5:2 D5:2")]
    [InlineData("(A2 B2) !c2 d2", "A4:2 B4:2 C5:2 D5:2")]
    [InlineData("A4 B4 & c8 | c4 d4 & e8 | f8", "A4:4 B4:4 | C5:4 D5:4 | F5:8")]
    public void Ornaments_slurs_and_second_layers_leave_the_tune_alone(string body, string notes) =>
        Assert.Equal(notes, Abc.Notes(Abc.Body(body)));
}
