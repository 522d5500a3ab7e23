using Stridewright.Formats.MusicXml;
using Stridewright.Music;
using Stridewright.Testing;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Tests;

public sealed class FingerScoresTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Every_note_of_our_own_settings_gets_its_finger_and_the_score_is_valid()
    {
        var rag = Arranged("ferry-bell", level: 5);
        var report = Finger(rag);
        Assert.Empty(report.Problems);
        var file = Assert.Single(report.Written);
        Assert.Empty(file.Remarks);
        Assert.True(file.Notes > 100);
        Assert.Equal((file.Notes, file.Notes), (file.Fingered, file.Printed));
        using var document = File.OpenRead(_folder["out/ferry-bell.musicxml"]);
        Assert.Empty(MusicXmlSchema.Faults(document));
        // Written and read again, the music is the same but for the fingers.
        Assert.Equal(Bare(Read(rag)), Bare(Read(_folder["out/ferry-bell.musicxml"])));
        Assert.Equal(file.Printed, Fingers(Read(_folder["out/ferry-bell.musicxml"])).Count(f => f is not null));
    }

    [Fact]
    public void Fingers_that_are_written_stay_and_are_worked_again_when_that_is_asked_for()
    {
        Finger(Arranged("ferry-bell", level: 1));
        var first = File.ReadAllText(_folder["out/ferry-bell.musicxml"]);
        // The first note of the score, taken by the fourth finger instead.
        const string Mark = "<fingering placement=\"above\">";
        var at = first.IndexOf(Mark, StringComparison.Ordinal) + Mark.Length;
        var edited = _folder.Put("edited.musicxml", first[..at] + "4" + first[(at + 1)..]);
        Finger(edited);
        Assert.Equal(4, Fingers(Read(_folder["out/edited.musicxml"])).First(f => f is not null));
        var report = Run(
            new()
            {
                Scores = [edited],
                OutputFolder = _folder["anew"],
                Formats = [OutputFormat.MusicXml],
                Keep = "none",
            }
        );
        Assert.Empty(report.Problems);
        Assert.Equal(Fingers(Read(_folder["out/ferry-bell.musicxml"])), Fingers(Read(_folder["anew/edited.musicxml"])));
    }

    [Fact]
    public void The_same_score_gives_the_same_bytes_and_fewer_fingers_where_fewer_are_wanted()
    {
        var rag = Arranged("lamps-along-the-quay", level: 4);
        Finger(rag);
        Assert.True(Assert.Single(Finger(rag).Written).Outputs[0].Unchanged);
        var printed = new[] { "all", "changes", "hard" }
            .Select(density =>
                Run(
                    new()
                    {
                        Scores = [rag],
                        OutputFolder = _folder[density],
                        Formats = [OutputFormat.MusicXml],
                        Density = density,
                    }
                )
                    .Written[0]
                    .Printed
            )
            .ToList();
        Assert.True(
            printed[0] > 1.5 * printed[1] && printed[1] > printed[2] && printed[2] > 0,
            string.Join(" ", printed)
        );
    }

    [Fact]
    public void Files_and_folders_are_taken_and_what_fails_is_told_with_its_name()
    {
        _folder.Put("scores/a.musicxml", "<score/>");
        _folder.Put("scores/tune.abc", "X:1\nK:C\nC");
        File.Copy(Arranged("ferry-bell", level: 2), _folder["scores/b.musicxml"]);
        var report = Finger(_folder["scores"], _folder["none.musicxml"]);
        Assert.Equal(["b.musicxml"], report.Written.Select(w => Path.GetFileName(w.File)));
        Assert.Equal(["none.musicxml", "a.musicxml"], report.Problems.Select(p => Path.GetFileName(p.File)));
        Assert.Equal(["b.musicxml"], _folder.Files("out"));
    }

    [Fact]
    public void A_wish_that_is_no_wish_begins_nothing()
    {
        var report = Run(
            new()
            {
                Scores = [Arranged("ferry-bell", level: 2)],
                OutputFolder = _folder["out"],
                Density = "some",
            }
        );
        Assert.True(report.IsBadWish);
        Assert.Equal(
            new Problem("density", null, "", "'some' is no density of fingers: choose all, changes or hard"),
            Assert.Single(report.Problems)
        );
        Assert.Empty(_folder.Files("out"));
    }

    [Fact]
    public void The_score_itself_is_never_replaced()
    {
        var rag = Arranged("ferry-bell", level: 2);
        var before = File.ReadAllBytes(rag);
        var report = Run(
            new()
            {
                Scores = [rag],
                OutputFolder = Path.GetDirectoryName(rag)!,
                Formats = [OutputFormat.MusicXml],
                Replace = true,
            }
        );
        Assert.Contains("would replace", Assert.Single(report.Problems).Message);
        Assert.Equal(before, File.ReadAllBytes(rag));
    }

    [Fact]
    public void Costs_are_told_by_bar_and_hand_with_their_sources()
    {
        var file = Assert.Single(Finger(Arranged("ferry-bell", level: 5)).Written);
        Assert.All(file.Costs, bar => Assert.Equal(bar.Cost, bar.Terms.Sum(t => t.Cost), 0.1));
        Assert.Contains(file.Costs, bar => bar.Hand == "left");
        Assert.All(file.Costs.SelectMany(b => b.Terms), t => Assert.NotEmpty(t.Source));
    }

    private FingerReport Finger(params string[] scores) =>
        Run(
            new()
            {
                Scores = scores.ToValueList(),
                OutputFolder = _folder["out"],
                Formats = [OutputFormat.MusicXml],
            }
        );

    private static FingerReport Run(FingerRequest request)
    {
        using var useCases = UseCases.Open();
        return useCases.Finger(request, TestContext.Current.CancellationToken);
    }

    private string Arranged(string sample, int level)
    {
        using var useCases = UseCases.Open();
        useCases.Arrange(
            new ArrangeRequest
            {
                Tunes = [Path.Combine(Corpus.CheckoutRoot, "samples", sample + ".abc")],
                OutputFolder = _folder["arranged"],
                Formats = [OutputFormat.MusicXml],
                Wishes = new Wishes { Level = level },
                Replace = true,
            },
            cancellation: TestContext.Current.CancellationToken
        );
        return _folder[$"arranged/{sample}.musicxml"];
    }

    private static Score Read(string path)
    {
        using var stream = File.OpenRead(path);
        return MusicXmlReader.ReadScore(stream).Value!;
    }

    private static IEnumerable<int?> Fingers(Score score) =>
        score.Bars.SelectMany(b => b.Voices).SelectMany(v => v.Events).SelectMany(e => e.Notes).Select(n => n.Finger);

    private static ValueList<ValueList<ScoreVoice>> Bare(Score score)
    {
        ScoreEvent Without(ScoreEvent e) =>
            e with
            {
                Notes = e.Notes.Select(n => n with { Finger = null }).ToValueList(),
            };
        return score
            .Bars.Select(b =>
                b.Voices.Select(v => v with { Events = v.Events.Select(Without).ToValueList() }).ToValueList()
            )
            .ToValueList();
    }
}
