using Stridewright.Music;
using static Stridewright.Formats.Tests.MusicXml.ReaderSheet;

namespace Stridewright.Formats.Tests.MusicXml;

/// <summary>Two-staff scores. Meaning of the elements: MusicXML 4.0, W3C.</summary>
public sealed class MusicXmlReaderScoreTests
{
    private const string Back = "<backup><duration>16</duration></backup>";

    private static string On(int staff, int voice, string more = "") =>
        $"<voice>{voice}</voice>{more}<staff>{staff}</staff>";

    [Fact]
    public void Staves_become_hands_and_chords_are_lowest_first()
    {
        var bar =
            PianoFourFour
            + Note("E5", 16, On(1, 1))
            + Note("C5", 16, On(1, 1), "<chord/>")
            + Back
            + Note("C3", 8, On(2, 5))
            + Note("r", 8, On(2, 5));
        Assert.Equal(["Right 1: C5+E5@0+1", "Left 1: C3@0+1/2 r@1/2+1/2"], Voices(ScoreOf(Part(bar))));
    }

    [Fact]
    public void Two_parts_of_one_staff_are_right_and_left()
    {
        static string P(string id, string note) =>
            $"<part id='{id}'><measure number='1'>{FourFour}{note}</measure></part>";
        var score = ScoreOf(Score(P("P1", Note("C5", 16)) + P("P2", Note("C3", 16))));
        Assert.Equal(["Right 1: C5@0+1", "Left 1: C3@0+1"], Voices(score));
        Only(score.Diagnostics, Severity.Note);
    }

