using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Tests;

public sealed class CheckScoreTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_playable_score_is_called_so()
    {
        var report = Check(new FakeTools(), new CheckRequest { Score = ScoreFile() });
        Assert.Equal(CheckOutcome.Playable, report.Outcome);
        Assert.Equal(2, report.Score!.Bars);
    }

    [Fact]
    public void Every_spot_is_told_with_its_bar_and_by_how_much()
    {
        var fault = new Fault(FaultKind.RolledTooWide, Hand.Left, 1, "bar 2 beat 1", 240, 201.5, "too wide");
        var tools = new FakeTools { Judging = _ => new Verdict([fault], FakeTools.EffortOf(80)) };
        var report = Check(tools, new CheckRequest { Score = ScoreFile() });
        Assert.Equal(CheckOutcome.NotPlayable, report.Outcome);
        Assert.Equal(
            new UnplayableSpot("2", "bar 2 beat 1", "left", "rolled-too-wide", 240, 201.5, 38.5, "too wide"),
            Assert.Single(report.Score!.Spots)
        );
    }

    [Fact]
    public void Hands_and_tempo_reach_the_judge()
    {
        var tools = new FakeTools();
        Check(
            tools,
            new CheckRequest
            {
                Score = ScoreFile(),
                Span = "185",
                BeatsPerMinute = 72,
            }
        );
        Assert.Contains("judge 185 72", tools.Calls);
    }

    [Theory]
    [InlineData("tune.abc", "X:1\nK:C\n", "not a two-staff score")]
    [InlineData("empty.xml", "", "empty")]
    [InlineData("take.mid", "MThd", "no MusicXML score")]
    public void What_is_no_score_is_refused_with_a_reason(string name, string content, string reason)
    {
        var report = Check(new FakeTools(), new CheckRequest { Score = _folder.Put(name, content) });
        Assert.Equal(CheckOutcome.Unreadable, report.Outcome);
        Assert.Contains(reason, Assert.Single(report.Problems).Message);
    }

    [Fact]
    public void A_missing_score_and_a_folder_are_refused()
    {
        Assert.Contains("no such file", Message(_folder["missing.xml"]));
        Assert.Contains("is a folder", Message(_folder.Root));
        string Message(string path) =>
            Assert.Single(Check(new FakeTools(), new CheckRequest { Score = path }).Problems).Message;
    }

    [Fact]
    public void A_bad_wish_is_told_before_the_score_is_opened()
    {
        var report = Check(new FakeTools(), new CheckRequest { Score = _folder["missing.xml"], Span = "x" });
        Assert.Equal(CheckOutcome.BadWish, report.Outcome);
        Assert.Equal("span", Assert.Single(report.Problems).File);
    }

    private string ScoreFile() => _folder.Put("score.musicxml", "<score-partwise/>");

    private static CheckReport Check(FakeTools tools, CheckRequest request) =>
        new UseCases(tools).Check(request, TestContext.Current.CancellationToken);
}
