using Stridewright.Music;
using static Stridewright.Formats.Tests.MusicXml.ReaderSheet;

namespace Stridewright.Formats.Tests.MusicXml;

/// <summary>Notes, time, bars and form of lead sheets. Meaning of the elements: MusicXML 4.0, W3C.</summary>
public sealed class MusicXmlReaderTuneTests
{
    [Fact]
    public void Notes_stand_where_their_durations_put_them()
    {
        var tune = Tune(Part(FourFour + Note("C4", 6) + Note("D4", 2) + Note("r", 4) + Note("F#4", 4)));
        Assert.Equal(["C4@0+3/8 D4@3/8+1/8 F#4@3/4+1/4"], Line(tune));
        Assert.Empty(tune.Diagnostics);
    }

    [Fact]
    public void Triplets_and_nested_tuplets_have_exact_times()
    {
        var bar =
            "<attributes><divisions>30</divisions><key><fifths>0</fifths></key>"
            + "<time><beats>2</beats><beat-type>4</beat-type></time></attributes>"
            + Notes(10, "C4", "D4", "E4")
            + Notes(6, "F4", "G4", "A4", "B4", "C5");
        Assert.Equal(
            ["C4@0+1/12 D4@1/12+1/12 E4@1/6+1/12 F4@1/4+1/20 G4@3/10+1/20 A4@7/20+1/20 B4@2/5+1/20 C5@9/20+1/20"],
            Line(Tune(Part(bar)))
        );
    }

    [Fact]
    public void Divisions_may_change_inside_a_bar()
    {
        var change = "<attributes><divisions>12</divisions></attributes>";
        Assert.Equal(["C4@0+1/2 D4@1/2+1/2"], Line(Tune(Part(FourFour + Note("C4", 8) + change + Note("D4", 24)))));
    }

    [Fact]
    public void Divisions_and_durations_may_be_decimal_numbers()
    {
        var half = FourFour.Replace("<divisions>4<", "<divisions>0.5<", StringComparison.Ordinal);
        var bar =
            half
            + Note("C4", 1)
            + Note("D4", 0, "<duration>0.5</duration>")
            + Note("E4", 0, "<duration>0.5</duration>");
        Assert.Equal(["C4@0+1/2 D4@1/2+1/4 E4@3/4+1/4"], Line(Tune(Part(bar))));
    }

    [Fact]
    public void Of_a_chord_the_top_note_is_the_tune()
    {
        var bar =
            FourFour
            + Note("C5", 8)
            + Note("E5", 8, before: "<chord/>")
            + Note("G4", 8, before: "<chord/>")
            + Note("C5", 8);
        Assert.Equal(["E5@0+1/2 C5@1/2+1/2"], Line(Tune(Part(bar))));
    }

