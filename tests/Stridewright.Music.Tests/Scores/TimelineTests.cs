using Stridewright.Testing;

namespace Stridewright.Music.Tests;

/// <summary>Playing orders are common practice for repeats and endings.</summary>
public sealed class TimelineTests
{
    // A bar per token: | starts a repeat, : ends one, [n is an ending, x3 says how often.
    [Theory]
    [InlineData("a b c", "0 1 2")]
    [InlineData("|a b: c", "0 1 0 1 2")]
    [InlineData("a b: c", "0 1 0 1 2")]
    [InlineData("a b: c d:", "0 1 0 1 2 3 2 3")]
    [InlineData("a |b c: d", "0 1 2 1 2 3")]
    [InlineData("a |b c:x3 d", "0 1 2 1 2 1 2 3")]
    [InlineData("|a b[1: c[2 d", "0 1 0 2 3")]
    [InlineData("|a b[1: c[2: d", "0 1 0 2 3")]
    [InlineData("|a b[1 c[1: d[2 e[2 |f g:", "0 1 2 0 3 4 5 6 5 6")]
    [InlineData("|a b[12: c[3 d", "0 1 0 1 0 2 3")]
    [InlineData("|a b[123: c[4 d", "0 1 0 1 0 1 0 2 3")]
    [InlineData("|a b[1: c[2: d[3 e", "0 1 0 2 0 3 4")]
    [InlineData("a:x1 b", "0 1")]
    public void Repeats_and_endings_are_unfolded(string bars, string expected) =>
        Assert.Equal(expected, string.Join(' ', Timeline.PlayOrder(bars.Split(' ').Select(Marks).ToList())));

    [Fact]
    public void A_repeat_of_absurd_length_ends() =>
        Assert.Equal(20, Timeline.PlayOrder([new BarMarks { RepeatEnd = int.MaxValue }]).Count);

    [Fact]
    public void Ties_follow_the_order_in_which_bars_are_played()
    {
        // A note tied from the first bar into the first ending; the second ending is tied into from the same bar.
        var bar = Drafts.Bar("2/4", "");
        var written = Notator.Write(
            Drafts.Of(
                Drafts.Bar("2/4", "0+12") with
                {
                    Marks = new BarMarks { RepeatStart = true },
                },
                bar with
                {
                    Number = "2",
                    Marks = new BarMarks { RepeatEnd = 2, Ending = [1] },
                },
                Drafts.Bar("2/4", "0+4") with
                {
                    Number = "3",
                    Marks = new BarMarks { Ending = [2] },
                }
            )
        );
        var last = written.Bars[2].Voices[0].Events[0];
        var into = last with { Notes = [last.Notes[0] with { TieStop = true }] };
        var voice = written.Bars[2].Voices[0];
        var voices = new ScoreVoice(voice.Hand, voice.Number, [into, .. voice.Events.Skip(1)]);
        var score = written with
        {
            Bars = [written.Bars[0], written.Bars[1], written.Bars[2] with { Voices = [voices] }],
        };

        Assert.Equal(["0 3/4", "1 5/4"], Timeline.Of(score).Select(s => $"{s.Start} {s.End}"));
        var played = Timeline.Strike(score, Timeline.PlayOrder(score));
        Assert.Equal(["0 3/4", "1 7/4"], played.Select(s => $"{s.Sounding.Start} {s.Sounding.End}"));
    }

    private static BarMarks Marks(string token)
    {
        var ending = token.Contains('[', StringComparison.Ordinal)
            ? token.SkipWhile(c => c != '[').Where(char.IsAsciiDigit).Select(c => c - '0').ToValueList()
            : [];
        var times = token.Contains('x', StringComparison.Ordinal) ? token[^1] - '0' : 2;
        return new BarMarks
        {
            RepeatStart = token.StartsWith('|'),
            RepeatEnd = token.Contains(':', StringComparison.Ordinal) ? times : 0,
            Ending = ending,
        };
    }
}
