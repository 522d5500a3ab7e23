using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Style;

/// <summary>Two bars whose figures are counted by hand.</summary>
public sealed class StyleMeasureTests
{
    private static readonly ScoreTime Unit = ScoreTime.Sixteenth;

    // Right hand, bar 1: xx.x x.x. as single, octave, single, single, third; bar 2: the same rhythm, singles. Left hand:
    // octave C, chord, G below, the same chord; then octave F, chord, C, another chord.
    private static StyleProfile Profile { get; } =
        StyleMeasure.Of(
            Notator.Write(
                new Draft
                {
                    Title = "Two bars",
                    Bars =
                    [
                        Bar(
                            "1",
                            Right(0, 72),
                            Right(1, 64, 76),
                            Right(3, 74),
                            Right(4, 72),
                            Right(6, 72, 76),
                            Left(0, 36, 48),
                            Left(2, 55, 60, 64),
                            Left(4, 43),
                            Left(6, 55, 60, 64)
                        ),
                        Bar(
                            "2",
                            Right(0, 77),
                            Right(1, 76),
                            Right(3, 74),
                            Right(4, 72),
                            Right(6, 72),
                            Left(0, 41, 53),
                            Left(2, 57, 60, 65),
                            Left(4, 48),
                            Left(6, 57, 60)
                        ),
                    ],
                }
            )
        );

    [Theory]
    [InlineData("untied_bars", 1)]
    [InlineData("any121_bars", 1)]
    [InlineData("half_1101", 0.5)]
    [InlineData("half_1010", 0.5)]
    [InlineData("first_1101", 1)]
    [InlineData("second_1010", 1)]
    [InlineData("bar_11011010", 1)]
    [InlineData("lag_1", 1)]
    [InlineData("lhl_per_bar", 1)] // the cakewalk figure: 1
    [InlineData("single", 0.8)]
    [InlineData("octave", 0.1)]
    [InlineData("two_note", 0.1)]
    [InlineData("octave_stays", 0)]
    [InlineData("single_stays", 0.714)] // of seven single notes followed by another five are followed by one
    [InlineData("strict", 1)]
    [InlineData("left_10101010", 1)]
    [InlineData("beat_octave", 0.5)]
    [InlineData("beat_single", 0.5)]
    [InlineData("off_three_note", 0.75)]
    [InlineData("off_two_note", 0.25)]
    [InlineData("chords_alike", 0.5)]
    [InlineData("second_bass_+7", 1)] // C to G, F to C, both up
    [InlineData("next_bass_step", 1)] // G to F
    [InlineData("left_over_octave", 0)]
    public void A_share_is_what_the_hand_counts(string key, double expected) =>
        Assert.Equal(expected, Figure(key).Values.Single(), 3);

    [Fact]
    public void Places_and_percentiles_are_what_the_hand_counts()
    {
        Assert.Equal([0.5, 0, 0.5, 0, 0], Figure("place_1").Values);
        Assert.Equal([0.5, 0.5, 0, 0, 0], Figure("place_6").Values);
        // Bass 36 41 43 48: the median between 41 and 43; leaps 19, 12, 16, 9.
        Assert.Equal(42, Figure("bass").Values[2]);
        Assert.Equal(14, Figure("leap_up").Values[2]);
        // Steps of the top note: 4 2 2 4 1 1 2 2 0.
        Assert.Equal([2, 2, 4], Figure("top_step").Values);
    }

    [Fact]
    public void Every_figure_belongs_to_a_section_and_figures_of_one_stand_together()
    {
        var sections = Profile.Figures.Select(f => f.Section).ToList();
        Assert.DoesNotContain("", sections);
        Assert.Equal(sections.Distinct().Count(), sections.Where((s, i) => i == 0 || s != sections[i - 1]).Count());
    }

    private static StyleFigure Figure(string key) => Profile.Figures.Single(f => f.Key == key);

    private static DraftBar Bar(string number, params Stroke[] strokes) =>
        new()
        {
            Number = number,
            Metre = Metre.TwoFour,
            Key = default,
            Length = Metre.TwoFour.BarLength,
            Strokes = strokes.ToValueList(),
        };

    private static Stroke Right(int unit, params int[] keys) => Struck(Hand.Right, unit, keys, Unit);

    private static Stroke Left(int unit, params int[] keys) => Struck(Hand.Left, unit, keys, Unit * 2);

    private static Stroke Struck(Hand hand, int unit, int[] keys, ScoreTime length) =>
        new(hand, 1, Unit * unit, length, keys.Select(k => Pitch.At(k, default(Key).Spell(k))).ToValueList(), "key");
}
