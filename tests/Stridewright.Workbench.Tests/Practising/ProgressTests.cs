using System.Text;
using Stridewright.Workbench.Practising;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Workbench.Tests.Practising;

public sealed class ProgressTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;

    // Nine in the evening in a zone an hour east of Greenwich.
    private static readonly DateTimeOffset Now = new(2026, 3, 11, 21, 0, 0, TimeSpan.FromHours(1));

    private readonly TemporaryFolder _folder = new();
    private readonly ShelfDesk _shelf;

    public ProgressTests() => _shelf = ShelfDesk.Take(_folder["data"]);

    public void Dispose()
    {
        _shelf.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public async Task A_teacher_sees_every_player_and_a_player_theirs()
    {
        var (ada, _) = await Played();
        var report = await _shelf.Progress.Of(null, Now, None);
        Assert.Equal(new DateOnly(2026, 3, 11), report.Today);
        Assert.Equal(["=Ben", "Ada", ""], report.Players.Select(p => p.Name));
        Assert.Equal([0, 2, 1], report.Players.Select(p => p.Takes)); // from 5 to 11 March
        var piece = Assert.Single(report.Players[1].Pieces);
        Assert.Equal((3, 84.0, 90.0), (piece.Takes, piece.TempoReached, piece.AskedTempo));
        Assert.Equal(["the whole piece", "bars 5-12, the left hand alone"], piece.Items.Select(i => i.What));
        // Clean on the 9th and on the 10th: due on the 12th; the bars, not clean on the 2nd, since the 3rd.
        Assert.Equal(["The Ferry Bell: bars 5-12, the left hand alone"], report.Players[1].Due);
        Assert.Equal([new DateOnly(2026, 3, 12), new DateOnly(2026, 3, 3)], piece.Items.Select(i => i.Due));

        var own = await _shelf.Progress.Of(ada.Id, Now, None);
        Assert.Equal([report.Players[1]], own.Players);
        var missing = await Assert.ThrowsAsync<ShelfRefusedException>(() => _shelf.Progress.Of("nobody", Now, None));
        Assert.True(missing.IsMissing);
    }

    [Fact]
    public async Task A_take_counts_for_the_day_on_which_it_was_played_there()
    {
        var ada = await _shelf.Players.Named("Ada", None);
        // Half past eleven at night in Greenwich is the next day an hour further east.
        var late = new DateTimeOffset(2026, 3, 8, 23, 30, 0, TimeSpan.Zero);
        await _shelf.Takes.Save(KeptTakes.Of(ada, 1) with { At = late, Heard = KeptTakes.Heard }, None);
        var piece = (await _shelf.Progress.Of(null, Now, None)).Players[0].Pieces[0];
        Assert.Equal(new DateOnly(2026, 3, 9), piece.First);
        Assert.Equal(new DateOnly(2026, 3, 9), piece.Weeks[0].Week); // a Monday
    }

    [Fact]
    public async Task The_table_has_a_line_for_each_week_and_no_cell_that_a_spreadsheet_would_run()
    {
        await Played();
        var csv = Encoding.UTF8.GetString(ProgressCsv.Of(await _shelf.Progress.Of(null, Now, None)));
        Assert.Equal(
            """
            player,piece,week,takes,days,cleanness,tempo_reached,tempo_asked,unevenness,due_today
            "'=Ben","Market, Day",2026-03-02,1,1,0.882,,90,0.05,1
            Ada,The Ferry Bell,2026-03-02,1,1,0.882,,90,0.05,1
            Ada,The Ferry Bell,2026-03-09,2,2,1,84,90,0.05,1
            ,The Ferry Bell,2026-03-09,1,1,0.882,,90,0.05,0

            """.ReplaceLineEndings("\r\n"),
            csv
        );
    }

    [Theory]
    // OWASP, CSV Injection: these begin a formula. RFC 4180, 2.5 to 2.7: quotes.
    [InlineData("=1+1", "\"'=1+1\"")]
    [InlineData("+49 30", "\"'+49 30\"")]
    [InlineData("-Ada", "\"'-Ada\"")]
    [InlineData("@Ada", "\"'@Ada\"")]
    [InlineData("\tAda", "\"'\tAda\"")]
    [InlineData("  =cmd|' /C calc'!A0", "\"'  =cmd|' /C calc'!A0\"")]
    [InlineData("＝1", "\"'＝1\"")]
    [InlineData("the \"Bell\"", "\"the \"\"Bell\"\"\"")]
    [InlineData("a,b", "\"a,b\"")]
    [InlineData("Ada-Maria", "Ada-Maria")]
    public void Cells_are_quoted(string text, string cell) => Assert.Equal(cell, ProgressCsv.Cell(text));

    [Fact]
    public async Task Who_is_forgotten_is_gone_and_it_is_said_what_is_not()
    {
        var (ada, _) = await Played();
        var gone = await _shelf.Progress.Forget(ada.Id, None);
        Assert.Equal(("Ada", 4), (gone.Name, gone.Takes));
        Assert.Contains("Backups", gone.Message, StringComparison.Ordinal);
        Assert.Equal(["=Ben", ""], (await _shelf.Progress.Of(null, Now, None)).Players.Select(p => p.Name));
    }

    private async Task<(ShelvedPlayer Ada, ShelvedPlayer Ben)> Played()
    {
        var (ada, ben) = (await _shelf.Players.Named("Ada", None), await _shelf.Players.Named("=Ben", None));
        var clean = KeptTakes.Heard with { Right = 100, Wrong = 0, Missing = 0, Extra = 0, QuartersPerMinute = 80 };
        KeptTake[] takes =
        [
            KeptTakes.Of(ada, 2) with
            {
                Heard = KeptTakes.Heard,
                Range = "5-12",
                Hand = "left",
            },
            KeptTakes.Of(ada, 9) with
            {
                Heard = clean,
            },
            KeptTakes.Of(ada, 10) with
            {
                Heard = clean with { QuartersPerMinute = 84 },
            },
            KeptTakes.Of(ada, 11), // still being played: nothing is known of it
            KeptTakes.Of(ben, 4) with
            {
                Heard = KeptTakes.Heard,
                Title = "Market, Day",
            },
            KeptTakes.Of(ben, 11) with
            {
                PlayerId = null,
                PlayerName = "",
                Heard = KeptTakes.Heard,
            },
        ];
        foreach (var take in takes)
        {
            await _shelf.Takes.Save(take, None);
        }
        return (ada, ben);
    }
}
