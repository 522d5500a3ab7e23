using Stridewright.Music;

namespace Stridewright.Formats.Tests.Abc;

/// <summary>Source of the cases: the ABC standard 2.1, section 3; trade.md 8.3 for default unit lengths.</summary>
public sealed class AbcFieldsTests
{
    [Theory]
    [InlineData("M:2/4", 16)]
    [InlineData("M:3/8", 16)]
    [InlineData("M:3/4", 8)]
    [InlineData("M:4/4", 8)]
    [InlineData("M:6/8", 8)]
    [InlineData("M:C", 8)]
    [InlineData("M:C|", 8)]
    [InlineData("M:none", 8)]
    [InlineData("N:no metre", 8)]
    [InlineData("M:2/4\nM:6/8", 8)]
    [InlineData("M:6/8\nM:2/4", 16)]
    [InlineData("M:2/4\nL:1/4", 4)]
    public void The_unit_length_follows_the_last_metre_where_it_is_not_given(string header, int unit) =>
        Assert.Equal(new ScoreTime(1, unit), Abc.Body("C|", header + "\nK:C").Bars[0].Notes[0].Length);

    [Fact]
    public void A_change_of_metre_in_the_tune_leaves_the_unit_length() =>
        Assert.Equal("C4:4 C4:4 | C4:4", Abc.Notes(Abc.Body("C4 C4 |\nM:2/4\nC4|", "M:4/4\nK:C")));

    [Theory]
    [InlineData("M:C", "4/4", MetreSign.Common)]
    [InlineData("M:C|", "2/2", MetreSign.Cut)]
    [InlineData("M:9/8", "9/8", MetreSign.Numbers)]
    [InlineData("M:(2+3)/8", "5/8", MetreSign.Numbers)]
    [InlineData("M:6/4 % words", "6/4", MetreSign.Numbers)]
    public void Metres(string field, string metre, MetreSign sign)
    {
        var bar = Abc.Body("C|", field + "\nK:C").Bars[0];
        Assert.Equal((metre, sign), (bar.Metre.ToString(), bar.Metre.Sign));
    }

    /// <summary>Signatures: common practice; forms of the field: ABC 2.1, 3.1.14 and the corpus.</summary>
    [Theory]
    [InlineData("C", "C major", "C D E F G A B")]
    [InlineData("", "C major", "C D E F G A B")]
    [InlineData("none", "C major", "C D E F G A B")]
    [InlineData("G", "G major", "C D E F# G A B")]
    [InlineData("Bb", "Bb major", "C D Eb F G A Bb")]
    [InlineData("F#m", "F# minor", "C# D E F# G# A B")]
    [InlineData("Am", "A minor", "C D E F G A B")]
    [InlineData("A minor", "A minor", "C D E F G A B")]
    [InlineData("AMIN", "A minor", "C D E F G A B")]
    [InlineData("ADor", "A dorian", "C D E F# G A B")]
    [InlineData("E dor", "E dorian", "C# D E F# G A B")]
    [InlineData("A mix", "A mixolydian", "C# D E F# G A B")]
    [InlineData("DMixolydian", "D mixolydian", "C D E F# G A B")]
    [InlineData("G Lydian", "G lydian", "C# D E F# G A B")]
    [InlineData("GLyd =f", "G lydian", "C# D E F G A B")]
    [InlineData("EPhr", "E phrygian", "C D E F G A B")]
    [InlineData("B loc", "B locrian", "C D E F G A B")]
    [InlineData("C Ionian", "C major", "C D E F G A B")]
    [InlineData("A aeo", "A minor", "C D E F G A B")]
    [InlineData("HP", "A mixolydian", "C# D E F# G A B")]
    [InlineData("Hp", "A mixolydian", "C# D E F# G A B")]
    [InlineData("D ^g", "D major", "C# D E F# G# A B")]
    [InlineData("D=c", "D major", "C D E F# G A B")]
    [InlineData("D exp _b _e ^f", "D phrygian", "C D Eb F# G A Bb")]
    [InlineData("G clef=treble", "G major", "C D E F# G A B")]
    [InlineData("Ebm", "Eb minor", "Cb Db Eb F Gb Ab Bb")]
    public void Keys_with_modes_and_accidentals(string field, string key, string tones)
    {
        var bar = Abc.Body("CDEFGAB|", $"M:none\nL:1/8\nK:{field}").Bars[0];
        Assert.Equal(key, bar.Key.ToString());
        Assert.Equal(tones, string.Join(' ', bar.Notes.Select(n => n.Pitch.Tone)));
    }

