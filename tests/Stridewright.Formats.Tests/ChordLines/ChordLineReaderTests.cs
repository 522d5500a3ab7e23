using CsCheck;
using Stridewright.Formats.ChordLines;
using Stridewright.Music;

namespace Stridewright.Formats.Tests.ChordLines;

/// <summary>Lines of chords: the reader's own definition, and common practice for %, repeats and N.C.</summary>
public sealed class ChordLineReaderTests
{
    // Bars with their chords and where they begin, in parts of a whole note.
    [Theory]
    [InlineData("F | D7 | G7 C7 | F", "F@0|D7@0|G7@0 C7@1/4|F@0")]
    [InlineData("| F | C7 |", "F@0|C7@0")]
    [InlineData("F|D7|G7 C7|F", "F@0|D7@0|G7@0 C7@1/4|F@0")]
    [InlineData("F Gm C7", "F@0 Gm@1/4 C7@3/8")]
    [InlineData("F D7 Gm C7", "F@0 D7@1/8 Gm@1/4 C7@3/8")]
    [InlineData("F . C7", "F@0 C7@3/8")]
    [InlineData("F C7 . .", "F@0 C7@1/8")]
    [InlineData("F C7 .", "F@0 C7@1/4")]
    [InlineData("F | . C7", "F@0|F@0 C7@1/4")]
    [InlineData("F | . C7 | %", "F@0|F@0 C7@1/4|F@0 C7@1/4")]
    [InlineData("F | % | C7", "F@0|F@0|C7@0")]
    [InlineData("F | | C7", "F@0|F@0|C7@0")]
    [InlineData("F || C7", "F@0|C7@0")]
    [InlineData("B♭ | F♯m7♭5/C", "Bb@0|F#m7b5/C@0")]
    [InlineData("F | N.C. | nc C7", "F@0|N.C.@0|N.C.@0 C7@1/4")]
    [InlineData(" F \n | \t C7 ", "F@0|C7@0")]
    public void Chords_share_their_bars_in_two_four(string line, string bars) =>
        Assert.Equal(bars, Text(Read(line, Metre.TwoFour)));

    [Theory]
    [InlineData("F C7", "F@0 C7@1/2")]
    [InlineData("F Gm C7", "F@0 Gm@1/2 C7@3/4")]
    [InlineData("F D7 Gm C7", "F@0 D7@1/4 Gm@1/2 C7@3/4")]
    public void Chords_share_their_bars_in_four_four(string line, string bars) =>
        Assert.Equal(bars, Text(Read(line, Metre.FourFour)));

    [Theory]
    [InlineData("F C7", "F@0 C7@1/2")]
    [InlineData("F Gm C7", "F@0 Gm@1/4 C7@1/2")]
    public void Chords_share_their_bars_in_three_four(string line, string bars) =>
        Assert.Equal(bars, Text(Read(line, Metre.ThreeFour)));

    [Theory]
    [InlineData("F C7", "F@0 C7@3/8")]
    [InlineData("F Gm C7", "F@0 Gm@3/8 C7@5/8")]
    [InlineData("F D7 Gm C7", "F@0 D7@1/4 Gm@3/8 C7@5/8")]
    public void Chords_share_their_bars_in_six_eight(string line, string bars) =>
        Assert.Equal(bars, Text(Read(line, Metre.SixEight)));

    // Bars as they sound, by the root of their first chord.
    [Theory]
    [InlineData("|: F | C :| G", "FCFCG")]
    [InlineData("F | C :| G", "FCFCG")]
    [InlineData("F |: C :|: G :|", "FCCGG")]
    [InlineData("F |: C :| |: G :| A", "FCCGGA")]
    [InlineData("F |: C :: G :|", "FCCGG")]
    [InlineData("F || C :| G", "FCCG")]
    [InlineData("|: F | C | :| G |", "FCFCG")]
    [InlineData("F | C |]", "FC")]
    public void Repeats_are_played_out(string line, string sounding) =>
        Assert.Equal(
            sounding,
            string.Concat(Unfolding.Unfold(Read(line, Metre.TwoFour)).Bars.Select(b => b.Chords[0].Chord.Root.Step))
        );

