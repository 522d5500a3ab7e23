using CsCheck;
using Stridewright.Testing;

namespace Stridewright.Music.Tests;

/// <summary>Expected spellings are common practice: the beat is seen, and mid-bar in duple metres.</summary>
public sealed class NotatorTests
{
    [Theory]
    // 2/4 in sixteenths.
    [InlineData("2/4", "0+8", "2")]
    [InlineData("2/4", "0+6 6+2", "4. 8")]
    [InlineData("2/4", "0+7 7+1", "4~ 8. 16")]
    [InlineData("2/4", "0+5 5+3", "4~ 16 8.")]
    [InlineData("2/4", "0+1 1+2 3+1 4+4", "16 8 16 4")]
    [InlineData("2/4", "0+2 2+4 6+2", "8 4 8")]
    [InlineData("2/4", "0+2 2+6", "8 8~ 4")]
    [InlineData("2/4", "0+3 3+2 5+3", "8. 16~ 16 8.")]
    [InlineData("2/4", "0+1 1+4 5+3", "16 8.~ 16 8.")]
    [InlineData("2/4", "0+1 1+7", "16 8.~ 4")]
    [InlineData("2/4", "0+3 3+5", "8. 16~ 4")]
    [InlineData("2/4", "0+0.5 0.5+1 1.5+0.5 2+2", "32 16 32 8 r4")]
    [InlineData("2/4", "0+0.5 0.5+3.5", "32 16.~ 8 r4")]
    [InlineData("2/4", "", "rbar")]
    [InlineData("2/4", "1+1 5+1", "r16 16 r8 r16 16 r8")]
    [InlineData("2/4", "0+1", "16 r16 r8 r4")]
    // 4/4.
    [InlineData("4/4", "0+16", "1")]
    [InlineData("4/4", "0+12 12+4", "2. 4")]
    [InlineData("4/4", "0+4 4+8 12+4", "4 2 4")]
    [InlineData("4/4", "0+2 2+4 6+2 8+8", "8 4 8 2")]
    [InlineData("4/4", "0+6 6+4 10+6", "4. 8~ 8 4.")]
    [InlineData("4/4", "0+2 2+10 12+4", "8 4.~ 4 4")]
    [InlineData("4/4", "0+14 14+2", "2~ 4. 8")]
    [InlineData("4/4", "0+13", "2.~ 16 r16 r8")]
    [InlineData("4/4", "0+4 12+4", "4 r4 r4 4")]
    [InlineData("4/4", "0+4", "4 r4 r2")]
    [InlineData("4/4", "0+3 3+2 5+3 8+8", "8. 16~ 16 8. 2")]
    // Cut time reads like 4/4.
    [InlineData("2/2", "0+6 6+4 10+6", "4. 8~ 8 4.")]
    // 3/4 and 3/2 by beat.
    [InlineData("3/4", "0+12", "2.")]
    [InlineData("3/4", "0+8 8+4", "2 4")]
    [InlineData("3/4", "0+4 4+8", "4 2")]
    [InlineData("3/4", "0+6 6+2 8+4", "4. 8 4")]
    [InlineData("3/4", "0+2 2+4 6+4 10+2", "8 8~ 8 8~ 8 8")]
    [InlineData("3/4", "0+4", "4 r4 r4")]
    [InlineData("3/2", "0+24", "1.")]
    [InlineData("3/2", "0+12 12+4 16+8", "2. 4 2")]
    // Compound metres by dotted beat.
    [InlineData("6/8", "0+12", "2.")]
    [InlineData("6/8", "0+4 4+2 6+6", "4 8 4.")]
    [InlineData("6/8", "0+2 2+4 6+6", "8 4 4.")]
    [InlineData("6/8", "0+2 2+6 8+4", "8 4~ 8 4")]
    [InlineData("6/8", "0+6", "4. r4.")]
    [InlineData("6/8", "4+2", "r4 8 r4.")]
    [InlineData("6/8", "0+2", "8 r8 r8 r4.")]
    [InlineData("9/8", "0+18", "2.~ 4.")]
    [InlineData("12/8", "0+24", "1.")]
    [InlineData("12/8", "0+12 12+12", "2. 2.")]
    [InlineData("12/8", "0+6 6+12 18+6", "4. 4.~ 4. 4.")]
    [InlineData("6/4", "0+12 12+8 20+4", "2. 2 4")]
    // Odd bars by beat.
    [InlineData("5/4", "0+20", "2.~ 2")]
    [InlineData("5/4", "0+4 4+4 8+12", "4 4 2.")]
    [InlineData("7/8", "1+2", "r16 16~ 16 r16 r8 r8 r8 r8 r8")]
    [InlineData("4/2", "0+32", "0")]
    public void Lengths_are_spelled_so_that_the_beat_can_be_read(string metre, string strokes, string expected) =>
        Assert.Equal(expected, Drafts.Spelled(Notator.Write(Drafts.Of(Drafts.Bar(metre, strokes)))));

