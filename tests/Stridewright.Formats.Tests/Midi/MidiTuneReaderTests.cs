using Stridewright.Formats.Midi;
using Stridewright.Music;

namespace Stridewright.Formats.Tests.Midi;

/// <summary>What becomes of tracks, times and texts; quarters have 480 ticks.</summary>
public sealed class MidiTuneReaderTests
{
    private const int Quarter = 480;
    private static readonly int[] Scale = [60, 62, 64, 65, 67, 69, 71, 72];
    private static readonly int[] Bass = [36, 43, 36, 43, 41, 36, 43, 36];

    [Fact]
    public void The_track_whose_name_says_melody_is_taken()
    {
        var file = Smf.File(
            Quarter,
            Smf.Track(Smf.Name("High strings"), Smf.Line(0, Quarter, 1, [.. Scale.Select(k => k + 12)])),
            Smf.Track(Smf.Name("Melody"), Smf.Line(0, Quarter, 2, Scale))
        );
        Assert.Equal(Scale, Keys(Read(file, out var findings)));
        Assert.Contains("from part 2 'Melody', of 1 'High strings', 2 'Melody'", findings);
    }

    [Fact]
    public void Without_names_the_higher_single_line_is_taken()
    {
        var file = Smf.File(
            Quarter,
            Smf.Track(Smf.Line(0, Quarter, 1, Bass)),
            Smf.Track(Smf.Chord(0, 4 * Quarter, 2, 52, 55, 60), Smf.Chord(4 * Quarter, 4 * Quarter, 2, 53, 57, 60)),
            Smf.Track(Smf.Line(0, Quarter, 3, Scale))
        );
        Assert.Equal(Scale, Keys(Read(file, out _)));
    }

    [Fact]
    public void Channels_of_one_track_are_parts_and_percussion_is_none()
    {
        var track = Smf.Track(
            Smf.Name("Melody"),
            Smf.Line(0, Quarter / 2, 10, [.. Enumerable.Repeat(90, 16)]),
            Smf.Line(0, Quarter, 1, Bass),
            Smf.Line(0, Quarter, 4, Scale)
        );
        var tune = Read(Smf.File(Quarter, track), out var findings);
        Assert.Equal(Scale, Keys(tune));
        Assert.Contains("of 1 'Melody, channel 1', 2 'Melody, channel 4'", findings);
    }

    [Fact]
    public void A_file_of_percussion_alone_has_no_tune()
    {
        var reading = MidiTuneReader.Read(
            new MemoryStream(Smf.File(Quarter, Smf.Track(Smf.Line(0, Quarter, 10, Scale))))
        );
        Assert.Null(reading.Value);
        Assert.Equal(
            (Severity.Error, 22L, 0L),
            (reading.Diagnostics[0].Severity, reading.Diagnostics[0].Place.Byte, reading.Diagnostics[0].Place.Tick)
        );
    }

    [Theory]
    [InlineData("1", 48)]
    [InlineData("2", 60)]
    [InlineData("lower", 48)]
    [InlineData(" UPPER VOICE ", 60)]
    public void A_part_is_named_by_number_or_name(string part, int first)
    {
        var tune = Read(TwoVoices(), out var findings, part);
        Assert.Equal(first, Keys(tune)[0]);
        Assert.DoesNotContain("another can be named", findings);
    }

    [Theory]
    [InlineData("3")]
    [InlineData("0")]
    [InlineData("voice")]
    [InlineData("")]
    [InlineData("tuba")]
    public void A_part_that_is_not_there_or_not_clear_is_refused_with_the_parts_there_are(string part)
    {
        var reading = MidiTuneReader.Read(new MemoryStream(TwoVoices()), part);
        Assert.Null(reading.Value);
        Assert.Contains("1 'Lower voice', 2 'Upper voice'", reading.Diagnostics[0].Message);
    }

    [Fact]
    public void Independent_patterns_are_no_tune_until_one_is_named()
    {
        byte[] file =
        [
            .. Smf.Header(2, 2, Quarter),
            .. Smf.Chunk("MTrk", Smf.Track(Smf.Metre(0, 3, 2), Smf.Line(0, Quarter, 1, 60, 62, 64))),
            .. Smf.Chunk("MTrk", Smf.Track(Smf.Metre(0, 2, 2), Smf.Line(0, Quarter, 1, 72, 74))),
        ];
        Assert.Null(MidiTuneReader.Read(new MemoryStream(file)).Value);
        var tune = Read(file, out _, "2");
        Assert.Equal([72, 74], Keys(tune));
        Assert.Equal(Metre.TwoFour, Assert.Single(tune.Bars).Metre);
    }