    [Fact]
    public void First_voice_of_the_first_staff_carries_the_tune()
    {
        var bar =
            FourFour
            + Note("C5", 16, "<voice>1</voice><staff>1</staff>")
            + "<backup><duration>16</duration></backup>"
            + Note("E4", 16, "<voice>2</voice><staff>1</staff>")
            + "<backup><duration>8</duration></backup>"
            + Note("C3", 8, "<voice>3</voice><staff>2</staff>");
        var tune = Tune(Part(bar));
        Assert.Equal(["C5@0+1"], Line(tune));
        Assert.Contains("voice 1 of staff 1", Only(tune.Diagnostics, Severity.Note).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_the_first_voice_rests_another_one_on_its_staff_goes_on()
    {
        var first = FourFour + Note("C5", 16, "<voice>1</voice>");
        var second =
            Note("r", 16, "<voice>1</voice>")
            + "<backup><duration>16</duration></backup>"
            + Note("A4", 16, "<voice>2</voice>");
        Assert.Equal(["C5@0+1", "A4@0+1"], Line(Tune(Part(first, second))));
    }

    [Fact]
    public void Of_several_parts_the_first_with_notes_is_read_and_named()
    {
        var silent = $"<part id='P1'><measure number='1'>{FourFour}{Note("r", 16)}</measure></part>";
        var chords = Chord("G", "dominant");
        var tuneful = $"<part id='P2'><measure number='1'>{FourFour}{chords}{Note("G4", 16)}</measure></part>";
        var tune = Tune(Score(silent + tuneful));
        Assert.Equal(["G4@0+1"], Line(tune));
        Assert.Contains("'Two'", Only(tune.Diagnostics, Severity.Note).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Chord_symbols_and_tempo_of_another_part_are_taken_over()
    {
        var voice = $"<part id='P1'><measure number='1'>{FourFour}{Note("G4", 16)}</measure></part>";
        var piano =
            $"<part id='P2'><measure number='1'>{FourFour}<sound tempo='88'/>{Chord("C", "major")}{Note("C3", 16)}</measure></part>";
        var tune = Tune(Score(voice + piano));
        Assert.Equal(["0 C Major"], Chords(tune));
        Assert.Equal(88, tune.Value!.QuartersPerMinute);
    }

    [Fact]
    public void Ties_hold_where_both_ends_meet()
    {
        var start = "<tie type='start'/>";
        var stop = "<notations><tied type='stop'/></notations>";
        var tune = Tune(Part(FourFour + Note("C5", 8) + Note("D5", 8, start), Note("D5", 8, stop) + Note("E5", 8)));
        Assert.Equal(["C5@0+1/2 D5@1/2+1/2~", "D5@0+1/2 E5@1/2+1/2"], Line(tune));
        Assert.Empty(tune.Diagnostics);
    }

    [Fact]
    public void A_tie_without_partner_is_dropped_with_a_note()
    {
        var tune = Tune(Part(FourFour + Note("C5", 8) + Note("D5", 8, "<tie type='start'/>"), Notes(8, "E5", "D5")));
        Assert.Equal("C5@0+1/2 D5@1/2+1/2", Line(tune)[0]);
        Assert.Equal("1", Only(tune.Diagnostics, Severity.Note).Place.Bar);
    }

    [Fact]
    public void Grace_notes_stay_with_the_note_they_lean_on_over_the_bar_line_too()
    {
        string Grace(string pitch) => Note(pitch, 0, before: "<grace/>");
        var tune = Tune(Part(FourFour + Grace("B4") + Note("C5", 16) + Grace("D5") + Grace("E5"), Note("F5", 16)));
        Assert.Equal(["C5@0+1", "F5@0+1"], Line(tune));
        Assert.Equal([Pitch.Parse("B4")], tune.Value!.Bars[0].Notes[0].Graces);
        Assert.Equal([Pitch.Parse("D5"), Pitch.Parse("E5")], tune.Value!.Bars[1].Notes[0].Graces);
    }

    [Fact]
    public void Lyrics_keep_verses_hyphens_and_lines_that_go_on()
    {
        const string Words =
            "<lyric number='2'><syllabic>single</syllabic><text>oh</text><extend/></lyric>"
            + "<lyric number='1'><syllabic>begin</syllabic><text>mor</text></lyric>"
            + "<lyric number='3'><text>to</text><elision> </elision><text>a</text></lyric>"
            + "<lyric number='4'><extend/></lyric>";
        var note = Tune(Part(FourFour + Note("C5", 16, Words))).Value!.Bars[0].Notes[0];
        Assert.Equal(
            [new Lyric(1, "mor", HyphenAfter: true), new Lyric(2, "oh", Extends: true), new Lyric(3, "to a")],
            note.Lyrics
        );
    }

    [Theory]
    [InlineData("implicit")]
    [InlineData("unmarked")]
    public void A_short_first_bar_is_a_pick_up(string how)
    {
        var xml = Part(FourFour + Note("G4", 4), Note("C5", 16));
        xml =
            how == "implicit" ? xml.Replace("number='1'", "number='0' implicit='yes'", StringComparison.Ordinal) : xml;
        var tune = Tune(xml);
        Assert.Equal(ScoreTime.Quarter, tune.Value!.Bars[0].Length);
        Assert.Equal(Metre.FourFour, tune.Value.Bars[0].Metre);
        Assert.Empty(tune.Diagnostics);
    }

    [Fact]
    public void Bars_split_by_a_repeat_stay_short()
    {
        const string Forward = "<barline location='left'><repeat direction='forward'/></barline>";
        const string Back = "<barline location='right'><repeat direction='backward' times='3'/></barline>";
        var tune = Tune(
            Part(FourFour + Note("C5", 16), Note("C5", 12) + Back, Forward + Note("C5", 4), Note("C5", 16))
        );
        Assert.Equal(["1", "3/4", "1/4", "1"], tune.Value!.Bars.Select(b => b.Length.ToString()));
        Assert.Equal(3, tune.Value.Bars[1].Marks.RepeatEnd);
        Assert.True(tune.Value.Bars[2].Marks.RepeatStart);
        Assert.DoesNotContain(tune.Diagnostics, d => d.Severity == Severity.Warning);
    }

    [Fact]
    public void A_short_inner_bar_is_padded_and_an_overfull_one_kept_each_with_a_warning()
    {
        var full = Note("C5", 16);
        var tune = Tune(Part(FourFour + full, full, Note("D5", 8), full, Note("E5", 20), full, full));
        Assert.Equal(["1", "1", "1", "1", "5/4", "1", "1"], tune.Value!.Bars.Select(b => b.Length.ToString()));
        Assert.Equal(["3", "5"], tune.Diagnostics.Where(d => d.Severity == Severity.Warning).Select(d => d.Place.Bar));
    }

    [Fact]
    public void Key_and_metre_change_from_bar_to_bar()
    {
        const string Change =
            "<attributes><key><fifths>-3</fifths><mode>minor</mode></key>"
            + "<time><beats>3</beats><beat-type>4</beat-type></time></attributes>";
        var bars = Tune(Part(FourFour + Note("C5", 16), Change + Note("C5", 12))).Value!.Bars;
        Assert.Equal(new Metre(3, 4), bars[1].Metre);
        Assert.Equal("C minor", bars[1].Key.ToString());
        Assert.Equal("C major", bars[0].Key.ToString());
    }

    [Fact]
    public void A_key_change_inside_a_bar_counts_from_the_next()
    {
        const string Change = "<attributes><key><fifths>2</fifths></key></attributes>";
        var tune = Tune(Part(FourFour + Note("C5", 8) + Change + Note("C#5", 8), Note("D5", 16)));
        Assert.Equal(["C major", "D major"], tune.Value!.Bars.Select(b => b.Key.ToString()));
        Assert.Equal("1", Only(tune.Diagnostics, Severity.Note).Place.Bar);
    }

    [Theory]
    [InlineData("<time symbol='common'><beats>4</beats><beat-type>4</beat-type></time>", 4, 4, MetreSign.Common)]
    [InlineData("<time symbol='cut'><beats>2</beats><beat-type>2</beat-type></time>", 2, 2, MetreSign.Cut)]
    [InlineData("<time><beats>3+2</beats><beat-type>8</beat-type></time>", 5, 8, MetreSign.Numbers)]
    [InlineData(
        "<time><beats>3</beats><beat-type>8</beat-type><beats>2</beats><beat-type>4</beat-type></time>",
        7,
        8,
        MetreSign.Numbers
    )]
    public void Time_signatures_are_read(string time, int count, int unit, MetreSign sign)
    {
        var bar = $"<attributes><divisions>4</divisions><key><fifths>0</fifths></key>{time}</attributes>";
        Assert.Equal(new Metre(count, unit, sign), Tune(Part(bar + Note("C5", 4))).Value!.Bars[0].Metre);
    }

    [Fact]
    public void Without_time_and_key_the_bars_and_notes_suggest_them()
    {
        const string Divisions = "<attributes><divisions>4</divisions></attributes>";
        var bar = Notes(4, "F4", "Bb4", "A4");
        var tune = Tune(Part(Divisions + Note("C4", 4), bar, bar));
        Assert.All(tune.Value!.Bars, b => Assert.Equal(new Metre(3, 4), b.Metre));
        Assert.All(tune.Value.Bars, b => Assert.Equal("F major", b.Key.ToString()));
        Assert.Equal(2, tune.Diagnostics.Count(d => d.Severity == Severity.Note));
    }

    [Fact]
    public void Senza_misura_bars_are_as_long_as_what_they_hold()
    {
        const string Free =
            "<attributes><divisions>4</divisions><key><fifths>0</fifths></key><time><senza-misura/></time></attributes>";
        var tune = Tune(Part(Free + Notes(2, "C5", "D5", "E5"), Notes(4, "C5", "D5", "E5", "F5", "G5")));
        Assert.Equal(["3/8", "5/4"], tune.Value!.Bars.Select(b => b.Length.ToString()));
    }

    [Fact]
    public void Transposing_instruments_are_read_at_sounding_pitch()
    {
        const string Transpose =
            "<attributes><transpose><diatonic>-1</diatonic><chromatic>-2</chromatic></transpose></attributes>";
        var inD = FourFour.Replace("<fifths>0", "<fifths>2", StringComparison.Ordinal);
        var tune = Tune(Part(Transpose + inD + Chord("D", "major") + Notes(8, "D5", "F#5")));
        Assert.Equal(["C5@0+1/2 E5@1/2+1/2"], Line(tune));
        Assert.Equal(["0 C Major"], Chords(tune));
        Assert.Equal("C major", tune.Value!.Bars[0].Key.ToString());
    }

    [Fact]
    public void Endings_are_given_on_every_bar_they_hold()
    {
        static string Left(string n) => $"<barline location='left'><ending number='{n}' type='start'/></barline>";
        static string Right(string n, string more = "") =>
            $"<barline location='right'><ending number='{n}' type='stop'/>{more}</barline>";
        const string Back = "<repeat direction='backward'/>";
        var full = Note("C5", 16);
        var bars = Tune(
            Part(FourFour + full, Left("1, 2") + full, full + Right("1, 2", Back), Left("3") + full + Right("3"), full)
        ).Value!.Bars;
        Assert.Equal(["[]", "[1, 2]", "[1, 2]", "[3]", "[]"], bars.Select(b => b.Marks.Ending.ToString()));
        Assert.Equal(2, bars[2].Marks.RepeatEnd);
    }

    [Fact]
    public void A_bracket_over_the_first_bar_of_an_ending_is_taken_to_reach_its_repeat_sign()
    {
        const string First = "<barline location='left'><ending number='1' type='start'/></barline>";
        const string FirstStop = "<barline location='right'><ending number='1' type='stop'/></barline>";
        const string Second = "<barline location='left'><ending number='2' type='start'/></barline>";
        const string Back = "<barline location='right'><repeat direction='backward'/></barline>";
        var full = Note("C5", 16);
        var tune = Tune(Part(FourFour + full, First + full + FirstStop, full + Back, Second + full));
        Assert.Equal(["[]", "[1]", "[1]", "[2]"], tune.Value!.Bars.Select(b => b.Marks.Ending.ToString()));
        Assert.Equal("3", Only(tune.Diagnostics, Severity.Note).Place.Bar);
    }

    [Fact]
    public void An_ending_without_a_stop_reaches_the_next_repeat_and_no_further()
    {
        // MusicXML 4.0, start-stop-discontinue: a last ending should end with "discontinue".
        static string Left(string inside) => $"<barline location='left'>{inside}</barline>";
        static string Right(string inside) => $"<barline location='right'>{inside}</barline>";
        const string Back = "<repeat direction='backward'/>";
        var full = Note("C5", 16);
        var tune = Tune(
            Part(
                FourFour + full,
                Left("<ending number='1' type='start'/>") + full + Right("<ending number='1' type='stop'/>" + Back),
                Left("<ending number='2' type='start'/>") + full,
                full,
                Left("<repeat direction='forward'/>") + full,
                full + Right(Back)
            )
        );
        Assert.Equal(["[]", "[1]", "[2]", "[2]", "[]", "[]"], tune.Value!.Bars.Select(b => b.Marks.Ending.ToString()));
        Assert.Equal("3", Only(tune.Diagnostics, Severity.Note).Place.Bar);
        var played = Unfolding.Unfold(tune.Value).Bars.Select(b => b.Number);
        Assert.Equal(["1", "2", "1", "3", "4", "5", "6", "5", "6"], played);
    }

    [Fact]
    public void Double_and_final_bar_lines_and_rehearsal_letters_are_kept()
    {
        const string Double = "<barline location='right'><bar-style>light-light</bar-style></barline>";
        const string Final = "<barline location='right'><bar-style>light-heavy</bar-style></barline>";
        const string Letter = "<direction><direction-type><rehearsal>B</rehearsal></direction-type></direction>";
        var bars = Tune(Part(FourFour + Note("C5", 16) + Double, Letter + Note("C5", 16) + Final)).Value!.Bars;
        Assert.True(bars[0].Marks.DoubleBarAfter);
        Assert.True(bars[1].Marks.FinalBarAfter);
        Assert.Equal("B", bars[1].Section);
    }

    [Theory]
    [InlineData("<work><work-title>First</work-title></work><movement-title>Second</movement-title>", "First")]
    [InlineData("<movement-title>Second</movement-title>", "Second")]
    [InlineData(
        "<credit page='1'><credit-type>title</credit-type><credit-words>Third</credit-words></credit>",
        "Third"
    )]
    [InlineData("", "Untitled")]
    public void Title_comes_from_work_movement_or_credit(string head, string title)
    {
        var part = $"<part id='P1'><measure number='1'>{FourFour}{Note("C5", 16)}</measure></part>";
        Assert.Equal(title, Tune(Score(part, head)).Value!.Title);
    }

    [Theory]
    [InlineData("<sound tempo='90.5'/>", 90.5)]
    [InlineData(
        "<direction><direction-type><metronome><beat-unit>quarter</beat-unit><beat-unit-dot/>"
            + "<per-minute>c. 80</per-minute></metronome></direction-type></direction>",
        120.0
    )]
    public void Tempo_is_in_quarters_per_minute(string tempo, double quarters) =>
        Assert.Equal(quarters, Tune(Part(FourFour + tempo + Note("C5", 16))).Value!.QuartersPerMinute);

    [Fact]
    public void Time_wise_scores_are_read_too()
    {
        var xml =
            "<score-timewise><part-list/>"
            + $"<measure number='1'><part id='P1'>{FourFour}{Note("C5", 16)}</part><part id='P2'>{FourFour}{Note("C3", 16)}</part></measure>"
            + $"<measure number='2'><part id='P1'>{Note("D5", 16)}</part><part id='P2'>{Note("D3", 16)}</part></measure>"
            + "</score-timewise>";
        Assert.Equal(["C5@0+1", "D5@0+1"], Line(Tune(xml)));
    }

    [Fact]
    public void Notes_that_overlap_in_the_line_are_cut_with_a_warning()
    {
        var tune = Tune(Part(FourFour + Note("C5", 16) + "<backup><duration>8</duration></backup>" + Note("D5", 8)));
        Assert.Equal(["C5@0+1/2 D5@1/2+1/2"], Line(tune));
        Only(tune.Diagnostics, Severity.Warning);
    }
}
