using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Singing;

/// <summary>The key from a singer's range, against a reckoning over all transpositions in plain key numbers.</summary>
public sealed class VocalRangeTests
{
    public static TheoryData<string> Ranges => ["A3-D5", "C4-A5", "F3-D5", "G2-E4", "E2-D4", "Bb2-G4"];

    [Theory]
    [MemberData(nameof(Ranges))]
    public void The_tune_lies_within_the_voice_and_as_near_its_middle_as_any_key_allows(string text)
    {
        Assert.True(VocalRange.TryRead(text, out var range, out _));
        var (low, high) = (range!.Lowest.Midi, range.Highest.Midi);
        var fitting = 0;
        foreach (var tune in Tunes.Samples)
        {
            var keys = tune.Bars.SelectMany(b => b.Notes).Select(n => n.Pitch.Midi).ToList();
            // A semitone at a time: what fits, and the least difference of the room below and above.
            var fits = Enumerable
                .Range(-60, 121)
                .Where(by => keys.Min() + by >= low && keys.Max() + by <= high)
                .Select(by => Math.Abs(keys.Min() + by - low - (high - keys.Max() - by)))
                .ToList();
            var result = Set(tune, new Brief { Singer = new Singer(range) });
            if (fits.Count == 0)
            {
                Assert.Null(result.Arrangement);
                Assert.Contains("it fits in no key", result.Refusal!.Message, StringComparison.Ordinal);
                continue;
            }
            fitting++;
            var sung = (result.Arrangement!.SungLowest!.Value.Midi, result.Arrangement.SungHighest!.Value.Midi);
            Assert.InRange(sung.Item1, low, high);
            Assert.InRange(sung.Item2, low, high);
            Assert.Equal(keys.Max() - keys.Min(), sung.Item2 - sung.Item1);
            Assert.Equal(fits.Min(), Math.Abs(sung.Item1 - low - (high - sung.Item2)));
            Assert.InRange(Math.Abs(result.Arrangement.Key.Signature), 0, 6);
        }
        Assert.True(fitting >= 3, $"only {fitting} tunes fit");
    }

    [Fact]
    public void A_trio_a_fourth_higher_must_fit_too()
    {
        // Nine semitones, and from the same notes a fourth up fourteen.
        var tune = Tunes.Abc("M:2/4\nL:1/8\nK:C", "P:A\n\"C\"CEGA|\"C\"G2E2|\"G7\"G2E2|\"C\"C4|");
        var brief = Sung("C4-A4") with { Form = FormLine.Read("A trio:A", out _) };
        Assert.NotNull(Set(tune, brief with { Form = null }).Arrangement);
        var refused = Set(tune, brief).Refusal!.Message;
        Assert.Contains("the tune goes from C4 to D5 (14 semitones)", refused, StringComparison.Ordinal);
        Assert.Equal("D5", Set(tune, brief with { Singer = Sung("C4-D5").Singer }).Arrangement!.SungHighest.ToString());
    }

    [Fact]
    public void A_key_asked_for_in_which_the_voice_cannot_sing_it_is_refused_with_one_in_which_it_can()
    {
        var tune = Tunes.Abc("M:2/4\nL:1/8\nK:C", "\"C\"CEGA|\"C\"G2E2|\"G7\"G2E2|\"C\"C4|");
        var result = Set(tune, Sung("A3-F#4") with { Tonic = Tone.Parse("F") });
        Assert.Contains("in A it is", result.Refusal!.Message, StringComparison.Ordinal);
        Assert.NotNull(Set(tune, Sung("A3-F#4") with { Tonic = Tone.Parse("A") }).Arrangement);
    }

    [Fact]
    public void Without_a_range_the_tune_is_sung_where_it_is_written()
    {
        var tune = Tunes.Abc("M:2/4\nL:1/8\nK:C", "\"C\"CEGA|\"C\"G2E2|\"G7\"G2E2|\"C\"C4|");
        var arrangement = Set(tune, new Brief { Singer = new Singer() }).Arrangement!;
        Assert.Equal(
            ("C4", "A4", "C major"),
            (arrangement.SungLowest.ToString(), arrangement.SungHighest.ToString(), arrangement.Key.ToString())
        );
    }

    [Fact]
    public void Chords_alone_cannot_be_sung() =>
        Assert.Contains(
            "no notes to be sung",
            Set(
                Tunes.Abc("M:2/4\nL:1/8\nK:C", "\"C\"z4|\"G7\"z4|\"C\"z4|"),
                new Brief { Singer = new Singer() }
            ).Refusal!.Message,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("A3-D5", "A3-D5")]
    [InlineData(" Bb2 - F#4", "Bb2-F#4")]
    [InlineData("D5-A3", null)]
    [InlineData("A3-A3", null)]
    [InlineData("A3", null)]
    [InlineData("A3-", null)]
    [InlineData("A-1-D5", null)]
    [InlineData("A3-D9", null)]
    [InlineData("low-high", null)]
    public void A_range_is_two_notes_the_lower_first(string text, string? read)
    {
        Assert.Equal(read is not null, VocalRange.TryRead(text, out var range, out var problem));
        Assert.Equal(read, range?.ToString());
        Assert.Equal(read is null, problem.Contains("A3-D5", StringComparison.Ordinal));
    }

    private static ArrangeResult Set(Tune tune, Brief brief) =>
        Arranger.Arrange(tune, brief, TestContext.Current.CancellationToken);

    private static Brief Sung(string range)
    {
        Assert.True(VocalRange.TryRead(range, out var read, out _));
        return new Brief { Singer = new Singer(read) };
    }
}
