using Stridewright.Arranging;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Tests;

/// <summary>Lines of chords as an input without a file, and settings in all keys.</summary>
public sealed class ChordsAndKeysTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Chords_are_set_for_the_left_hand_in_the_metre_of_the_feel()
    {
        var briefs = new List<Brief>();
        var tools = Recording(briefs);
        var report = Run(tools, Chords("F | C7") with { Wishes = new Wishes { Feel = "stride" } });
        Assert.Equal(ArrangeOutcome.AllWritten, report.Outcome);
        Assert.Contains("chords F | C7 Stride Left hand", tools.Calls);
        Assert.True(Assert.Single(briefs).LeftHandOnly);
    }

    [Theory]
    [InlineData("F | C7", null, "left-hand-f-c7")]
    [InlineData("F#m7 | B♭", null, "left-hand-f-sharp-m7-bb")]
    [InlineData("F | C7", "Way Home", "way-home")]
    [InlineData("F | C7", "!", "left-hand")]
    public void The_page_is_named_by_its_title_or_its_chords(string line, string? title, string name)
    {
        Run(new FakeTools(), Chords(line) with { Title = title });
        Assert.Equal([$"{name}.mid", $"{name}.musicxml", $"{name}.pdf"], _folder.Files("out"));
    }

    [Fact]
    public void A_fault_in_the_chords_is_told_with_its_place()
    {
        var report = Run(new FakeTools(), Chords("F ?"));
        Assert.Equal(ArrangeOutcome.NothingWritten, report.Outcome);
        Assert.Equal(new Problem("chords", null, "column 3", "no chord"), Assert.Single(report.Problems));
    }

    [Fact]
    public void All_keys_are_a_set_of_files_each_and_a_booklet()
    {
        var briefs = new List<Brief>();
        var report = Run(Recording(briefs), Chords("C") with { Title = "T", AllKeys = true });
        Assert.Equal("C F Bb Eb Ab Db Gb B E A D G", string.Join(' ', briefs.Select(b => b.Tonic)));
        Assert.Equal(12, report.Written.Count);
        Assert.Equal(37, _folder.Files("out").Length);
        Assert.Contains("t.B-flat.musicxml", _folder.Files("out"));
        Assert.Equal("booklet of T, 24 pages on A4", File.ReadAllText(_folder["out/t.all-keys.pdf"]));
        Assert.EndsWith("t.all-keys.pdf", report.Written[^1].Outputs[^1].Path, StringComparison.Ordinal);
    }

    [Fact]
    public void A_key_that_is_refused_does_not_cost_the_others_theirs()
    {
        var tools = new FakeTools
        {
            Arranging = (tune, brief) =>
                brief.Tonic?.ToString() == "Eb" ? FakeTools.Refused("too wide") : FakeTools.Done(tune, brief),
        };
        var report = Run(tools, Chords("C") with { Title = "T", AllKeys = true });
        Assert.Equal(ArrangeOutcome.SomeWritten, report.Outcome);
        Assert.Equal(11, report.Written.Count);
        Assert.Equal("booklet of T, 22 pages on A4", File.ReadAllText(_folder["out/t.all-keys.pdf"]));
    }

    [Fact]
    public void Tunes_are_set_in_all_keys_too()
    {
        var path = _folder.Put("ferry.abc", "X:1\nT:Ferry\nK:C\n");
        var report = Run(
            new FakeTools(),
            new ArrangeRequest
            {
                Tunes = [path],
                AllKeys = true,
                Formats = [OutputFormat.MusicXml],
            }
        );
        Assert.Equal(12, report.Written.Count);
        Assert.Equal(12, _folder.Files("out").Length);
        Assert.Contains("ferry.D-flat.musicxml", _folder.Files("out"));
    }

    public static TheoryData<ArrangeRequest, string, string> Contradictions =>
        new()
        {
            {
                new ArrangeRequest { Tunes = ["a.abc"], Chords = "F" },
                "chords",
                "not both"
            },
            {
                new ArrangeRequest { Tunes = ["a.abc"], Title = "T" },
                "title",
                "line of chords only"
            },
            {
                new ArrangeRequest
                {
                    Tunes = ["a.abc"],
                    AllKeys = true,
                    Wishes = new Wishes { Key = "F" },
                },
                "all-keys",
                "leave the key out"
            },
        };

    [Theory]
    [MemberData(nameof(Contradictions))]
    public void Wishes_that_contradict_each_other_are_told(ArrangeRequest request, string wish, string message)
    {
        var report = Run(new FakeTools(), request);
        Assert.Equal(ArrangeOutcome.BadWish, report.Outcome);
        var problem = Assert.Single(report.Problems);
        Assert.Equal(wish, problem.File);
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
    }

    private static FakeTools Recording(List<Brief> briefs) =>
        new()
        {
            Arranging = (tune, brief) =>
            {
                briefs.Add(brief);
                return FakeTools.Done(tune, brief);
            },
        };

    private static ArrangeRequest Chords(string line) => new() { Tunes = [], Chords = line };

    private ArrangeReport Run(FakeTools tools, ArrangeRequest request)
    {
        using var useCases = new UseCases(tools);
        return useCases.Arrange(
            request with
            {
                OutputFolder = _folder["out"],
            },
            null,
            TestContext.Current.CancellationToken
        );
    }
}
