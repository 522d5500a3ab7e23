using Stridewright.Music;
using Stridewright.Practice.Progress;

namespace Stridewright.Practice.Tests.Progress;

/// <summary>Values are reckoned by hand from the takes that stand here.</summary>
public sealed class ProgressReckoningTests
{
    private static readonly PracticeItem Whole = new("p", "The Ferry Bell");

    [Fact]
    public void Weeks_begin_on_monday_and_have_the_median_of_their_takes()
    {
        // 2 March 2026 is a Monday, 8 March a Sunday (ISO 8601 calendar).
        var piece = Reckoned(
            Take(8, right: 98),
            Take(2, right: 90),
            Take(4, right: 80, unevenness: 0.05),
            Take(9, right: 99, tempo: 70, unevenness: 0.03)
        );
        Assert.Equal([new(2026, 3, 2), new DateOnly(2026, 3, 9)], piece.Weeks.Select(w => w.Monday));
        Assert.Equal((3, 3), (piece.Weeks[0].Takes, piece.Weeks[0].Days));
        Assert.Equal(0.90, piece.Weeks[0].Cleanness, 1e-9); // of 0.80, 0.90 and 0.98
        Assert.Equal(0.05, piece.Weeks[0].Unevenness);
        Assert.Equal(60, piece.Weeks[0].TempoReached); // of the one clean take
        Assert.Equal(
            (0.99, 70, 0.03),
            (piece.Weeks[1].Cleanness, piece.Weeks[1].TempoReached, piece.Weeks[1].Unevenness)
        );
        Assert.Equal((new DateOnly(2026, 3, 2), new DateOnly(2026, 3, 9)), (piece.First, piece.Last));
    }

    [Fact]
    public void Extra_notes_count_against_a_take()
    {
        Assert.Equal(0.9, (Take(2, right: 99) with { Extra = 10 }).Cleanness, 1e-9); // 99 of 110
        Assert.Equal(0, (Take(2, right: 0) with { Asked = 0 }).Cleanness);
    }

    [Fact]
    public void The_tempo_reached_is_that_of_the_fastest_clean_take_of_the_whole_piece()
    {
        var piece = Reckoned(
            Take(2, right: 99, tempo: 60),
            Take(3, right: 97, tempo: 90), // two wrong too many
            Take(4, right: 100, tempo: 80) with
            {
                BarsNotPlayed = 2,
            }, // of 16: less than nine tenths
            Take(5, right: 100, tempo: 100) with
            {
                Item = Whole with { Hand = Hand.Left },
            },
            Take(6, right: 100, tempo: 72)
        );
        Assert.Equal(72, piece.TempoReached);
        Assert.Equal(100, piece.Items.Single(i => i.Item.Hand == Hand.Left).TempoReached);
        Assert.Null(Reckoned(Take(2, right: 90)).TempoReached);
    }

    [Fact]
    public void What_is_clean_day_after_day_comes_back_later_and_later()
    {
        // 1, 2, 4, 8, 16 days, then four weeks; a day that was not clean begins anew.
        var last = new DateOnly(2026, 3, 10);
        Assert.Equal(
            [11, 11, 12, 14, 18, 26],
            Enumerable.Range(0, 6).Select(days => ProgressReckoning.Due(last, days).Day)
        );
        Assert.Equal(last.AddDays(28), ProgressReckoning.Due(last, 6));
        Assert.Equal(last.AddDays(28), ProgressReckoning.Due(last, 4000));

        var piece = Reckoned(Take(2, 90), Take(3, 99), Take(3, 80), Take(5, 99));
        Assert.Equal((2, new DateOnly(2026, 3, 7)), (piece.Items[0].CleanDays, piece.Items[0].Due));
        var lost = Reckoned(Take(3, 99), Take(5, 99), Take(6, 90));
        Assert.Equal((0, new DateOnly(2026, 3, 7)), (lost.Items[0].CleanDays, lost.Items[0].Due));
    }

    [Fact]
    public void It_is_due_from_its_day_on_unless_it_was_left_aside()
    {
        Assert.False(On(2).IsDue);
        Assert.True(On(3).IsDue);
        Assert.True(On(2 + 90).IsDue);
        Assert.False(On(2 + 91).IsDue);

        static ItemProgress On(int day) =>
            ProgressReckoning.Of([Take(2, 90)], new DateOnly(2026, 3, 1).AddDays(day - 1))[0].Items[0];
    }

    [Fact]
    public void A_piece_that_got_another_title_is_the_same_piece()
    {
        var piece = Reckoned(Take(2, 90), Take(3, 90) with { Item = Whole with { Title = "The Ferry Bell, at last" } });
        Assert.Equal("The Ferry Bell, at last", piece.Title);
        Assert.Single(piece.Items);
    }

    [Fact]
    public void The_order_in_which_takes_come_does_not_matter_and_none_is_lost()
    {
        var chance = new Random(20260302);
        Hand?[] hands = [null, Hand.Left, Hand.Right];
        for (var round = 0; round < 300; round++)
        {
            var takes = Enumerable
                .Range(0, 1 + chance.Next(30))
                .Select(i =>
                    Take(1 + chance.Next(28), chance.Next(101), 40 + chance.Next(80)) with
                    {
                        Item = Whole with { Hand = hands[chance.Next(3)], Piece = chance.Next(4) == 0 ? "q" : "p" },
                    }
                )
                .Select((take, i) => take with { At = take.At.AddMinutes(i) })
                .ToList();
            var today = new DateOnly(2026, 4, 1);
            var reckoned = ProgressReckoning.Of(takes, today);
            Assert.Equal(reckoned, ProgressReckoning.Of(Enumerable.Reverse(takes), today));
            Assert.Equal(takes.Count, reckoned.Sum(p => p.Takes));
            Assert.Equal(takes.Count, reckoned.Sum(p => p.Weeks.Sum(w => w.Takes)));
            Assert.Equal(takes.Count, reckoned.Sum(p => p.Items.Sum(i => i.Takes)));
            Assert.All(
                reckoned.SelectMany(p => p.Items),
                i => Assert.InRange(i.Due.DayNumber - i.Last.DayNumber, 1, 28)
            );
        }
    }

    private static PieceProgress Reckoned(params PastTake[] takes) =>
        Assert.Single(ProgressReckoning.Of(takes, new DateOnly(2026, 3, 31)));

    private static DateTimeOffset At(int day) => new(2026, 3, day, 9, 0, 0, TimeSpan.FromHours(1));

    /// <param name="day">Of March 2026.</param>
    /// <param name="right">Of a hundred.</param>
    private static PastTake Take(int day, int right, double? tempo = 60, double? unevenness = null) =>
        new()
        {
            At = At(day),
            Item = Whole,
            Asked = 100,
            Right = right,
            Extra = 0,
            Bars = 16,
            BarsNotPlayed = 0,
            Tempo = tempo,
            Unevenness = unevenness,
        };
}
