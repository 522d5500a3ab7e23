using Stridewright.Testing;
using Stridewright.Workbench;
using Stridewright.Workbench.Handouts;
using Stridewright.Workbench.Reports;

namespace Stridewright.Cli.Tests;

public sealed class HandoutCommandTests : IDisposable
{
    private static readonly string Ferry = Path.Combine(Corpus.CheckoutRoot, "samples", "ferry-bell.abc");
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("stridewright-handout-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void Options_become_a_request()
    {
        var fake = new FakeUseCases();
        string[] options =
        [
            .. new[] { "--bars", "5-8", "--items", "plain, keyboard", "--levels", "2,4", "--keyboard", "5,6" },
            .. new[]
            {
                "--staves",
                "3",
                "--pupil",
                "",
                "--free",
                "--paper",
                "letter",
                "--level",
                "3",
                "--out",
                "x.pdf",
            },
        ];
        var run = CliRun.Of(fake, ["handout", "rag.stridewright", .. options]);
        Assert.Equal((0, ""), (run.ExitCode, run.Error));
        Assert.Equal(
            new HandoutRequest
            {
                File = "rag.stridewright",
                Out = "x.pdf",
                Paper = Paper.Letter,
                Wishes = new Wishes { Level = 3 },
                Wish = new HandoutWish
                {
                    Bars = "5-8",
                    Items = ["plain", "keyboard"],
                    Levels = [2, 4],
                    Keyboard = ["5", "6"],
                    Staves = 3,
                    Pupil = "",
                    Free = true,
                },
            },
            fake.AskedToHandOut
        );
    }

    [Fact]
    public void What_is_wrong_is_told_with_its_option()
    {
        var problem = new Problem("bars", null, "", "no such bars");
        var fake = new FakeUseCases
        {
            HandoutAnswer = new()
            {
                File = "a",
                Problems = [problem],
                IsBadWish = true,
            },
        };
        var run = CliRun.Of(fake, "handout", "a", "--out", "x.pdf");
        Assert.Equal((2, "--bars: no such bars\n"), (run.ExitCode, run.Error));
        Assert.Equal(2, CliRun.Of(fake, "handout", "a", "--levels", "x", "--out", "x.pdf").ExitCode);
        Assert.Equal(2, CliRun.Of(fake, "handout", "a").ExitCode);
    }

    [Theory]
    [InlineData("plain,keyboard,reasons,staves", "a.pdf")]
    [InlineData("levels,hands", "b.png")]
    [InlineData("score", "c.svg")]
    public void It_is_made_of_a_tune_the_same_each_time(string items, string name)
    {
        using var cases = UseCases.Open();
        var request = new HandoutRequest
        {
            File = Ferry,
            Out = Path.Combine(_folder.FullName, name),
            Wish = new HandoutWish { Bars = "5-8", Items = [.. items.Split(',')] },
        };
        var first = cases.Handout(request, TestContext.Current.CancellationToken);
        Assert.Empty(first.Problems);
        Assert.False(Assert.Single(first.Outputs).Unchanged);
        Assert.True(Assert.Single(cases.Handout(request, TestContext.Current.CancellationToken).Outputs).Unchanged);
    }

    [Theory]
    [InlineData("8-5", "score", "bars", "no range of bars")]
    [InlineData("5-8", "score,hats", "items", "'hats'")]
    [InlineData("5-8", "text", "text", "own words")]
    public void A_wish_that_cannot_be_is_named(string bars, string items, string wish, string says)
    {
        using var cases = UseCases.Open();
        var report = cases.Handout(
            new HandoutRequest
            {
                File = Ferry,
                Out = Path.Combine(_folder.FullName, "x.pdf"),
                Wish = new HandoutWish { Bars = bars, Items = [.. items.Split(',')] },
            },
            TestContext.Current.CancellationToken
        );
        var problem = Assert.Single(report.Problems);
        Assert.True(report.IsBadWish);
        Assert.Equal(wish, problem.File);
        Assert.Contains(says, problem.Message);
        Assert.Empty(_folder.EnumerateFiles());
    }

    [Fact]
    public void What_is_too_much_for_a_page_says_what_to_leave_out()
    {
        using var cases = UseCases.Open();
        var report = cases.Handout(
            new HandoutRequest
            {
                File = Ferry,
                Out = Path.Combine(_folder.FullName, "x.pdf"),
                Wish = new HandoutWish { Items = ["score", "staves"], Staves = 8 },
            },
            TestContext.Current.CancellationToken
        );
        Assert.Contains("leave out", Assert.Single(report.Problems).Message);
    }
}
