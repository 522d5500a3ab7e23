using Stridewright.Formats.Abc;
using Stridewright.Music;

namespace Stridewright.Formats.Tests.Abc;

/// <summary>Several voices and their pitch. Source: ABC 2.1, sections 4.6 (clefs and transposition) and 7 (multiple
/// voices); which voice has the tune is common practice.</summary>
public sealed class AbcVoicesTests
{
    private const string Head = "X:1\nT:t\nM:4/4\nL:1/8\n";

    private static string Trio(string first = "", string second = "", string third = "") =>
        Head + $"V:T1 {first}\nV:T2 {second}\nV:B {third}\nK:C\n";

    private static Reading<ValueList<Tune>> Read(string text, string? part = null) =>
        AbcReader.Read(new StringReader(text), part);

    private static string Notes(string text, string? part = null) => Abc.Notes(Assert.Single(Read(text, part).Value!));

    [Theory]
    [InlineData("", "", "C4:8")]
    [InlineData("name=\"Flute\"", "name=\"Voice\" snm=\"V.\"", "E4:8")]
    [InlineData("nm=Backing", "nm=\"Lead singer\"", "E4:8")]
    [InlineData("clef=perc", "", "E4:8")]
    public void The_tune_is_the_voice_named_so_else_the_first_percussion_aside(
        string first,
        string second,
        string notes
    ) => Assert.Equal(notes, Notes(Trio(first, second) + "V:T1\nC8|\nV:T2\nE8|\nV:B\nC,8|\n"));

    [Theory]
    [InlineData("C8|", "E8|\nw:la", "E4:8")]
    [InlineData("C8|", "\"C\"E8|", "E4:8")]
    [InlineData("\"C\"C8|", "E8|\nw:la", "E4:8")]
    [InlineData("z8|", "E8|", "E4:8")]
    public void Words_then_chord_symbols_tell_the_tune(string first, string second, string notes) =>
        Assert.Equal(notes, Notes(Trio() + $"V:T1\n{first}\nV:T2\n{second}\nV:B\nC,8|\n"));

