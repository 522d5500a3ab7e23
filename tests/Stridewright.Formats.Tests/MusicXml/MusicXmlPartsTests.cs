using Stridewright.Formats.MusicXml;
using Stridewright.Music;
using Stridewright.Testing;
using static Stridewright.Formats.Tests.MusicXml.ReaderSheet;

namespace Stridewright.Formats.Tests.MusicXml;

/// <summary>
/// Which part and voice is read as the tune, and at what pitch. Sources: MusicXML 4.0, element reference
/// (<c>transpose</c>, <c>concert-score</c>, <c>for-part</c>, <c>clef-octave-change</c>, <c>voice</c>, <c>ending</c>);
/// that the singer's part, else the lead sheet's, else the top line has the tune is common practice.
/// </summary>
public sealed class MusicXmlPartsTests
{
    private const string Words = "<lyric><text>la</text></lyric>";
    private const string Back = "<backup><duration>16</duration></backup>";

    private static string Open(int fifths, string transpose = "", string more = "") =>
        $"<attributes><divisions>4</divisions><key><fifths>{fifths}</fifths></key>"
        + $"<time><beats>4</beats><beat-type>4</beat-type></time>{more}{transpose}</attributes>";

    private static string Transpose(string diatonic, int chromatic, int? octaves = null, string attributes = "") =>
        $"<transpose{attributes}>{(diatonic.Length > 0 ? $"<diatonic>{diatonic}</diatonic>" : "")}<chromatic>{chromatic}</chromatic>"
        + (octaves is { } o ? $"<octave-change>{o}</octave-change>" : "")
        + "</transpose>";

    /// <summary>A score of parts, each a name, an abbreviation and bars.</summary>
    private static string ScoreOfParts(params (string Name, string Short, string[] Bars)[] parts) =>
        "<score-partwise version='4.0'><part-list>"
        + string.Concat(
            parts.Select(
                (p, i) =>
                    $"<score-part id='P{i + 1}'><part-name>{p.Name}</part-name><part-abbreviation>{p.Short}</part-abbreviation></score-part>"
            )
        )
        + "</part-list>"
        + string.Concat(
            parts.Select(
                (p, i) =>
                    $"<part id='P{i + 1}'>"
                    + string.Concat(p.Bars.Select((b, n) => $"<measure number='{n + 1}'>{b}</measure>"))
                    + "</part>"
            )
        )
        + "</score-partwise>";

    private static Reading<Tune> Tune(string xml, string? part = null) => MusicXmlReader.ReadTune(Bytes(xml), part);

    private static string Bar(string pitch, string more = "", string harmony = "") =>
        FourFour + harmony + Note(pitch, 16, more);

    private static string Band(string[] names, string chords = "", string words = "") =>
        ScoreOfParts(
            names
                .Select(
                    (n, i) =>
                        (
                            n,
                            $"{n[0]}.",
                            (string[])
                                [
                                    Bar(
                                        "CDEFGAB"[i] + "4",
                                        n == words ? Words : "",
                                        n == chords ? Chord("C", "major") : ""
                                    ),
                                ]
                        )
                )
                .ToArray()
        );

    [Theory]
    [InlineData("Flute,Clarinet,Piano", "", "", "C4@0+1")]
    [InlineData("Flute,Voice,Piano", "", "", "D4@0+1")]
    [InlineData("Flute,Violin,Melody line", "", "", "E4@0+1")]
    [InlineData("Flute,Backing vocals,Lead", "", "", "E4@0+1")]
    [InlineData("Flute,Baritone,Piano", "", "Baritone", "D4@0+1")]
    [InlineData("Flute,Guitar,Piano", "Guitar", "", "D4@0+1")]
    [InlineData("Flute,Baritone,Guitar", "Guitar", "Baritone", "D4@0+1")]
    [InlineData("Flute,Voice,Guitar", "Guitar", "", "D4@0+1")]
    [InlineData("Voice 1,Voice 2", "", "Voice 2", "D4@0+1")]
    public void The_tune_is_the_part_named_so_then_the_one_with_words_then_with_symbols_then_the_top_one(
        string names,
        string chords,
        string words,
        string line
    ) => Assert.Equal([line], Line(Tune(Band(names.Split(','), chords, words))));

