using CsCheck;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Sound.Tests;

public sealed class PerformerTests
{
    [Fact]
    public void Strokes_fall_on_their_written_places() =>
        Drafts.Random.Sample(
            draft =>
            {
                var score = Notator.Write(draft);
                var written = Timeline
                    .Of(score)
                    .Select(s => ((s.Start * 1920).Numerator, s.Key, s.Hand, Id: (string?)s.Id))
                    .Order();
                var played = Performer.Perform(score).Strokes.Select(s => (s.Tick, s.Key, s.Hand, s.Id)).Order();
                Assert.Equal(written, played);
            },
            iter: 300
        );

    [Fact]
    public void A_hand_lets_a_key_go_before_it_strikes_it_again() =>
        Gen.Select(Drafts.Random, Gen.Int)
            .Sample(
                (draft, seed) =>
                {
                    var performance = Performer.Perform(Notator.Write(Dressed.Up(draft, seed)));
                    foreach (var line in performance.Strokes.GroupBy(s => (s.Hand, s.Key)))
                    {
                        var free = 0L;
                        foreach (var stroke in line)
                        {
                            Assert.True(stroke.Tick >= free && stroke.Length >= 1, $"{stroke}");
                            Assert.InRange(stroke.Velocity, 1, 127);
                            free = stroke.Tick + stroke.Length;
                            Assert.True(free <= performance.EndTick);
                        }
                    }
                    Assert.Equal(0, performance.Tempi[0].Tick);
                    Assert.Equal(performance.Strokes.OrderBy(s => s.Tick).ThenBy(s => s.Key), performance.Strokes);
                },
                iter: 300
            );

    // Source: durations of swung pairs at a tempo are arithmetic: 2:1 at 120 is 333.3 + 166.7 ms, 3:2 at 100 is
    // 360 + 240 ms, 2:1 at 160 is 250 + 125 ms.
    [Theory]
    [InlineData(120, 2, 1, 1000.0 / 3)]
    [InlineData(100, 3, 2, 360)]
    [InlineData(160, 2, 1, 250)]
    [InlineData(120, 1, 1, 250)]
    public void Off_beat_eighths_of_the_right_hand_swing(double tempo, int first, int second, double expected)
    {
        var bar = Drafts.Bar("4/4", "0+2 2+2 4+4 8+2 10+2 12+4");
        var left = Drafts.Bar("4/4", "0+2 2+2 4+4 8+2 10+2 12+4", Hand.Left);
        var performance = Performer.Perform(
            Notator.Write(
                Drafts.Of(
                    bar with
                    {
                        Strokes = [.. bar.Strokes, .. left.Strokes],
                        Directions =
                        [
                            new Direction(ScoreTime.Zero) { BeatsPerMinute = tempo, Swing = (first, second) },
                        ],
                    }
                )
            )
        );
        var right = performance.Strokes.Where(s => s.Hand == Hand.Right).ToList();
        Assert.Equal(expected, 1000 * performance.SecondsAt(right[1].Tick), 0.6);
        Assert.Equal(right[1].Tick - right[0].Tick, right[4].Tick - right[3].Tick);
        Assert.Equal([0L, 480, 960, 1440], right.Where((_, i) => i % 3 != 1).Select(s => s.Tick));
        Assert.Equal(
            [0L, 240, 480, 960, 1200, 1440],
            performance.Strokes.Where(s => s.Hand == Hand.Left).Select(s => s.Tick)
        );
    }

    [Fact]
    public void Swing_counts_from_the_beat_in_a_pick_up_too()
    {
        var pickUp = Drafts.Bar("4/4", "0+2") with
        {
            Number = "0",
            Implicit = true,
            Length = ScoreTime.Eighth,
            Directions = [new Direction(ScoreTime.Zero) { Swing = (2, 1) }],
        };
        var performance = Performer.Perform(Notator.Write(Drafts.Of(pickUp, Drafts.Bar("4/4", "0+2 2+2"))));
        // The pick-up eighth is itself off the beat: struck 80 ticks late; bar 1 starts at 240.
        Assert.Equal([80L, 240, 560], performance.Strokes.Select(s => s.Tick));
        Assert.Equal(
            [new MetreChange(0, new Metre(1, 8)), new MetreChange(240, Metre.FourFour)],
            performance.Metres.Select(m => m with { Metre = m.Metre with { Sign = MetreSign.Numbers } })
        );
    }

    [Fact]
    public void Repeats_are_played_and_ids_return()
    {
        var bar = Drafts.Bar("2/4", "0+8");
        var score = Notator.Write(
            Drafts.Of(bar with { Marks = new BarMarks { RepeatEnd = 2 } }, bar with { Number = "2" })
        );
        var performance = Performer.Perform(score);
        Assert.Equal([0L, 960, 1920], performance.Strokes.Select(s => s.Tick));
        Assert.Equal(
            ["b1-R1-0_1-tune-C5", "b1-R1-0_1-tune-C5", "b2-R1-0_1-tune-C5"],
            performance.Strokes.Select(s => s.Id)
        );
        Assert.Equal(2880, performance.EndTick);
    }