    [Fact]
    public void Which_voice_was_taken_out_of_which_is_told()
    {
        var note = Assert.Single(
            Read(Trio("name=\"Tenor I\"") + "V:T1\nC8|\nV:T2\nE8|\nV:B\nC,8|\n").Diagnostics,
            d => d.Severity == Severity.Note
        );
        Assert.Contains(
            "of 3 voices (1 'Tenor I', 2 'T2', 3 'B'), 1 'Tenor I'",
            note.Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("T2", "E4:8")]
    [InlineData("t2", "E4:8")]
    [InlineData("2", "E4:8")]
    [InlineData(":2", "E4:8")]
    [InlineData("Tenor II", "E4:8")]
    [InlineData("T.II", "E4:8")]
    [InlineData("3", "C3:8")]
    public void A_voice_is_chosen_by_name_subname_id_or_number(string asked, string notes) =>
        Assert.Equal(
            notes,
            Notes(Trio("", "name=\"Tenor II\" snm=\"T.II\"") + "V:T1\nC8|\nV:T2\nE8|\nV:B\nC,8|\n", asked)
        );

    [Theory]
    [InlineData("Alto")]
    [InlineData("4")]
    [InlineData("2:1")]
    [InlineData("")]
    public void A_voice_that_there_is_not_is_an_error_that_lists_those_there_are(string asked)
    {
        var reading = Read(Trio() + "V:T1\nC8|\nV:T2\nE8|\nV:B\nC,8|\n", asked);
        Assert.Null(reading.Value);
        var error = Assert.Single(reading.Diagnostics, d => d.Severity == Severity.Error);
        Assert.Contains("1 'T1', 2 'T2', 3 'B'", error.Message, StringComparison.Ordinal);
        Assert.Equal(1, error.Place.Line);
    }

    [Fact]
    public void In_a_book_only_the_tune_without_the_voice_is_left_out()
    {
        var reading = Read(Trio() + "V:T1\nC8|\nV:T2\nE8|\n\nX:2\nT:One voice\nL:1/8\nK:C\nG8|\n", "T2");
        Assert.Equal("E4:8", Abc.Notes(Assert.Single(reading.Value!)));
        Assert.Equal(14, Assert.Single(reading.Diagnostics, d => d.Severity == Severity.Error).Place.Line);
    }

    [Fact]
    public void A_voice_of_rests_asked_for_is_an_error() =>
        Assert.Contains(
            "only rests",
            Assert
                .Single(Read(Trio() + "V:T1\nz8|\nV:T2\nE8|\n", "1").Diagnostics, d => d.Severity == Severity.Error)
                .Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void Voices_go_on_line_by_line_and_inside_lines() =>
        Assert.Equal(
            "E4:8 | F4:8 | G4:8",
            Notes(Trio() + "V:T1\nC8|\nV:T2\nE8|\n[V:T1]C8|\n[V:T2]F8|\n[V:T1]C8|[V:T2]G8|\n", "T2")
        );

    [Fact]
    public void Chord_symbols_parts_and_repeats_of_another_voice_are_taken_over()
    {
        var tune = Assert.Single(
            Read(Trio("name=Piano", "name=Voice") + "P:A\nV:T1\n|:\"C\"C8|\"G7\"D4 \"C\"D4:|\nV:T2\nE8|F8|\n").Value!
        );
        Assert.Equal("C@0 | G7@0 C@4", Abc.Chords(tune));
        Assert.Equal("A", tune.Bars[0].Section);
        Assert.Equal(2, tune.Bars[1].Marks.RepeatEnd);
    }

    [Theory]
    [InlineData("K:C clef=treble", "C4:8")]
    [InlineData("K:C clef=treble-8", "C3:8")]
    [InlineData("K:C treble+8", "C5:8")]
    [InlineData("K:C clef=bass", "C4:8")] // a clef alone moves nothing
    [InlineData("K:C clef=bass middle=d", "C4:8")] // nor does middle=, which is about print
    [InlineData("K:C octave=-1", "C3:8")]
    [InlineData("K:C clef=treble-8 octave=2", "C5:8")]
    [InlineData("K:C transpose=-12", "C3:8")]
    [InlineData("K:C clef=tenor-8 transpose=12", "C4:8")]
    public void Clefs_with_an_eight_and_octaves_move_the_notes(string key, string notes) =>
        Assert.Equal(notes, Notes(Head + key + "\nC8|"));

    [Theory]
    [InlineData("K:D transpose=-2", "\"D\"D4 ^G4", "C4:4 F#4:4", "C major", "C@0")] // clarinet in B flat
    [InlineData("K:A transpose=-9", "\"A7\"A8", "C4:8", "C major", "C7@0")] // alto saxophone
    [InlineData("K:Em transpose=3", "\"Em\"E8", "G4:8", "G minor", "Gm@0")] // clarinet in E flat
    [InlineData("K:E transpose=-2", "\"B7/D#\"E4 d4", "D4:4 C#5:4", "D major", "A7/C#@0")]
    [InlineData("K:B transpose=2", "\"B\"B8", "Db5:8", "Db major", "Db@0")] // C sharp would have seven sharps
    [InlineData("K:Db transpose=-1", "D8", "C4:8", "C major", "")]
    [InlineData("K:C transpose=14", "C8", "D5:8", "D major", "")]
    public void A_voice_that_is_transposed_comes_out_at_sounding_pitch_key_and_symbols(
        string key,
        string body,
        string notes,
        string sounding,
        string chords
    )
    {
        var tune = Abc.Whole(Head + key + "\n" + body + "|");
        Assert.Equal((notes, sounding, chords), (Abc.Notes(tune), tune.Bars[0].Key.ToString(), Abc.Chords(tune)));
    }

    [Fact]
    public void Accidentals_and_ties_are_reckoned_as_written()
    {
        // Written in D: F is sharp, its natural holds to the end of the bar and the tie carries it on.
        Assert.Equal(
            "Eb4:2 Eb4:2 Eb4:4- | Eb4:4 E4:4",
            Abc.Notes(Abc.Whole(Head + "K:D transpose=-2\n=F2F2F4-|F4F4|"))
        );
        Assert.Equal("C3:4 C#3:4", Abc.Notes(Abc.Whole(Head + "K:C octave=-1\nC4^C4|")));
    }

    [Fact]
    public void A_voice_has_what_its_own_field_says_over_what_the_key_says()
    {
        var text = Head + "V:1\nV:2 transpose=0 octave=0\nK:C transpose=-12\nV:1\nC8|\nV:2\nE8|\n[V:2 octave=1]E8|\n";
        Assert.Equal("C3:8", Notes(text, "1"));
        Assert.Equal("E4:8 | E5:8", Notes(text, "2"));
    }

    [Fact]
    public void A_change_inside_the_piece_counts_from_its_place() =>
        Assert.Equal("C4:8 | Bb3:8 | C4:8", Notes(Head + "K:C\nC8|[K:transpose=-2]C8|[K:transpose=0]C8|"));

    [Theory]
    [InlineData("octave=9")]
    [InlineData("transpose=abc")]
    [InlineData("transpose=999999999999")]
    public void A_property_that_cannot_be_read_is_told_with_its_place(string property)
    {
        var reading = Read(Head + $"K:C {property}\nC8|");
        Assert.Equal("C4:8", Abc.Notes(Assert.Single(reading.Value!)));
        var warning = Assert.Single(reading.Diagnostics, d => d.Severity == Severity.Warning);
        Assert.Contains(property, warning.Message, StringComparison.Ordinal);
        Assert.Equal(5, warning.Place.Line);
    }

    [Fact]
    public void A_transposed_voice_is_told_once()
    {
        var reading = Read(Head + "K:D transpose=-2\nD8|D8|\nD8|");
        Assert.Contains("sounding pitch", Assert.Single(reading.Diagnostics).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_that_costs_a_tune_its_notes_is_told_with_its_place()
    {
        var error = Assert.Single(Read(Head + "K:C\n\"Am CDEF|").Diagnostics, d => d.Severity == Severity.Error);
        Assert.Equal((6, 1), (error.Place.Line, error.Place.Column));
        Assert.Contains("no notes left", error.Message, StringComparison.Ordinal);
        var rests = Assert.Single(Read(Head + "K:C\nz8|").Diagnostics, d => d.Severity == Severity.Error);
        Assert.Equal(1, rests.Place.Line);
    }
}