    [Fact]
    public void Of_notes_together_the_top_line_is_taken()
    {
        // Chords, and an inner voice that moves under a held note.
        var track = Smf.Track(
            Smf.Chord(0, Quarter, 1, 60, 64, 67),
            Smf.Chord(Quarter, Quarter, 1, 59, 65, 69),
            Smf.Note(2 * Quarter, 2 * Quarter, 72),
            Smf.Line(2 * Quarter, Quarter, 1, 64, 65)
        );
        var tune = Read(Smf.File(Quarter, track), out var findings);
        Assert.Equal([67, 69, 72], Keys(tune));
        Assert.Contains("6 notes were left out", findings);
    }

    [Fact]
    public void A_short_note_before_another_is_its_grace()
    {
        var track = Smf.Track(Smf.Note(0, Quarter, 60), Smf.Note(Quarter - 25, 25, 66), Smf.Note(Quarter, Quarter, 67));
        var tune = Read(Smf.File(Quarter, track), out _);
        Assert.Equal([60, 67], Keys(tune));
        Assert.Equal([66], tune.Bars[0].Notes[1].Graces.Select(g => g.Midi));
    }

    /// <summary>Sixteenths, triplets and finer notes as they are written: 480 divides by 3, 16 and 6.</summary>
    [Theory]
    [InlineData("0 120 240 360", "0 1/16 1/8 3/16")]
    [InlineData("0 160 320", "0 1/12 1/6")]
    [InlineData("0 320", "0 1/6")]
    [InlineData("0 240 320 400", "0 1/8 1/6 5/24")]
    public void Written_notes_keep_their_exact_place(string ticks, string places) => AssertPlaces(ticks, places, 0);

    /// <summary>As played, some twentieths of a beat away.</summary>
    [Theory]
    [InlineData("12 109 253 351", "0 1/16 1/8 3/16")]
    [InlineData("9 170 311", "0 1/12 1/6")]
    [InlineData("17 226", "0 1/8")]
    [InlineData("8 70 133 190 250 310 371 409", "0 1/32 1/16 3/32 1/8 5/32 3/16 7/32")]
    public void Played_notes_go_to_the_nearest_place_and_that_is_said(string ticks, string places) =>
        AssertPlaces(ticks, places, ticks.Split(' ').Length);

    [Fact]
    public void What_was_moved_is_counted_and_the_farthest_named()
    {
        var track = Smf.Track(Smf.Note(0, 400, 60), Smf.Note(480 + 24, 400, 62), Smf.Note(960 - 12, 400, 64));
        var reading = MidiTuneReader.Read(new MemoryStream(Smf.File(Quarter, track)));
        var moved = reading.Diagnostics.Single(d => d.Message.Contains("moved", StringComparison.Ordinal));
        Assert.Equal("2 of 3 notes moved onto the grid of the beats, by 0.05 of a quarter note at most", moved.Message);
        Assert.Equal(504, moved.Place.Tick);
    }

    [Fact]
    public void Notes_played_short_reach_the_next_and_rests_stay_rests()
    {
        var track = Smf.Track(
            Smf.Note(0, 400, 60),
            Smf.Note(480, 350, 62),
            Smf.Note(960, 240, 64),
            Smf.Note(1440, 480, 65)
        );
        var lengths = Read(Smf.File(Quarter, track), out _).Bars[0].Notes.Select(n => n.Length.ToString());
        Assert.Equal(["1/4", "1/4", "1/8", "1/4"], lengths);
    }

    [Fact]
    public void Bars_follow_the_time_signatures_and_notes_over_bar_lines_are_tied()
    {
        var track = Smf.Track(
            Smf.Metre(0, 3, 2),
            Smf.Metre(3 * Quarter, 6, 3),
            Smf.Line(0, 2 * Quarter, 1, 60, 62, 64)
        );
        var tune = Read(Smf.File(Quarter, track), out _);
        Assert.Equal(["3/4", "6/8"], tune.Bars.Select(b => b.Metre.ToString()));
        Assert.Equal(
            ["0 1/2 False", "1/2 1/4 True", "0 1/4 False", "1/4 1/2 False"],
            tune.Bars.SelectMany(b => b.Notes).Select(n => $"{n.At} {n.Length} {n.TiedToNext}")
        );
    }

    [Fact]
    public void Without_signatures_four_four_and_the_best_key_are_taken_and_said()
    {
        // D major: F sharp and C sharp.
        var tune = Read(
            Smf.File(Quarter, Smf.Track(Smf.Line(0, Quarter, 1, 62, 64, 66, 67, 69, 71, 73, 74))),
            out var findings
        );
        Assert.Equal((Metre.FourFour, "D major"), (tune.Bars[0].Metre, tune.Bars[0].Key.ToString()));
        Assert.Equal("F#4", tune.Bars[0].Notes[2].Pitch.ToString());
        Assert.Contains("4/4 was taken", findings);
        Assert.Contains("D major", findings);
    }