    [Theory]
    [InlineData("2/4", "0+1 1+2 3+1 4+2 6+2", "b> c e< b e")]
    [InlineData("2/4", "0+1 1+1 2+1 3+1 4+3 7+1", "bb cc cc ee b e<")]
    [InlineData("2/4", "0+2 2+1 3+1 4+4", "b cb ee -")]
    [InlineData("2/4", "0+1 2+1 3+1 4+4", "- - bb ee -")]
    [InlineData("2/4", "0+2 2+4 6+2", "- - -")]
    [InlineData("4/4", "0+2 2+2 4+2 6+2 8+2 10+2 12+4", "b c c e b e -")]
    [InlineData("4/4", "0+2 2+2 4+1 5+1 6+2 8+8", "b e bb ce e -")]
    [InlineData("2/2", "0+2 2+2 4+2 6+2 8+8", "b c c e -")]
    [InlineData("3/4", "0+2 2+2 4+2 6+2 8+4", "b e b e -")]
    [InlineData("6/8", "0+2 2+2 4+2 6+3 9+1 10+2", "b c e b c< e")]
    [InlineData("6/8", "0+4 4+2 6+2 8+4", "- - - -")]
    [InlineData("3/8", "0+2 2+2 4+2", "b c e")]
    public void Beams_join_what_belongs_to_a_beat(string metre, string strokes, string expected) =>
        Assert.Equal(expected, Drafts.Beams(Notator.Write(Drafts.Of(Drafts.Bar(metre, strokes))).Bars[0].Voices[0]));

    [Fact]
    public void A_stroke_over_the_bar_line_is_tied_on_every_note_and_marked_once()
    {
        var stroke = new Stroke(
            Hand.Right,
            1,
            new ScoreTime(3, 8),
            new ScoreTime(3, 8),
            [Pitch.Parse("F#4"), Pitch.Parse("A4")],
            "tune"
        )
        {
            Accent = true,
            Staccato = true,
            Rolled = true,
            Graces = [Pitch.Parse("G#4")],
            Lyrics = [new Lyric(1, "la")],
        };
        var bar = Drafts.Bar("2/4", "");
        var score = Notator.Write(Drafts.Of(bar with { Strokes = [stroke] }, bar with { Number = "2" }));

        Assert.Equal("r4 r8 8~ | 4 r4", Drafts.Spelled(score));
        var (first, second) = (score.Bars[0].Voices[0].Events[2], score.Bars[1].Voices[0].Events[0]);
        Assert.All(first.Notes, n => Assert.True(n is { TieStart: true, TieStop: false }));
        Assert.All(second.Notes, n => Assert.True(n is { TieStart: false, TieStop: true }));
        Assert.True(first is { Accent: true, Staccato: true, Rolled: true, Lyrics.Count: 1, Graces.Count: 1 });
        Assert.True(second is { Accent: false, Staccato: false, Rolled: false, Lyrics.Count: 0, Graces.Count: 0 });
        Assert.Equal(
            ["b1-R1-3_8-tune-Fs4", "b1-R1-3_8-tune-A4", "b1-R1-3_8-tune-g1-Gs4"],
            first.Notes.Concat(first.Graces).Select(n => n.Id)
        );
        Assert.Equal(["b2-R1-0_1-tune-Fs4", "b2-R1-0_1-tune-A4"], second.Notes.Select(n => n.Id));
    }

    [Fact]
    public void A_pick_up_is_read_against_the_end_of_its_bar()
    {
        var pickUp = Drafts.Bar("2/4", "0+3") with { Number = "0", Implicit = true, Length = new ScoreTime(3, 16) };
        var score = Notator.Write(Drafts.Of(pickUp, Drafts.Bar("2/4", "0+8")));
        Assert.Equal("8. | 2", Drafts.Spelled(score));

        var six = pickUp with { Length = new ScoreTime(3, 8), Strokes = Drafts.Bar("2/4", "1+2 3+3").Strokes };
        Assert.Equal("r16 16~ 16 8. | 2", Drafts.Spelled(Notator.Write(Drafts.Of(six, Drafts.Bar("2/4", "0+8")))));
    }

    [Fact]
    public void A_second_voice_is_written_only_where_it_sounds_and_its_gaps_are_hidden()
    {
        var both = Drafts.Bar("2/4", "0+8");
        both = both with { Strokes = [.. both.Strokes, .. Drafts.Bar("2/4", "2+2", Hand.Right, 2).Strokes] };
        var score = Notator.Write(Drafts.Of(both, Drafts.Bar("2/4", "0+4 4+4") with { Number = "2" }));
        Assert.Equal([(Hand.Right, 1), (Hand.Right, 2), (Hand.Left, 1)], Voices(score.Bars[0]));
        Assert.Equal([(Hand.Right, 1), (Hand.Left, 1)], Voices(score.Bars[1]));
        Assert.Equal("h8 8 h4", Drafts.Spelled(score.Bars[0].Voices[1]));
        Assert.Equal("rbar", Drafts.Spelled(score.Bars[0].Voices[2]));

        static IEnumerable<(Hand, int)> Voices(ScoreBar bar) => bar.Voices.Select(v => (v.Hand, v.Number));
    }