    [Fact]
    public void Music_on_one_staff_is_refused()
    {
        var score = ScoreOf(Part(FourFour + Note("C5", 16)));
        Assert.Null(score.Value);
        Assert.Contains("one staff", Only(score.Diagnostics, Severity.Error).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Voices_are_filled_with_hidden_rests_and_empty_hands_rest()
    {
        var bar =
            PianoFourFour
            + Note("C5", 16, On(1, 1))
            + Back
            + "<forward><duration>4</duration></forward>"
            + Note("E4", 6, On(1, 2));
        Assert.Equal(
            ["Right 1: C5@0+1", "Right 2: h@0+1/4 E4@1/4+3/8 h@5/8+1/4 h@7/8+1/8", "Left 1: R@0+1"],
            Voices(ScoreOf(Part(bar)))
        );
    }

    [Fact]
    public void A_gap_of_a_triplet_is_filled_exactly()
    {
        var bar =
            PianoFourFour.Replace("<divisions>4<", "<divisions>12<", StringComparison.Ordinal)
            + Note("C5", 48, On(1, 1))
            + "<backup><duration>48</duration></backup><forward><duration>4</duration></forward>"
            + Note("C3", 44, On(2, 5));
        var left = ScoreOf(Part(bar)).Value!.Bars[0].Voices[1];
        Assert.Equal("Left 1: h@0+1/12 C3@1/12+11/12", Show(left));
        Assert.Equal(new NoteValue(8, 0, 3, 2), left.Events[0].Value);
    }

    [Fact]
    public void A_voice_that_crosses_the_staves_is_split_between_the_hands()
    {
        var bar = PianoFourFour + Note("C5", 8, On(1, 1)) + Note("G3", 8, On(2, 1)) + Back + Note("C3", 16, On(2, 5));
        Assert.Equal(
            ["Right 1: C5@0+1/2 h@1/2+1/2", "Left 1: C3@0+1", "Left 2: h@0+1/2 G3@1/2+1/2"],
            Voices(ScoreOf(Part(bar)))
        );
    }

    [Fact]
    public void A_chord_over_both_staves_gives_each_hand_its_notes()
    {
        var bar = PianoFourFour + Note("C5", 16, On(1, 1)) + Note("C3", 16, On(2, 1), "<chord/>");
        Assert.Equal(["Right 1: C5@0+1", "Left 1: C3@0+1"], Voices(ScoreOf(Part(bar))));
    }

    [Fact]
    public void What_overlaps_inside_one_voice_takes_a_line_of_its_own()
    {
        var bar =
            PianoFourFour
            + Note("C5", 16, On(1, 1))
            + Back
            + Note("E4", 16, On(1, 1))
            + Back
            + Note("C3", 16, On(2, 1));
        Assert.Equal(["Right 1: C5@0+1", "Right 2: E4@0+1", "Left 1: C3@0+1"], Voices(ScoreOf(Part(bar))));
    }

    [Fact]
    public void Every_voice_fills_its_bar_without_gap_or_overlap()
    {
        var bar =
            PianoFourFour
            + Note("C5", 3, On(1, 1))
            + "<forward><duration>5</duration></forward>"
            + Note("D5", 7, On(1, 1))
            + "<backup><duration>10</duration></backup>"
            + Note("C3", 9, On(2, 5));
        var full = Note("C5", 16, On(1, 1));
        var score = ScoreOf(
            Part(PianoFourFour + full, bar.Replace(PianoFourFour, "", StringComparison.Ordinal), full, full)
        );
        ReaderLaws.Check(score.Value!, "gaps");
        Assert.Equal(ScoreTime.Whole, score.Value!.Bars[1].Length);
    }

    [Fact]
    public void Marks_on_notes_are_read()
    {
        const string Marks =
            "<notations><arpeggiate/><articulations><staccato/><accent/></articulations>"
            + "<technical><fingering>3</fingering></technical></notations>";
        const string Beams = "<beam number='1'>begin</beam><beam number='2'>forward hook</beam>";
        var bar =
            PianoFourFour
            + Note("D5", 0, On(1, 1), "<grace/>")
            + Note("C5", 3, On(1, 1, "<type>eighth</type><dot/>") + Beams + Marks)
            + Note("C5", 13, On(1, 1))
            + Back
            + Note("C3", 16, On(2, 5));
        var made = ScoreOf(Part(bar)).Value!.Bars[0].Voices[0].Events[0];
        Assert.True(made is { Rolled: true, Staccato: true, Accent: true });
        Assert.Equal(3, made.Notes[0].Finger);
        Assert.Equal([BeamState.Begin, BeamState.ForwardHook], made.Beams);
        Assert.Equal(new NoteValue(8, 1), made.Value);
        Assert.Equal([Pitch.Parse("D5")], made.Graces.Select(g => g.Pitch));
    }

    [Fact]
    public void Ties_meet_in_any_voice_and_loose_ends_are_dropped()
    {
        var first =
            PianoFourFour
            + Note("C5", 16, "<tie type='start'/>" + On(1, 1))
            + Note("E5", 16, "<tie type='start'/>" + On(1, 1), "<chord/>");
        var second =
            Note("r", 16, On(1, 1))
            + Back
            + Note("C5", 16, "<tie type='stop'/>" + On(1, 2))
            + Back
            + Note("C3", 16, On(2, 5));
        var score = ScoreOf(Part(first, second));
        Assert.Equal([true, false], score.Value!.Bars[0].Voices[0].Events[0].Notes.Select(n => n.TieStart));
        Assert.True(score.Value.Bars[1].Voices[1].Events[0].Notes[0].TieStop);
        Only(score.Diagnostics, Severity.Note);
    }

    [Fact]
    public void Directions_chords_repeats_and_ids_are_read()
    {
        const string Tempo =
            "<direction><direction-type><words>Not fast</words></direction-type><direction-type><metronome>"
            + "<beat-unit>quarter</beat-unit><per-minute>84</per-minute></metronome></direction-type>"
            + "<sound><swing><first>5</first><second>3</second></swing></sound></direction>";
        const string Loud = "<direction><direction-type><dynamics><mf/></dynamics></direction-type></direction>";
        const string Repeat = "<barline location='right'><repeat direction='backward'/></barline>";
        var bar =
            PianoFourFour
            + Tempo
            + Chord("C", "major")
            + Note("C5", 8, On(1, 1))
            + Loud
            + Note("C5", 8, On(1, 1))
            + Back
            + Note("C3", 16, On(2, 5))
            + Repeat;
        var xml = Part(bar)
            .Replace("number='1'", "number='1' id='b1'", StringComparison.Ordinal)
            .Replace("<note><chord", "<note id='n1'><chord", StringComparison.Ordinal);
        var read = ScoreOf(xml).Value!.Bars[0];
        Assert.Equal("b1", read.Id);
        Assert.Equal("0 C Major", $"{read.Chords[0].At} {read.Chords[0].Chord.Root} {read.Chords[0].Chord.Kind}");
        Assert.Equal(2, read.Marks.RepeatEnd);
        var tempo = read.Directions[0];
        Assert.Equal(("Not fast", 84.0, (5, 3)), (tempo.Words, tempo.BeatsPerMinute, tempo.Swing!.Value));
        Assert.Equal(("mf", ScoreTime.Half), (read.Directions[1].Dynamic, read.Directions[1].At));
    }

    [Fact]
    public void A_piano_part_is_found_among_others()
    {
        var voice = $"<part id='P1'><measure number='1'>{FourFour}{Note("G4", 16)}</measure></part>";
        var piano =
            $"<part id='P2'><measure number='1'>{PianoFourFour}{Note("C5", 16, On(1, 1))}{Back}{Note("C3", 16, On(2, 5))}</measure></part>";
        var score = ScoreOf(Score(voice + piano));
        Assert.Equal(["Right 1: C5@0+1", "Left 1: C3@0+1"], Voices(score));
        Assert.Contains("'Two'", Only(score.Diagnostics, Severity.Note).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rest_for_the_bar_fits_any_metre()
    {
        var bar =
            PianoFourFour.Replace("<beats>4<", "<beats>3<", StringComparison.Ordinal)
            + "<note><rest measure='yes'/><duration>16</duration><voice>1</voice><staff>1</staff></note>";
        var second = Note("C5", 12, On(1, 1)) + "<backup><duration>12</duration></backup>" + Note("C3", 12, On(2, 5));
        var score = ScoreOf(Part(bar, second));
        Assert.Equal("Right 1: R@0+3/4", Voices(score)[0]);
        Assert.Empty(score.Diagnostics);
    }
}