    [Fact]
    public void Key_tempo_and_title_are_those_of_the_file()
    {
        var file = Smf.File(
            Quarter,
            Smf.Track(
                Smf.Name("The Ferry"),
                Smf.Key(0, -3, minor: true),
                Smf.Tempo(0, 625_000),
                Smf.Tempo(960, 500_000)
            ),
            Smf.Track(Smf.Name("Flute"), Smf.Line(0, Quarter, 1, 60, 63, 67, 68))
        );
        var tune = Read(file, out var findings);
        Assert.Equal(("The Ferry", 96.0, "C minor"), (tune.Title, tune.QuartersPerMinute, tune.Bars[0].Key.ToString()));
        Assert.Equal(["C4", "Eb4", "G4", "Ab4"], tune.Bars[0].Notes.Select(n => n.Pitch.ToString()));
        Assert.DoesNotContain("key", findings);
    }

    [Theory]
    [InlineData(3, "1/4", "0")] // one quarter before the first full bar
    [InlineData(2, "1/2", "0")]
    [InlineData(1, "1", "1")] // three quarters of a bar: a rest
    [InlineData(0, "1", "1")]
    public void A_bar_that_is_silent_for_half_its_length_before_the_tune_is_a_pick_up(
        int rest,
        string length,
        string number
    )
    {
        var track = Smf.Track(Smf.Metre(0, 4, 2), Smf.Line(rest * Quarter, Quarter, 1, Scale));
        var first = Read(Smf.File(Quarter, track), out _).Bars[0];
        Assert.Equal((length, number), (first.Length.ToString(), first.Number));
        Assert.Equal(length == "1" ? new ScoreTime(rest, 4) : ScoreTime.Zero, first.Notes[0].At);
    }

    [Fact]
    public void Silent_bars_before_the_tune_are_left_out()
    {
        var track = Smf.Track(Smf.Metre(0, 4, 2), Smf.Line(8 * Quarter, Quarter, 1, Scale));
        var tune = Read(Smf.File(Quarter, track), out var findings);
        Assert.Equal((2, "1"), (tune.Bars.Count, tune.Bars[0].Number));
        Assert.Contains("2 bars were left out before the tune begins", findings);
    }

    [Fact]
    public void Lyrics_stand_under_their_notes()
    {
        var track = Smf.Track(
            Smf.Line(0, Quarter, 1, 60, 62, 64, 65),
            Smf.Lyric(0, "Fer-"),
            Smf.Lyric(Quarter, "ry"),
            Smf.Lyric(3 * Quarter, "bell")
        );
        var notes = Read(Smf.File(Quarter, track), out _).Bars[0].Notes;
        Assert.Equal(
            ["Fer True", "ry False", "", "bell False"],
            notes.Select(n => string.Concat(n.Lyrics.Select(l => $"{l.Text} {l.HyphenAfter}")))
        );
    }

    /// <summary>Chords as block chords, each kind on each root, against the tones of the kinds as MusicXML 4.0 defines
    /// them (trade tables).</summary>
    [Theory]
    [InlineData("", "0 4 7")]
    [InlineData("m", "0 3 7")]
    [InlineData("7", "0 4 7 10")]
    [InlineData("m7", "0 3 7 10")]
    [InlineData("maj7", "0 4 7 11")]
    [InlineData("dim", "0 3 6")]
    [InlineData("aug", "0 4 8")]
    [InlineData("6", "0 4 7 9")]
    [InlineData("m6", "0 3 7 9")]
    [InlineData("m7b5", "0 3 6 10")]
    [InlineData("dim7", "0 3 6 9")]
    [InlineData("sus4", "0 5 7")]
    [InlineData("9", "0 4 7 10 14")]
    public void Block_chords_are_named(string suffix, string semitones)
    {
        int[] tones = [.. semitones.Split(' ').Select(int.Parse)];
        for (var root = 36; root < 48; root++)
        {
            var file = Smf.File(
                Quarter,
                Smf.Track(Smf.Name("Lead"), Smf.Key(0, 0), Smf.Line(0, Quarter, 1, 72, 74, 76, 77)),
                Smf.Track(Smf.Chord(0, 4 * Quarter, 2, [.. tones.Select(t => root + t)]))
            );
            var chord = Assert.Single(Read(file, out _).Bars[0].Chords).Chord;
            Assert.True(ChordText.TryParse("C" + suffix, out var expected));
            Assert.Equal((root % 12, expected.Kind), (chord.Root.PitchClass, chord.Kind));
            Assert.Null(chord.Bass);
        }
    }