    [Theory]
    [InlineData("F | Hm7 | C", 5, "'Hm7' is no chord")]
    [InlineData("F / / /", 3, "'.' holds a chord")]
    [InlineData("%", 1, "no bar before")]
    [InlineData(". F", 1, "there is none")]
    [InlineData("F | % C7", 7, "nothing else stands in its bar")]
    [InlineData("F | C7 %", 8, "nothing else stands in its bar")]
    [InlineData("F G A B C | D", 9, "has 5 chords: in 2/4 there is room for 4")]
    [InlineData("|: F | C", 1, "not closed")]
    [InlineData("|: F |: C :|", 6, "within a repeat")]
    [InlineData(":| F", 1, "no bar stands before")]
    [InlineData("F ||| C", 3, "'|||' is no bar line")]
    [InlineData("F : C", 3, "':' is no bar line")]
    [InlineData("F | C7x9q!", 5, "'C7x9q!' is no chord")]
    public void A_fault_is_told_with_its_column(string line, int column, string message)
    {
        var reading = ChordLineReader.Read(line, Metre.TwoFour, "Test");
        Assert.Null(reading.Value);
        Assert.Contains(
            reading.Diagnostics,
            d =>
                d.Severity == Severity.Error
                && d.Place == new Place(Column: column)
                && d.Message.Contains(message, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void All_faults_are_told_at_once_and_with_their_line_where_there_are_several()
    {
        var reading = ChordLineReader.Read("F | Q |\nG | x7", Metre.TwoFour, "Test");
        Assert.Equal([Place.AtLine(1, 5), Place.AtLine(2, 5)], reading.Diagnostics.Select(d => d.Place));
    }

    [Theory]
    [InlineData("")]
    [InlineData(" | | ")]
    [InlineData("N.C. | %")]
    public void A_line_without_a_chord_is_told(string line)
    {
        var reading = ChordLineReader.Read(line, Metre.TwoFour, "Test");
        Assert.Null(reading.Value);
        Assert.Contains("no chord", Assert.Single(reading.Diagnostics).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Limits_are_told()
    {
        var wide = ChordLineReader.Read(new string(' ', ChordLineReader.MostCharacters) + "F", Metre.TwoFour, "Test");
        Assert.Contains("characters", Assert.Single(wide.Diagnostics).Message, StringComparison.Ordinal);
        var bars = string.Join('|', Enumerable.Repeat("F", ChordLineReader.MostBars));
        Assert.Equal(ChordLineReader.MostBars, Read(bars, Metre.TwoFour).Bars.Count);
        var more = ChordLineReader.Read(bars + "|F|F", Metre.TwoFour, "Test");
        Assert.Contains("1000 bars", more.Diagnostics[0].Message, StringComparison.Ordinal);
        Assert.Null(more.Value);
    }

    [Fact]
    public void A_metre_without_strokes_of_its_own_is_a_mistake_of_the_program() =>
        Assert.Throws<ArgumentException>(() => ChordLineReader.Read("F", new Metre(5, 4), "Test"));

    [Fact]
    public void Any_text_gives_a_tune_or_a_fault_with_its_place() =>
        Gen.OneOf(
                Gen.Int[0, Parts.Length - 1]
                    .Array[0, 40]
                    .Select(parts => string.Join(' ', parts.Select(i => Parts[i]))),
                Gen.String[Gen.Char["ABFGb#m7|:%. ]/\n♯\0é"], 0, 60]
            )
            .Sample(
                line =>
                {
                    var reading = ChordLineReader.Read(line, Metre.TwoFour, "Test");
                    Assert.Equal(reading.Value is null, reading.Diagnostics.Count > 0);
                    Assert.All(reading.Diagnostics, d => Assert.Equal(Severity.Error, d.Severity));
                    if (reading.Value is { } tune)
                    {
                        Assert.All(tune.Bars, b => Assert.Equal(ScoreTime.Zero, b.Chords[0].At));
                    }
                },
                iter: 5000
            );

    private static readonly string[] Parts =
    [
        "F",
        "Bb7",
        "C#m7b5/G",
        "G",
        "|",
        "|",
        "|",
        "|:",
        ":|",
        "||",
        "%",
        ".",
        "N.C.",
        "\n",
        "]",
        "x",
    ];

    private static Tune Read(string line, Metre metre)
    {
        var reading = ChordLineReader.Read(line, metre, "Test");
        Assert.Empty(reading.Diagnostics);
        return reading.Value!;
    }

    private static string Text(Tune tune) =>
        string.Join('|', tune.Bars.Select(b => string.Join(' ', b.Chords.Select(c => $"{c.Chord}@{c.At}"))));
}
