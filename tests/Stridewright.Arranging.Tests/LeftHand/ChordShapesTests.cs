using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging.Tests.LeftHand;

/// <summary>Facts of left-hand chords in ragtime and stride, common practice.</summary>
public sealed class ChordShapesTests
{
    [Fact]
    public void A_dominant_seventh_leaves_out_the_fifth_the_seventh_lowest() =>
        Assert.Contains("53 55 59", Shapes("G7", Feel.Classic));

    [Theory]
    [InlineData("Cmaj7", Feel.Classic, "B")]
    [InlineData("C6", Feel.Classic, "A")]
    public void Classic_reduces_added_notes_to_the_triad(string chord, Feel feel, string leftOut) =>
        Assert.All(Pitches(chord, feel), shape => Assert.DoesNotContain(shape, p => p.Tone.ToString() == leftOut));

    [Fact]
    public void Stride_keeps_the_sixth() =>
        Assert.Contains(Pitches("C6", Feel.Stride), shape => shape.Any(p => p.Step == Step.A));

    [Fact]
    public void Every_shape_lies_in_its_window_and_under_the_hand() =>
        Assert.All(
            ChordShapes.Of(Read("D7"), Feel.Classic, new Reach(new PlayerHands { SpanMm = 185 }), 50, 66, false),
            shape =>
            {
                Assert.InRange(shape.Low, 50, 66);
                Assert.InRange(shape.High, 50, 66);
                Assert.NotEqual(Stretch.Out, shape.Stretch);
            }
        );

    [Fact]
    public void At_a_change_the_bass_tone_lies_lowest() =>
        Assert.All(
            ChordShapes.Of(Read("F/A"), Feel.Classic, new Reach(new PlayerHands()), 45, 66, true),
            shape => Assert.Equal(Step.A, shape.Pitches[0].Step)
        );

    private static IEnumerable<string> Shapes(string chord, Feel feel) =>
        Pitches(chord, feel).Select(p => string.Join(' ', p.Select(x => x.Midi)));

    private static List<ValueList<Pitch>> Pitches(string chord, Feel feel) =>
        ChordShapes.Of(Read(chord), feel, new Reach(new PlayerHands()), 50, 66, false).Select(s => s.Pitches).ToList();

    private static ChordSymbol Read(string text) =>
        ChordText.TryParse(text, out var chord) ? chord : throw new FormatException(text);
}
