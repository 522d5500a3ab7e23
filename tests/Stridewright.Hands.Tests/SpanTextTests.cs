namespace Stridewright.Hands.Tests;

public sealed class SpanTextTests
{
    // 1 in = 25.4 mm by international agreement.
    [Theory]
    [InlineData("205", 205)]
    [InlineData(" 205 mm ", 205)]
    [InlineData("205.5MM", 205.5)]
    [InlineData("20.5cm", 205)]
    [InlineData("8.1in", 205.74)]
    [InlineData("8.1\"", 205.74)]
    [InlineData("8.5 inches", 215.9)]
    [InlineData("120", 120)]
    [InlineData("300", 300)]
    public void A_length_is_read(string text, double mm)
    {
        Assert.True(SpanText.TryRead(text, 165.1, out var read, out var problem), problem);
        Assert.Equal(mm, read, 1e-9);
    }

    // Widest white-to-white stretch of the key centres after Jacobs 2001, and the 4 mm that a held chord leaves of the
    // span; a tenth asks 8.5 in by the keyboard-size research community (215.9 mm).
    [Theory]
    [InlineData("octave", 165.1, 169.1)]
    [InlineData("Ninth", 165.1, 192.8)]
    [InlineData("tenth", 165.1, 216.4)]
    [InlineData(" ELEVENTH ", 165.1, 240.1)]
    [InlineData("tenth", 139.7, 183.7)]
    public void An_interval_names_the_hand_that_just_reaches_it(string text, double octave, double mm)
    {
        Assert.True(SpanText.TryRead(text, octave, out var read, out _));
        Assert.Equal(mm, read, 0.051);
    }

    // Common practice: a hand reaches its interval from every white key and not the next wider one from all.
    [Theory]
    [InlineData("octave", 12, 14)]
    [InlineData("ninth", 14, 16)]
    [InlineData("tenth", 16, 17)]
    public void A_named_hand_holds_its_interval_and_not_the_next(string text, int semitones, int next)
    {
        Assert.True(SpanText.TryRead(text, 165.1, out var mm, out _));
        var reach = new Reach(new() { SpanMm = mm });
        Assert.Equal(Stretch.Strained, reach.Of(48, 48 + semitones));
        Assert.Equal(Stretch.Out, reach.Of(48, 48 + next));
    }

    [Theory]
    [InlineData(null, "'' is no span")]
    [InlineData("", "'' is no span")]
    [InlineData("wide", "'wide' is no span; write 205, 20.5cm, 8.1in, octave, ninth, tenth or eleventh")]
    [InlineData("20,5cm", "'20,5cm' is no span")]
    [InlineData("-205", "'-205' is no span")]
    [InlineData("NaN", "'NaN' is no span")]
    [InlineData("2e2", "'2e2' is no span")]
    [InlineData("205 mm mm", "'205 mm mm' is no span")]
    [InlineData("119.9", "between 120 and 300 mm")]
    [InlineData("301", "between 120 and 300 mm, and '301' is 301 mm")]
    [InlineData("8.1", "and '8.1' is 8.1 mm; did you mean 8.1in?")]
    [InlineData("99999999999999999999999999999999999999999999999999", "is no span")]
    public void What_is_no_span_is_told_so(string? text, string part)
    {
        Assert.False(SpanText.TryRead(text, 165.1, out _, out var problem));
        Assert.Contains(part, problem, StringComparison.Ordinal);
    }

    // Octave widths of the keyboard-size research community: 6.5, 6.0 and 5.5 in.
    [Theory]
    [InlineData("165.1", 165.1)]
    [InlineData("6.5in", 165.1)]
    [InlineData("6.0 in", 152.4)]
    [InlineData("5.5\"", 139.7)]
    public void An_octave_width_is_read(string text, double mm)
    {
        Assert.True(OctaveWidthText.TryRead(text, out var read, out _));
        Assert.Equal(mm, read, 1e-9);
    }

    [Theory]
    [InlineData("octave", "'octave' is no octave width; write 165.1, 16.51cm or 6.5in")]
    [InlineData("181", "octave width must lie between 120 and 180 mm")]
    [InlineData("6.5", "did you mean 6.5in?")]
    public void What_is_no_octave_width_is_told_so(string text, string part)
    {
        Assert.False(OctaveWidthText.TryRead(text, out _, out var problem));
        Assert.Contains(part, problem, StringComparison.Ordinal);
    }
}