    [Fact]
    public void An_inversion_over_a_bass_is_a_slash_chord()
    {
        var file = Smf.File(
            Quarter,
            Smf.Track(Smf.Name("Lead"), Smf.Key(0, 0), Smf.Line(0, Quarter, 1, 72, 74, 76, 77)),
            Smf.Track(Smf.Chord(0, 2 * Quarter, 2, 40, 55, 60), Smf.Chord(2 * Quarter, 2 * Quarter, 2, 57, 60, 65))
        );
        Assert.Equal(["0 C/E", "1/2 F"], Read(file, out _).Bars[0].Chords.Select(c => $"{c.At} {c.Chord}"));
    }

    /// <summary>Bass and chord by turns (common practice), and the same harmony as broken chords.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Figured_accompaniments_give_a_chord_where_it_changes(bool striding)
    {
        (int Bass, int[] Chord)[] bars =
        [
            (36, [55, 60, 64]),
            (41, [57, 60, 65]),
            (43, [59, 62, 65]),
            (36, [55, 60, 64]),
        ];
        var left = bars.SelectMany(
            (bar, i) =>
            {
                long at = i * 4 * Quarter;
                return striding
                    ?
                    [
                        .. Smf.Note(at, Quarter, bar.Bass, 2),
                        .. Smf.Chord(at + Quarter, Quarter, 2, bar.Chord),
                        .. Smf.Note(at + 2 * Quarter, Quarter, bar.Bass, 2),
                        .. Smf.Chord(at + 3 * Quarter, Quarter, 2, bar.Chord),
                    ]
                    : Smf.Line(at, Quarter / 2, 2, [bar.Bass, .. bar.Chord, bar.Bass, .. bar.Chord]);
            }
        );
        int[] tune = [72, 76, 79, 76, 77, 81, 77, 72, 71, 74, 77, 74, 72, 76, 72, 67];
        var file = Smf.File(
            Quarter,
            Smf.Track(Smf.Metre(0, 4, 2), Smf.Key(0, 0), Smf.Line(0, Quarter, 1, tune)),
            Smf.Track(left)
        );
        var chords = Read(file, out _).Bars.SelectMany(b => b.Chords.Select(c => $"{b.Number}:{c.At} {c.Chord}"));
        Assert.Equal(["1:0 C", "2:0 F", "3:0 G7", "4:0 C"], chords);
    }

    [Fact]
    public void Two_lines_that_make_no_harmony_give_no_chords()
    {
        var file = Smf.File(
            Quarter,
            Smf.Track(Smf.Line(0, Quarter, 1, Scale)),
            Smf.Track(Smf.Line(0, Quarter, 2, [.. Scale.Select(k => k + 1)]))
        );
        Assert.All(Read(file, out _).Bars, b => Assert.Empty(b.Chords));
    }

    [Fact]
    public void An_endless_tune_ends_at_the_limit()
    {
        // A note every bar of 1/32.
        var track = Smf.Track(Smf.Metre(0, 1, 5), Smf.Line(0, 60, 1, [.. Enumerable.Repeat(60, 3000)]));
        var tune = Read(Smf.File(Quarter, track), out var findings);
        Assert.Equal(2000, tune.Bars.Count);
        Assert.Contains("more than 2000 bars", findings);
    }

    private static byte[] TwoVoices() =>
        Smf.File(
            Quarter,
            Smf.Track(Smf.Name("Lower voice"), Smf.Line(0, Quarter, 1, [.. Scale.Select(k => k - 12)])),
            Smf.Track(Smf.Name("Upper voice"), Smf.Line(0, Quarter, 2, Scale))
        );

    // Notes of a beat, in bars where all else is quarters.
    private static void AssertPlaces(string ticks, string places, int moved)
    {
        int[] at = [.. ticks.Split(' ').Select(int.Parse)];
        var line = at.SelectMany((tick, i) => Smf.Note(tick, (i + 1 < at.Length ? at[i + 1] : Quarter) - tick, 60 + i));
        var tune = Read(Smf.File(Quarter, Smf.Track(Smf.Metre(0, 4, 2), Smf.Key(0, 0), line)), out var findings);
        Assert.Equal(places.Split(' '), tune.Bars[0].Notes.Select(n => n.At.ToString()));
        Assert.Equal(moved > 0, findings.Contains($"{moved} of {moved} notes moved", StringComparison.Ordinal));
        Assert.Equal(moved > 0, findings.Contains("moved", StringComparison.Ordinal));
    }

    private static int[] Keys(Tune tune) => [.. tune.Bars.SelectMany(b => b.Notes).Select(n => n.Pitch.Midi)];

    private static Tune Read(byte[] file, out string findings, string? part = null)
    {
        var reading = MidiTuneReader.Read(new MemoryStream(file), part);
        findings = string.Join('\n', reading.Diagnostics);
        Assert.NotNull(reading.Value);
        MusicXml.ReaderLaws.Check(reading.Value, "tune");
        return reading.Value;
    }
}