    [Theory]
    [InlineData("0+4 3+2", "bar 1, place 3/16: strokes overlap in voice 1 of the Right hand")]
    [InlineData("8+4", "bar 1, place 1/2: a stroke lies outside its bar")]
    [InlineData("6+4", "bar 1, place 3/8: a stroke runs past the last bar")]
    [InlineData("6+0", "bar 1, place 3/8: a stroke has no length")]
    public void A_draft_that_cannot_be_written_is_refused_by_place(string strokes, string message)
    {
        var error = Assert.Throws<ArgumentException>(() => Notator.Write(Drafts.Of(Drafts.Bar("2/4", strokes))));
        Assert.StartsWith(message, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_length_off_the_binary_grid_is_refused_by_bar()
    {
        var bar = Drafts.Bar("2/4", "0+4");
        bar = bar with { Strokes = [bar.Strokes[0] with { Length = new ScoreTime(1, 6) }] };
        var error = Assert.Throws<ArgumentException>(() => Notator.Write(Drafts.Of(bar)));
        Assert.StartsWith("bar 1: 1/6 has no binary note value", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Bars_with_the_same_number_have_different_ids()
    {
        var bar = Drafts.Bar("2/4", "0+8");
        var score = Notator.Write(Drafts.Of(bar, bar, bar with { Number = "1.2" }, bar with { Number = "1 a" }));
        Assert.Equal(["b1", "b1.2", "b1.2.2", "b1_a"], score.Bars.Select(b => b.Id));
    }

    [Fact]
    public void Every_voice_fills_its_bar_with_printed_values() =>
        Drafts.Random.Sample(draft =>
        {
            foreach (var bar in Notator.Write(draft).Bars)
            {
                Assert.Contains(bar.Voices, v => v is { Hand: Hand.Left, Number: 1 });
                Assert.Contains(bar.Voices, v => v is { Hand: Hand.Right, Number: 1 });
                foreach (var voice in bar.Voices)
                {
                    var at = ScoreTime.Zero;
                    foreach (var e in voice.Events)
                    {
                        Assert.Equal(at, e.At);
                        Assert.True(e.WholeBarRest || e.Value.Length == e.Length, $"{e}");
                        Assert.False(e.Beams.Count > 0 && (e.Notes.Count == 0 || e.Value.Part < 8), $"{e}");
                        at += e.Length;
                    }
                    Assert.Equal(bar.Length, at);
                    Assert.Equal(0, OpenBeams(voice));
                }
            }
        });

    private static int OpenBeams(ScoreVoice voice) =>
        voice
            .Events.SelectMany(e => e.Beams)
            .Sum(b =>
                b switch
                {
                    BeamState.Begin => 1,
                    BeamState.End => -1,
                    _ => 0,
                }
            );

    [Fact]
    public void Ids_are_unique_XML_names() =>
        Drafts.Random.Sample(draft =>
        {
            var score = Notator.Write(draft);
            var ids = score
                .Bars.SelectMany(b => b.Voices)
                .SelectMany(v => v.Events)
                .SelectMany(e => e.Notes)
                .Select(n => n.Id)
                .Concat(score.Bars.Select(b => b.Id))
                .ToList();
            Assert.Equal(ids.Count, ids.Distinct().Count());
            Assert.All(ids, id => System.Xml.XmlConvert.VerifyNCName(id));
        });

    [Fact]
    public void Merged_ties_give_back_exactly_what_the_draft_strikes() =>
        Drafts.Random.Sample(draft =>
        {
            var start = ScoreTime.Zero;
            var struck = new List<(Hand, int, ScoreTime, ScoreTime, int, ScoreTime)>();
            for (var i = 0; i < draft.Bars.Count; i++)
            {
                foreach (var s in draft.Bars[i].Strokes)
                {
                    var at = start + s.At;
                    struck.AddRange(s.Pitches.Select(p => (s.Hand, p.Midi, at, at + s.Length, i, s.At)));
                }
                start += draft.Bars[i].Length;
            }
            var heard = Timeline
                .Of(Notator.Write(draft))
                .Select(s => (s.Hand, s.Key, s.Start, s.End, s.Bar, s.At))
                .ToList();
            Assert.Equal(struck.OrderBy(s => s.Item3).ThenBy(s => s.Item1).ThenBy(s => s.Item2), heard);
        });
}