    [Fact]
    public void Tempi_are_taken_from_the_score_in_playing_order()
    {
        ScoreTime start = ScoreTime.Zero;
        Direction Tempo(double beats, NoteValue unit) => new(start) { BeatsPerMinute = beats, BeatUnit = unit };
        var bar = Drafts.Bar("6/8", "0+12");
        var score = Notator.Write(
            Drafts.Of(
                bar with
                {
                    Directions = [Tempo(80, new NoteValue(4, 1))],
                },
                bar with
                {
                    Number = "2",
                    Directions = [Tempo(60, new NoteValue(4))],
                    Marks = new BarMarks { RepeatEnd = 2 },
                }
            )
        );
        Assert.Equal(
            [(0L, 500_000), (1440, 1_000_000), (2880, 500_000), (4320, 1_000_000)],
            Performer.Perform(score).Tempi.Select(t => (t.Tick, t.MicrosecondsPerQuarter))
        );
    }

    [Fact]
    public void The_tune_is_louder_than_inner_notes_and_the_bass_than_the_chord()
    {
        var performance = Performer.Perform(Notator.Write(Drafts.Of(Stride())));
        int Velocity(string key, int tick) =>
            performance.Strokes.Single(s => s.Tick == tick && s.Key == Pitch.Parse(key).Midi).Velocity;
        Assert.True(Velocity("C5", 0) > Velocity("E4", 0));
        Assert.True(Velocity("C2", 0) > Velocity("E3", 480));
        Assert.True(Velocity("C5", 0) > Velocity("E3", 480));
    }

    [Fact]
    public void Stride_chords_are_short_and_basses_are_held()
    {
        var performance = Performer.Perform(Notator.Write(Drafts.Of(Stride())));
        long Length(string key) => performance.Strokes.First(s => s.Key == Pitch.Parse(key).Midi).Length;
        Assert.Equal(480, Length("C2"));
        Assert.InRange(Length("E3"), 0.60 * 480, 0.70 * 480);
    }

    [Fact]
    public void A_rolled_chord_has_its_tune_or_its_bass_on_the_beat()
    {
        var bar = Drafts.Bar("4/4", "8+8");
        ValueList<Pitch> tenth = [Pitch.Parse("C3"), Pitch.Parse("G3"), Pitch.Parse("E4")];
        KeyStroke[] Played(Hand hand)
        {
            var stroke = bar.Strokes[0] with { Hand = hand, Pitches = tenth, Rolled = true };
            return [.. Performer.Perform(Notator.Write(Drafts.Of(bar with { Strokes = [stroke] }))).Strokes];
        }
        // 25 ms at 120 quarters a minute are 24 ticks.
        Assert.Equal([960L, 984, 1008], Played(Hand.Left).Select(s => s.Tick));
        Assert.Equal([912L, 936, 960], Played(Hand.Right).Select(s => s.Tick));
        Assert.All(Played(Hand.Right), s => Assert.Equal(1920, s.Tick + s.Length));
    }

    [Fact]
    public void A_crushed_note_comes_just_before_its_note()
    {
        var bar = Drafts.Bar("4/4", "0+8 8+8");
        var strokes = bar.Strokes.Select(s => s with { Graces = [Pitch.Parse("B4")] });
        var performance = Performer.Perform(Notator.Write(Drafts.Of(bar with { Strokes = strokes.ToValueList() })));
        var crushed = performance.Strokes.Where(s => s.Key == 71).ToList();
        Assert.Equal([0L, 917], crushed.Select(s => s.Tick));
        Assert.All(crushed, s => Assert.InRange(1000 * performance.SecondsAt(s.Length), 40, 50));
        Assert.Equal("b1-R1-1_2-tune-g1-B4", crushed[1].Id);
    }

    [Fact]
    public void The_same_score_gives_the_same_performance() =>
        Assert.Equal(
            Performer.Perform(Notator.Write(Drafts.Of(Stride()))),
            Performer.Perform(Notator.Write(Drafts.Of(Stride())))
        );

    private static DraftBar Stride()
    {
        Stroke Left(int quarter, params string[] keys) =>
            new(
                Hand.Left,
                1,
                new ScoreTime(quarter, 4),
                ScoreTime.Quarter,
                [.. keys.Select(k => Pitch.Parse(k))],
                "left"
            );
        var bar = Drafts.Bar("4/4", "0+16");
        return bar with
        {
            Strokes =
            [
                bar.Strokes[0] with
                {
                    Pitches = [Pitch.Parse("E4"), Pitch.Parse("C5")],
                },
                Left(0, "C2", "C3"),
                Left(1, "E3", "G3"),
                Left(2, "G2"),
                Left(3, "E3", "G3"),
            ],
        };
    }
}
