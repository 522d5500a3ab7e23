using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging.Tests.RightHand;

/// <summary>What the right hand is asked for bar by bar, held against the definition of each manner (common practice).
/// </summary>
public sealed class RightMannerTests
{
    private const int First = 4,
        Last = 7;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static TheoryData<double> Spans => [185, 205, 230];

    [Theory]
    [MemberData(nameof(Spans))]
    public void A_plain_bar_has_the_tune_as_it_stands_and_nothing_else(double span)
    {
        foreach (var tune in Tunes.Samples)
        {
            var (lattice, line) = Set(tune, RightManner.Plain, span, 5);
            foreach (var note in line.Notes.Where(n => IsAsked(lattice, n.Tick)))
            {
                Assert.False(note.IsFiller);
                Assert.Equal(lattice.Notes[note.Tune].Start, note.Tick);
            }
            Assert.Equal(lattice.Notes.Length, line.Notes.Count(n => !n.IsFiller));
        }
    }

    [Theory]
    [InlineData(RightManner.Thirds, 3, 4, 185)]
    [InlineData(RightManner.Thirds, 3, 4, 205)]
    [InlineData(RightManner.Thirds, 3, 4, 230)]
    [InlineData(RightManner.Sixths, 8, 9, 185)]
    [InlineData(RightManner.Sixths, 8, 9, 205)]
    [InlineData(RightManner.Sixths, 8, 9, 230)]
    [InlineData(RightManner.Octaves, 12, 12, 185)]
    [InlineData(RightManner.Octaves, 12, 12, 205)]
    [InlineData(RightManner.Octaves, 12, 12, 230)]
    [InlineData(RightManner.FullOctaves, 12, 12, 185)]
    [InlineData(RightManner.FullOctaves, 12, 12, 205)]
    [InlineData(RightManner.FullOctaves, 12, 12, 230)]
    public void An_asked_texture_is_there_at_a_low_level_or_the_bar_is_told(
        RightManner manner,
        int near,
        int far,
        double span
    )
    {
        int asked = 0,
            fell = 0;
        foreach (var tune in Tunes.Samples)
        {
            var (lattice, line) = Set(tune, manner, span, 2);
            var reach = new Reach(new PlayerHands { SpanMm = span });
            Assert.Equal(lattice.Notes.Length, line.Notes.Count(n => !n.IsFiller));
            var told = RightPlayed.FellBack(lattice, line, new LeftLine([], 0, 0, 0)).ToHashSet();
            foreach (
                var bar in line
                    .Notes.Where(n => !n.IsFiller && IsAsked(lattice, n.Tick))
                    .GroupBy(n => lattice.BarAt(n.Tick))
            )
            {
                var done = bar.Count(n => n.Top.Midi - n.Lowest >= near && n.Top.Midi - n.Lowest <= far);
                Assert.Equal(2 * done < bar.Count(), told.Contains(bar.Key));
                Assert.All(bar, n => Assert.NotEqual(Stretch.Out, reach.Of(n.Lowest, n.Top.Midi)));
                asked++;
                fell += told.Contains(bar.Key) ? 1 : 0;
            }
        }
        TestContext.Current.TestOutputHelper?.WriteLine($"{manner} {span}: {fell} of {asked} bars fell back");
        Assert.True(asked > 0);
        Assert.True(span < 205 || 2 * fell < asked, $"{fell} of {asked} bars fell back");
    }

    [Fact]
    public void A_call_has_no_fillers_a_silent_bar_nothing_and_fills_no_tune()
    {
        foreach (var tune in Tunes.Samples)
        {
            var (lattice, call) = Set(tune, RightManner.Call, 205, 5);
            Assert.DoesNotContain(call.Notes, n => n.IsFiller && IsAsked(lattice, n.Tick));
            var (_, silent) = Set(tune, RightManner.Silent, 205, 5);
            Assert.DoesNotContain(silent.Notes, n => IsAsked(lattice, n.Tick));
            var (_, fills) = Set(tune, RightManner.FillsOnly, 205, 5);
            Assert.DoesNotContain(fills.Notes, n => !n.IsFiller && IsAsked(lattice, lattice.Notes[n.Tune].Start));
        }
    }

    [Fact]
    public void Asked_crushed_notes_come_at_a_low_level_and_slide_from_black_to_white()
    {
        var found = 0;
        foreach (var tune in Tunes.Samples)
        {
            var (lattice, line) = Set(tune, RightManner.CrushedNotes, 205, 2);
            foreach (var note in line.Notes.Where(n => n.Crushed is not null))
            {
                Assert.True(IsAsked(lattice, note.Tick));
                Assert.True(Keyboard.IsBlack(note.Crushed!.Value.Midi));
                Assert.Equal(note.Top.Midi - 1, note.Crushed.Value.Midi);
                found++;
            }
        }
        Assert.True(found > 0);
    }

    private static bool IsAsked(Lattice lattice, int tick) =>
        lattice.Bars[lattice.BarAt(tick)].Treatment.Right != RightManner.Ragged;

    private static (Lattice Lattice, RightLine Line) Set(Tune tune, RightManner manner, double span, int level)
    {
        var brief = new Brief
        {
            RightLevel = level,
            LeftLevel = level,
            Hands = new PlayerHands { SpanMm = span },
        };
        var metre = Feels.MainMetre(tune);
        var piece = new Setting(tune, brief, Feels.For(metre), metre, Prices.Standard).Plan().Piece;
        var asked = piece.Treatments.Select((t, i) => i is >= First and <= Last ? t with { Right = manner } : t);
        var lattice = LatticeReader.Read(piece with { Treatments = asked.ToValueList() }, Feels.For(metre));
        var homes = HomePositions.Find(lattice, new Reach(brief.Hands), Cancel);
        var stage = new Stage(lattice, brief, Prices.Standard, 0.08);
        var ragged = Ragging.Solve(lattice, brief, Prices.Standard.Ragging, Cancel);
        var line = Filling.Solve(stage, ragged, homes, Cancel);
        return (lattice, Crushing.Add(stage, Texturing.Solve(stage, line, homes, 1200, new HashSet<int>(), Cancel)));
    }
}