    [Fact]
    public void Which_part_was_taken_out_of_which_is_told()
    {
        var note = Only(Tune(Band(["Flute", "Voice", "Piano"])).Diagnostics, Severity.Note);
        Assert.Contains(
            "of 3 parts (1 'Flute', 2 'Voice', 3 'Piano'), 2 'Voice'",
            note.Message,
            StringComparison.Ordinal
        );
        Assert.Contains("by its name", note.Message, StringComparison.Ordinal);
        Assert.NotNull(note.Place.Line);
    }

    [Theory]
    [InlineData("Piano", "E4@0+1")]
    [InlineData("piano", "E4@0+1")]
    [InlineData("P.", "E4@0+1")]
    [InlineData("P1", "C4@0+1")]
    [InlineData("1", "C4@0+1")]
    [InlineData("3:1", "E4@0+1")]
    [InlineData(" Flute : 1 ", "C4@0+1")]
    [InlineData(":1", "D4@0+1")]
    public void A_part_is_chosen_by_name_abbreviation_id_or_number(string asked, string line) =>
        Assert.Equal([line], Line(Tune(Band(["Flute", "Voice", "Piano"]), asked)));

    [Theory]
    [InlineData("Oboe")]
    [InlineData("4")]
    [InlineData("0")]
    [InlineData("")]
    [InlineData(":")]
    [InlineData("Oboe:1")]
    [InlineData("Flute:")]
    public void A_part_that_there_is_not_is_an_error_that_lists_those_there_are(string asked)
    {
        var tune = Tune(Band(["Flute", "Voice", "Piano"]), asked);
        Assert.Null(tune.Value);
        Assert.Contains(
            "1 'Flute', 2 'Voice', 3 'Piano'",
            Only(tune.Diagnostics, Severity.Error).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_name_with_a_colon_and_a_name_that_is_a_number_are_found_as_names_first()
    {
        var score = ScoreOfParts(("2", "", [Bar("C4")]), ("Hall: upper", "", [Bar("D4")]));
        Assert.Equal(["C4@0+1"], Line(Tune(score, "2")));
        Assert.Equal(["D4@0+1"], Line(Tune(score, "Hall: upper")));
    }

    [Fact]
    public void A_voice_is_chosen_behind_a_colon_and_only_it_is_read()
    {
        string[] bars =
        [
            FourFour + Note("C5", 16, "<voice>1</voice>") + Back + Note("E4", 16, "<voice>2</voice>"),
            Note("D5", 16, "<voice>1</voice>"),
        ];
        var score = ScoreOfParts(("Flute", "", [Bar("A4"), Bar("A4")]), ("Piano", "", bars));
        Assert.Equal(["E4@0+1", ""], Line(Tune(score, "Piano:2")));
        Assert.Equal(["C5@0+1", "D5@0+1"], Line(Tune(score, "2:1")));
        Assert.Contains(
            "1, 2",
            Only(Tune(score, "Piano:3").Diagnostics, Severity.Error).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_voice_of_a_lower_staff_can_be_chosen()
    {
        var bar =
            PianoFourFour
            + Note("C5", 16, "<voice>1</voice><staff>1</staff>")
            + Back
            + Note("C3", 16, "<voice>5</voice><staff>2</staff>");
        Assert.Equal(["C3@0+1"], Line(Tune(Part(bar), ":5")));
        Assert.Equal(["C5@0+1"], Line(Tune(Part(bar))));
    }

    [Theory]
    [InlineData("1", "2", "", "E5@0+1")] // the second voice is the upper one
    [InlineData("2", "1", "", "E5@0+1")] // and whatever its number
    [InlineData("1", "2", "1", "C4@0+1")] // words decide before height
    public void Of_two_voices_on_a_staff_the_one_with_words_else_the_upper_one_has_the_tune(
        string lower,
        string upper,
        string sung,
        string line
    )
    {
        string Voice(string pitch, string voice) =>
            Note(pitch, 16, $"<voice>{voice}</voice>" + (voice == sung ? Words : ""));
        Assert.Equal([line], Line(Tune(Part(FourFour + Voice("C4", lower) + Back + Voice("E5", upper)))));
    }

    [Fact]
    public void A_second_voice_above_for_a_bar_of_many_does_not_take_the_tune()
    {
        string One(string pitch) => Note(pitch, 16, "<voice>1</voice>");
        var tune = Tune(
            Part(FourFour + One("C5") + Back + Note("G5", 16, "<voice>2</voice>"), One("D5"), One("E5"), One("F5"))
        );
        Assert.Equal(["C5@0+1", "D5@0+1", "E5@0+1", "F5@0+1"], Line(tune));
    }

    [Fact]
    public void Percussion_is_never_the_tune_unless_asked_for()
    {
        const string Drum = "<clef><sign>percussion</sign></clef>";
        var score = ScoreOfParts(
            ("Lead drum", "", [Open(0, "", Drum) + Note("F4", 16, Words)]),
            ("Flute", "", [Bar("A4")])
        );
        Assert.Equal(["A4@0+1"], Line(Tune(score)));
        Assert.Equal(["F4@0+1"], Line(Tune(score, "Lead drum")));
        var alone = Tune(ScoreOfParts(("Drums", "", [Open(0, "", Drum) + Note("F4", 16)])));
        Assert.Contains("percussion", Only(alone.Diagnostics, Severity.Error).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Channel_10_is_percussion()
    {
        var score = Band(["Kit", "Flute"])
            .Replace(
                "<part-abbreviation>K.</part-abbreviation>",
                "<part-abbreviation>K.</part-abbreviation><midi-instrument id='P1-I1'><midi-channel>10</midi-channel></midi-instrument>",
                StringComparison.Ordinal
            );
        Assert.Equal(["D4@0+1"], Line(Tune(score)));
    }

    [Fact]
    public void Chord_symbols_of_a_transposing_part_over_another_part_sound_as_well()
    {
        // A trumpet in B flat reads D major where C major sounds.
        var trumpet = Open(2, Transpose("-1", -2)) + Chord("D", "major") + Note("F#4", 16);
        var tune = Tune(ScoreOfParts(("Voice", "", [Bar("G4", Words)]), ("Trumpet", "", [trumpet])));
        Assert.Equal(["G4@0+1"], Line(tune));
        Assert.Equal(["0 C Major"], Chords(tune));
        Assert.Contains(tune.Diagnostics, d => d.Message.Contains("part 'Trumpet'", StringComparison.Ordinal));
    }

    [Fact]
    public void Form_and_rehearsal_letters_that_stand_over_the_top_part_only_are_taken_over()
    {
        const string Letter = "<direction><direction-type><rehearsal>A</rehearsal></direction-type></direction>";
        const string End = "<barline location='right'><repeat direction='backward'/></barline>";
        var top = (string[])[FourFour + Letter + Note("C4", 16), Note("D4", 16) + End];
        var tune = Tune(ScoreOfParts(("Flute", "", top), ("Voice", "", [Bar("G4"), Note("A4", 16)]))).Value!;
        Assert.Equal("A", tune.Bars[0].Section);
        Assert.Equal(2, tune.Bars[1].Marks.RepeatEnd);
    }

    [Theory]
    // Written C5 on instruments in use (common practice), with the written key whose sounding one is C major.
    [InlineData("-1", -2, null, 2, "Bb4", "C major")] // B flat clarinet
    [InlineData("-1", -2, -1, 2, "Bb3", "C major")] // tenor saxophone
    [InlineData("-5", -9, null, 3, "Eb4", "C major")] // alto saxophone
    [InlineData("-5", -9, -1, 3, "Eb3", "C major")] // baritone saxophone
    [InlineData("-4", -7, null, 1, "F4", "C major")] // horn in F
    [InlineData("2", 3, null, -3, "Eb5", "Gb major")] // E flat clarinet, read in E flat major
    [InlineData("-2", -3, null, -3, "A4", "C major")] // clarinet in A
    [InlineData("0", 0, -1, 0, "C4", "C major")] // guitar, double bass
    [InlineData("0", 0, 1, 0, "C6", "C major")] // piccolo
    [InlineData("", -2, null, 2, "Bb4", "C major")] // without diatonic
    public void A_written_note_and_key_come_out_as_they_sound(
        string diatonic,
        int chromatic,
        int? octaves,
        int fifths,
        string sounding,
        string key
    )
    {
        var tune = Tune(Part(Open(fifths, Transpose(diatonic, chromatic, octaves)) + Note("C5", 16)));
        Assert.Equal([sounding + "@0+1"], Line(tune));
        Assert.Equal(key, tune.Value!.Bars[0].Key.ToString());
    }

    [Fact]
    public void A_change_of_instrument_inside_the_piece_changes_pitch_key_and_symbols()
    {
        // Clarinet in B flat, then in A: the written key stays at two sharps, so that C major becomes B major.
        var tune = Tune(
            Part(
                Open(2, Transpose("-1", -2)) + Chord("D", "major") + Note("D5", 16),
                $"<attributes>{Transpose("-2", -3)}</attributes>" + Chord("D", "major") + Note("D5", 16),
                $"<attributes>{Transpose("0", 0)}</attributes>" + Note("D5", 16)
            )
        );
        Assert.Equal(["C5@0+1", "B4@0+1", "D5@0+1"], Line(tune));
        Assert.Equal(["0 C Major", "0 B Major", ""], Chords(tune));
        Assert.Equal(["C major", "B major", "D major"], tune.Value!.Bars.Select(b => b.Key.ToString()));
    }

    [Fact]
    public void A_transposition_of_one_staff_leaves_the_others()
    {
        var bar =
            Open(0, Transpose("-1", -2, null, " number='2'"), "<staves>2</staves>")
            + Note("C5", 16, "<voice>1</voice><staff>1</staff>")
            + Back
            + Note("C4", 16, "<voice>2</voice><staff>2</staff>");
        Assert.Equal(["C5@0+1"], Line(Tune(Part(bar))));
        Assert.Equal(["Bb3@0+1"], Line(Tune(Part(bar), ":2")));
    }

    [Fact]
    public void A_concert_score_is_at_pitch_whatever_its_parts_will_be()
    {
        const string ForPart =
            "<for-part><part-transpose><diatonic>-1</diatonic><chromatic>-2</chromatic></part-transpose></for-part>";
        string Concert(string attributes) =>
            Part($"<attributes>{attributes}</attributes>" + FourFour + Note("C5", 16))
                .Replace("<part-list>", "<defaults><concert-score/></defaults><part-list>", StringComparison.Ordinal);
        Assert.Equal(["C5@0+1"], Line(Tune(Concert(ForPart))));
        Assert.Equal(["C4@0+1"], Line(Tune(Concert(Transpose("0", 0, -1))))); // octaves are allowed
        var wrong = Tune(Concert(Transpose("-1", -2)));
        Assert.Equal(["C5@0+1"], Line(wrong));
        Assert.Contains("concert-score", Only(wrong.Diagnostics, Severity.Warning).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_octave_clef_moves_nothing_since_pitches_are_given_as_they_sound()
    {
        const string Tenor = "<clef><sign>G</sign><line>2</line><clef-octave-change>-1</clef-octave-change></clef>";
        Assert.Equal(["C4@0+1"], Line(Tune(Part(Open(0, "", Tenor) + Note("C4", 16)))));
    }

    [Fact]
    public void The_transposing_parts_of_a_corpus_score_sound_as_its_part_at_pitch()
    {
        // Its text says: "Transposing instruments: trumpet in Bb, horn in Eb, piano; all show the same concert pitch".
        var path = Corpus.PathOf("corpus/musicxml/valid/72a-transposinginstruments.musicxml");
        string[] Read(string part)
        {
            using var file = File.OpenRead(path);
            return Line(MusicXmlReader.ReadTune(file, part));
        }
        var trumpet = Read("1");
        Assert.Equal(Read("3"), trumpet);
        Assert.Equal(trumpet, Read("Horn in Eb"));
    }
}
