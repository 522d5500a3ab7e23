using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging.Tests.LeftHand;

/// <summary>Asked manners of the left hand, checked from the score. Figures: common practice.</summary>
public sealed class MannerTests
{
    private static readonly Tune Tune = Tunes.Abc(
        "M:2/4\nL:1/8\nK:C",
        "\"C\"c2e2|\"F\"a2f2|\"G7\"g2f2|\"C\"efga|\"F\"a2f2|\"G7\"g2d2|\"G7\"f2d2|\"C\"c4|]"
    );

    [Theory]
    [InlineData(185)]
    [InlineData(205)]
    [InlineData(230)]
    public void Walking_octaves_go_by_step_into_the_next_root_or_it_is_told(int span)
    {
        var (lows, fellBack) = Lows(LeftManner.WalkingOctaves, span);
        // The fourth bar walks; the fifth bar's root is where it goes.
        var line = lows[3].Append(lows[4][0]).ToList();
        Assert.True(
            fellBack || line.Count >= 5 && line.Zip(line.Skip(1)).All(p => Math.Abs(p.First - p.Second) is 1 or 2),
            string.Join(' ', line)
        );
    }

    [Theory]
    [InlineData(185)]
    [InlineData(205)]
    [InlineData(230)]
    public void A_contrary_run_goes_against_the_tune_or_it_is_told(int span)
    {
        var (lows, fellBack) = Lows(LeftManner.ContraryRun, span);
        Assert.True(fellBack || lows[3].Zip(lows[3].Skip(1)).All(p => p.Second < p.First), string.Join(' ', lows[3]));
    }

    [Fact]
    public void A_low_pedal_holds_one_bass_through_changing_chords()
    {
        var (lows, _) = Lows(LeftManner.LowPedal, 205);
        Assert.Equal(lows[0][0], lows[1][0]);
        Assert.Equal(lows[0][0], lows[1][2]);
    }

    [Fact]
    public void Every_manner_has_its_word()
    {
        Assert.Equal(Enum.GetValues<LeftManner>().Order(), Manners.Left.Values.Order());
        Assert.Equal(Enum.GetValues<RightManner>().Order(), Manners.Right.Values.Order());
        Assert.Empty(Manners.Left.Keys.Intersect(Manners.Right.Keys));
    }

    private static (List<List<int>> Lows, bool FellBack) Lows(LeftManner manner, double span)
    {
        var brief = new Brief
        {
            Feel = Feel.Classic,
            LeftManners = [manner],
            Hands = new PlayerHands { SpanMm = span },
        };
        var result = Arranger.Arrange(Tune, brief, TestContext.Current.CancellationToken);
        var made = result.Arrangement!;
        Assert.True(made.Verdict.IsPlayable);
        var lows = made
            .Score.Bars.Select(b =>
                b.Voices.Where(v => v.Hand == Hand.Left)
                    .SelectMany(v => v.Events)
                    .Where(e => e.Notes.Count > 0)
                    .OrderBy(e => e.At)
                    .Select(e => e.Notes.Min(n => n.Pitch.Midi))
                    .ToList()
            )
            .ToList();
        return (lows, made.Notes.Any(n => n.Message.Contains("as asked", StringComparison.Ordinal)));
    }
}
