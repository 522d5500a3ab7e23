using CsCheck;
using Stridewright.Music;

namespace Stridewright.Arranging.Tests.OwnFigures;

public sealed class OwnFigureTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    // Chord tones by their degrees, common practice: the third of a minor chord is minor, the fifth of a diminished one
    // diminished; what lies beside the chord keeps its distance from the root.
    [Theory]
    [InlineData("F", "A2", "Dm", "3", "F2")]
    [InlineData("C7", "Bb2", "F", "7", "E3")]
    [InlineData("G7", "B1", "Am", "-6", "C2")]
    [InlineData("Bdim7", "F3", "C", "5", "G2")]
    [InlineData("F", "B2", "C", "~#4", "F#2")]
    [InlineData("F", "Gb2", "G7", "~b2", "Ab2")]
    public void A_tone_follows_its_chord(string over, string pitch, string other, string text, string expected)
    {
        Assert.True(ChordText.TryParse(over, out var from));
        Assert.True(ChordText.TryParse(other, out var to));
        var tone = FigureTone.Of(Pitch.Parse(pitch), from, Hand.Left);
        Assert.Equal(text, tone.ToString());
        Assert.Equal(tone, FigureTone.Read(text));
        Assert.Equal(Pitch.Parse(expected), tone.Over(to, Hand.Left));
    }

    [Fact]
    public void A_figure_put_back_where_it_came_from_is_the_same_bar()
    {
        foreach (var tune in Tunes.Samples)
        {
            var setting = Arranger.Arrange(tune, new Brief { LeftLevel = 6, RightLevel = 6 }, Cancel).Arrangement!;
            for (var bar = 1; bar + 1 < setting.Score.Bars.Count; bar += 5)
            {
                foreach (var hand in new[] { Hand.Left, Hand.Right })
                {
                    var figure = Arranging.OwnFigures.Of(setting, bar, 2, hand, null, out _)!;
                    var text = Arranging.OwnFigures.Write(figure);
                    Assert.Equal(figure, Arranging.OwnFigures.Read(text, out var fault));
                    Assert.Null(fault);
                    var back = Arranging.OwnFigures.At(setting, figure, bar, out _, Cancel)!;
                    Assert.Equal(Keys(Reworking.Spot(setting, bar, hand)), Keys(back[0]));
                    Assert.Equal(Keys(Reworking.Spot(setting, bar + 1, hand)), Keys(back[1]));
                }
            }
        }
    }

    private static OwnFigure Lines(params string[] lines) =>
        Arranging.OwnFigures.Read(lines.ToValueList(), out var fault)
        ?? throw new ArgumentException(fault, nameof(lines));

    [Theory]
    [InlineData("left 2 run of 1/2 to 5")]
    [InlineData("right 1 fill of 1/2")]
    [InlineData("left 4 introduction")]
    [InlineData("right 1 ending to 0")]
    [InlineData("left 8")]
    public void The_head_of_a_figure_comes_back(string head)
    {
        var figure = Lines(head, "1 0+1/8 bass 1");
        Assert.Equal([head, "1 0+1/8 bass 1"], Arranging.OwnFigures.Write(figure));
    }

    [Theory]
    [InlineData("left 2 tail")]
    [InlineData("left 2 run of")]
    [InlineData("left 2 run of 0")]
    [InlineData("left 2 run to 12")]
    [InlineData("left 2 run to 5 of 1/2")]
    [InlineData("left 9 run")]
    [InlineData("both 1 run")]
    public void Other_heads_are_told(string head) =>
        Assert.Null(Arranging.OwnFigures.Read([head, "1 0+1/8 bass 1"], out _));

    // A run leads on: it stands at ends of phrases (every fourth bar of a strain) over the step of the harmony that it was
    // made for; both are read off the score.
    [Fact]
    public void A_run_is_put_at_ends_of_phrases_over_its_own_step()
    {
        var placed = 0;
        foreach (var tune in Tunes.Samples)
        {
            var setting = Arranger.Arrange(tune, new Brief { LeftLevel = 6, RightLevel = 6 }, Cancel).Arrangement!;
            var length = setting.Score.Bars[2].Length;
            var run = Lines(
                $"left 1 run of {length} to 5",
                $"1 0+{length / 2} bass 1",
                $"1 {length / 2}+{length / 2} run 3"
            );
            var with = Arranging.OwnFigures.Preferred(setting, [run], out var bars, Cancel);
            placed += bars.Count;
            foreach (var bar in bars)
            {
                var lattice = Reworking.Of(with).Lattice;
                Assert.True(lattice.Bars[bar].StrainBar % 4 == 3 || lattice.Bars[bar].EndsStrain);
                var (last, next) = (Chord(lattice, lattice.Bars[bar].End - 1), Chord(lattice, lattice.Bars[bar].End));
                Assert.Equal(5, (next.Root.PitchClass - last.Root.PitchClass + 12) % 12);
                var struck = Reworking.Spot(with, bar, Hand.Left).Strokes;
                Assert.Equal(2, struck.Count);
                Assert.Equal(Chord(lattice, lattice.Bars[bar].Start).Root.PitchClass, struck[0].Pitches[0].Midi % 12);
            }
            Assert.Equal(bars.Count, with.Brief.Kept.Count(k => k.Hand == Hand.Left));
        }
        Assert.True(placed >= 5, $"{placed}");
    }

    // What is beside the tune takes nothing from it, and two fills take turns.
    [Fact]
    public void Fills_stand_in_gaps_and_leave_the_tune_as_it_was()
    {
        var placed = 0;
        foreach (var tune in Tunes.Samples)
        {
            var brief = new Brief { LeftLevel = 4, RightLevel = 4 };
            var setting = Arranger.Arrange(tune, brief, Cancel).Arrangement!;
            var length = setting.Score.Bars[2].Length;
            var (at, unit) = (length * new ScoreTime(3, 4), length / 8);
            OwnFigure[] fills =
            [
                Lines($"right 1 fill of {length}", $"1 {at}+{unit} fill 1", $"1 {at + unit}+{unit} fill 3"),
                Lines($"right 1 fill of {length}", $"1 {at}+{unit} fill 5", $"1 {at + unit}+{unit} fill 3"),
            ];
            var with = Arranging.OwnFigures.Preferred(setting, fills, out var bars, Cancel);
            placed += bars.Count;
            Assert.Equal(setting.Tune.Notes, with.Tune.Notes);
            Assert.Equal(setting.Tune.Kept, with.Tune.Kept);
            foreach (var (bar, nth) in bars.Select((b, i) => (b, i)))
            {
                var strokes = Reworking.Spot(with, bar, Hand.Right).Strokes;
                Assert.Equal(2, strokes.Count(s => s.Tune is null));
                Assert.All(strokes.Where(s => s.Tune is not null), s => Assert.True(s.At < at));
                var lattice = Reworking.Of(with).Lattice;
                var chord = FigurePlacing.ChordAt(lattice, bar, at)!;
                var degree = fills[nth % 2].Strokes[0].Tones[0].Over(chord, Hand.Right).Midi % 12;
                Assert.Equal(degree, strokes.First(s => s.Tune is null).Pitches[^1].Midi % 12);
            }
        }
        Assert.True(placed >= 10, $"{placed}");
    }

    [Fact]
    public void An_introduction_and_an_ending_stand_where_they_are_called_so()
    {
        var tune = Tunes.Samples.First(t => t.Title.StartsWith("Two Sugars", StringComparison.Ordinal));
        var introduction = Lines("left 2 introduction", "1 0+1/8 bass 1", "2 0+1/8 bass 1");
        var ending = Lines("left 1 ending", "1 0+1/8 bass 1");
        var brief = new Brief { Form = FormLine.Read("intro A end", out _), Figures = [introduction, ending] };
        var with = Arranger.Arrange(tune, brief, Cancel).Arrangement!;
        var bars = with.Score.Bars.Count;
        Assert.Equal([2, 3, bars - 1], with.Brief.Kept.Select(k => k.Bar));
        Assert.Empty(with.Brief.Figures);
        Assert.All(with.Brief.Kept, k => Assert.Single(Reworking.Spot(with, k.Bar, Hand.Left).Strokes));
        Assert.Contains(
            with.Notes,
            n => n.Message.Contains("figures of your own begin in bars", StringComparison.Ordinal)
        );
        var without = Arranger.Arrange(tune, brief with { Form = null, Figures = [introduction] }, Cancel).Arrangement!;
        Assert.Empty(without.Brief.Kept);
        Assert.Contains(without.Notes, n => n.Message.Contains("none of the figures", StringComparison.Ordinal));
    }

    [Fact]
    public void A_figure_without_strokes_or_of_a_hand_that_is_silent_is_put_nowhere()
    {
        var tune = Tunes.Abc("M:2/4\nL:1/8\nK:C", "|\"C\"C2E2|C2E2|C2E2|C4|]");
        OwnFigure[] figures =
        [
            Lines("left 1 fill"),
            Lines("right 1 run"),
            Lines("left 1 ending"),
            Lines("right 1 introduction"),
            Lines("right 1 ending", "1 0+1/8 fill 1"),
        ];
        var brief = new Brief { LeftHandOnly = true, Figures = figures.ToValueList() };
        Assert.Empty(Arranger.Arrange(tune, brief, Cancel).Arrangement!.Brief.Kept);
        var both = Arranger.Arrange(tune, brief with { LeftHandOnly = false }, Cancel).Arrangement!;
        Assert.Equal([(3, Hand.Right)], both.Brief.Kept.Select(k => (k.Bar, k.Hand)));
    }

    // Where its own octave is the other hand's, a figure is played an octave away from it.
    [Fact]
    public void A_figure_moves_by_an_octave_where_its_own_is_taken()
    {
        var tune = Tunes.Abc("M:2/4\nL:1/8\nK:C", "|\"C\"C2E2|C2E2|C2E2|C4|]");
        var setting = Arranger.Arrange(tune, new Brief { LeftLevel = 3, RightLevel = 1 }, Cancel).Arrangement!;
        var taken = Reworking.Spot(setting, 1, Hand.Right).Strokes[0].Pitches[0];
        var figure = Lines(
            "left 1",
            $"1 0+1/8 bass {FigureTone.Of(taken, Chord(Reworking.Of(setting).Lattice, 0), Hand.Left)}"
        );
        var put = Arranging.OwnFigures.At(setting, figure, 1, out _, Cancel)!;
        Assert.Equal(taken.Midi - 12, put[0].Strokes[0].Pitches[0].Midi);
        Assert.NotNull(Reworking.Rework(setting, put, Cancel).Arrangement);
    }

    private static ChordSymbol Chord(Lattice lattice, int tick) => lattice.ChordAt(tick).Chord;

    [Fact]
    public void Damaged_lines_are_read_or_told() =>
        Gen.Select(Gen.String[Gen.Char["0123456789/+~#b -lefthandrightbasschordrolled"], 0, 40], Gen.Int[0, 3])
            .Sample(
                (line, at) =>
                {
                    var lines = new List<string>
                    {
                        "left 2",
                        "1 0+1/8 bass 1 8",
                        "1 1/8+1/8 chord 3 5 8",
                        "2 0+1/4 run ~b2",
                    };
                    lines[at] = line;
                    var figure = Arranging.OwnFigures.Read(lines.ToValueList(), out var fault);
                    Assert.Equal(figure is null, fault is not null);
                },
                iter: 2000
            );

    private static IEnumerable<(ScoreTime At, string Keys)> Keys(KeptBar bar) =>
        bar.Strokes.Select(s => (s.At, string.Join(' ', s.Pitches.Select(p => p.Midi))));
}