    [Fact]
    public void Key_metre_and_unit_change_in_lines_and_in_brackets()
    {
        var tune = Abc.Body("F8 | [K:G] F8 | [M:3/4][L:1/4] F3 |\nK:Bb\nM:2/4\nB2 | [K:G]B [K:Bb]B |");
        Assert.Equal("F4:8 | F#4:8 | F#4:6 | Bb4:4 | B4:2 Bb4:2", Abc.Notes(tune));
        Assert.Equal(["4/4", "4/4", "3/4", "2/4", "2/4"], tune.Bars.Select(b => b.Metre.ToString()));
        Assert.Equal([0, 1, 1, -2, 1], tune.Bars.Select(b => b.Key.Signature));
    }

    [Theory]
    [InlineData("1/4=120", 120.0)]
    [InlineData("3/8=50", 75.0)]
    [InlineData("1/4 3/8 1/4 3/8=40", 200.0)]
    [InlineData("\"Slow\" 1/4=60", 60.0)]
    [InlineData("1/2=60 \"March\"", 120.0)]
    [InlineData("\"Andante\"", null)]
    [InlineData("240", 120.0)]
    [InlineData("C3=60", 90.0)]
    [InlineData("fast", null)]
    [InlineData("1/4=999999999", null)]
    public void Tempo_in_quarters_a_minute(string field, double? quarters) =>
        Assert.Equal(quarters, Abc.Body("C8|", $"M:4/4\nL:1/8\nQ:{field}\nK:C").QuartersPerMinute);

    /// <summary>ABC 2.1, 3.1.9; Y: is a dialect of the corpus (ORIGIN.md).</summary>
    [Theory]
    [InlineData("P:ABAB", "A B A B")]
    [InlineData("P:A2.B", "A A B")]
    [InlineData("P:((AB)2C)2", "A B A B C A B A B C")]
    [InlineData("Y:A ABB", "A A B B")]
    [InlineData("P:A)", "")]
    [InlineData("P:((((((((A9)9)9)9)9)9)9)9)", "")]
    public void The_order_of_parts_is_written_out(string field, string order)
    {
        var tune = Abc.Body("P:A\nC8|\n[P:B]D8|", field + "\nM:4/4\nL:1/8\nK:C");
        Assert.Equal(order, string.Join(' ', tune.SectionOrder));
        Assert.Equal(["A", "B"], tune.Bars.Select(b => b.Section));
    }

    [Fact]
    public void Title_and_composer_are_the_first_of_their_fields()
    {
        var tune = Abc.Whole("X:1\nT:First\nT:Second\nC:Somebody\nK:C\nC|");
        Assert.Equal(("First", "Somebody"), (tune.Title, tune.Composer));
    }

    [Fact]
    public void A_book_has_many_tunes_and_a_header_for_all_of_them()
    {
        var tunes = Abc.Read(
            "%abc-2.1\nM:3/4\nL:1/4\n\nX:1\nT:One\nK:C\nC3|\n\nfree text | with a bar\n\nX:2\nT:Two\nM:2/4\nK:C\nC2|\nX:3\nT:Three\nK:C\nD3|"
        ).Value!;
        Assert.Equal(
            ["One 3/4 C4:6", "Two 2/4 C4:4", "Three 3/4 D4:6"],
            tunes.Select(t => $"{t.Title} {t.Bars[0].Metre} {Abc.Notes(t)}")
        );
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Any_line_end_will_do(string end) =>
        Assert.Equal(
            "C4:8 | D4:8",
            Abc.Notes(
                Abc.Whole(
                    "\uFEFFX:1\nT:t\nM:4/4\nL:1/8\nK:C\nC8|\\\nD8|\n".Replace("\n", end, StringComparison.Ordinal)
                )
            )
        );

    [Fact]
    public void The_first_voice_with_notes_is_read()
    {
        const string text = "X:1\nT:t\nM:4/4\nL:1/8\nV:1\nV:2\nK:C\nV:1\nz8|\nV:2\nC8|\n[V:1]z8|\n[V:2]D8|\nV:3\nE8|";
        Assert.Equal("C4:8 | D4:8", Abc.Notes(Abc.Whole(text)));
        Assert.Contains("2 was read as the tune, the first with notes", Abc.Findings(text), StringComparison.Ordinal);
    }

    [Fact]
    public void Comments_directives_and_typeset_text_are_no_music() =>
        Assert.Equal(
            "C4:8 | D4:8",
            Abc.Notes(Abc.Body("C8| % D8|\n%%score 1\n%%begintext\nA8|B8|\n%%endtext\nN:note | bar\nG:Key: Am\nD8|"))
        );
}
