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
                    var figure = Arranging.OwnFigures.Of(setting, bar, 2, hand, out _)!;
                    var text = Arranging.OwnFigures.Write(figure);
                    Assert.Equal(figure, Arranging.OwnFigures.Read(text, out var fault));
                    Assert.Null(fault);
                    var back = Arranging.OwnFigures.At(setting, figure, bar, out _)!;
                    Assert.Equal(Keys(Reworking.Spot(setting, bar, hand)), Keys(back[0]));
                    Assert.Equal(Keys(Reworking.Spot(setting, bar + 1, hand)), Keys(back[1]));
                }
            }
        }
    }

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
